import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOf } from '../../server/src/model/day.ts';
import { problemKinds } from '../../server/src/model/problems.ts';

const tests = new URL('../', import.meta.url);
const samples = new URL('../../samples/', import.meta.url);
const reference = readFileSync(new URL('../../syntaxes/README.md', import.meta.url), 'utf8');
const sources = ['checks/', 'syntax/'].flatMap(folder => readdirSync(new URL(folder, tests)).map(file => readFileSync(new URL(folder + file, tests), 'utf8')));

describe('every code of a problem', () => {
  test.each(Object.keys(problemKinds))('%s has a journal with its mark, and a paragraph in the format reference', code => {
    expect(sources.some(source => new RegExp(`\\^ ${code}$`, 'm').test(source))).toBe(true);
    expect(reference).toContain(`### \`${code}\`\n`);
  });
});

describe('the samples', () => {
  const journal = new Journal();
  const files = readdirSync(samples).filter(name => name.endsWith('.germ'));
  for (const name of files) journal.set(name, readFileSync(new URL(name, samples), 'utf8'));
  const book = new ProblemBook(journal);
  book.update({ day: dayOf(2026, 11, 25)!, minutes: undefined });

  test.each(files.filter(name => name !== 'problems.germ'))('%s has no problem but hints', name => {
    const graver = book.of(name).map(({ problem }) => problem).filter(({ code }) => problemKinds[code].severity !== 'hint');
    expect(graver).toEqual([]);
  });

  test('have the problems that they show on purpose, each message with all that it names', () => {
    const problems = book.of('problems.germ').map(({ problem }) => problem);
    expect(problems.length).toBeGreaterThan(30);
    expect(problems.filter(({ message }) => /\{\w+\}/.test(message))).toEqual([]);
  });
});
