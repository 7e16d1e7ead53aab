import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { keywords } from '../../server/src/model/keywords.ts';
import { namesOf, tokenize } from './tokens.ts';

const folder = new URL('../../samples/', import.meta.url);
const files = readdirSync(folder).filter(name => name.endsWith('.germ'));

function linesOf(name: string): string[] {
  return readFileSync(new URL(name, folder), 'utf8').split('\n');
}

/** The words of a line that the grammar gives no name. */
function unnamed(line: string): string[] {
  const tokens = tokenize([line])[0]!.filter(token => namesOf(token).length === 0);
  return tokens.map(({ text }) => text.trim()).filter(Boolean);
}

function named(lines: readonly string[], scope: string): string[] {
  const tokens = tokenize(lines).flat().filter(token => namesOf(token).some(name => name.startsWith(scope)));
  return tokens.map(({ text }) => text);
}

describe('the samples', () => {
  test('there are six', () => {
    expect(files.sort()).toEqual(['2024-25-untidy.germ', '2025-26.germ', '2026-27.germ', 'guides.germ', 'problems.germ', 'stocks.germ']);
  });

  test('together they use every keyword', () => {
    const lines = files.flatMap(linesOf);
    const used = ['keyword.control.record', 'storage.type.record'].flatMap(scope => named(lines, scope));
    expect([...new Set(used)].sort()).toEqual(Object.keys(keywords).sort());
  });

  test.each(files.filter(name => name !== 'problems.germ'))('every word of %s has a colour, and none that of a slip', name => {
    const lines = linesOf(name);
    expect(lines.flatMap(unnamed)).toEqual([]);
    expect(named(lines, 'invalid')).toEqual([]);
  });

  test('in the file of deliberate problems only words that mean nothing have no colour', () => {
    const lines = linesOf('problems.germ');
    expect(lines.flatMap(unnamed)).toEqual(['sowed BAD-1/A 2026-01-18, 12 seeds', 'pmm', 'sprouted']);
    expect(named(lines, 'invalid')).toEqual(['18/1/2026', '18,5']);
  });

  test.each(files)('the headings of %s have something below them to fold', name => {
    const lines = linesOf(name);
    const isHeading = tokenize(lines).map(line => line.some(token => namesOf(token).includes('markup.heading.plumule')));
    const headings = lines.flatMap((_, n) => (isHeading[n] ? [n] : []));
    expect(headings.length).toBeGreaterThan(2);
    expect(headings.filter(n => lines.slice(n + 1).every(line => line.trim() === ''))).toEqual([]);
  });

  test.each(files)('%s reads the same with CRLF', name => {
    const lines = linesOf(name);
    const trimmed = (endings: string) => tokenize(lines.map(line => line + endings))
      .map(line => line.map(token => [token.text.trimEnd(), namesOf(token)] as const).filter(([text]) => text));
    expect(trimmed('\r')).toEqual(trimmed(''));
  });
});
