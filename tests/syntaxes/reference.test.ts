import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOf } from '../../server/src/model/day.ts';
import { keywords } from '../../server/src/model/keywords.ts';
import { problemKinds } from '../../server/src/model/problems.ts';
import { builtInAgents } from '../../server/src/solutions/agents.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { syntaxes } from './tokens.ts';

const page = readFileSync(new URL('README.md', syntaxes), 'utf8');

const lines = page.split('\n');

/** The text below a heading, up to the next heading of its level or above. */
function section(heading: string): string {
  const level = heading.indexOf(' ');
  const start = lines.indexOf(heading) + 1;
  if (start === 0) return '';
  const length = lines.slice(start).findIndex(line => new RegExp(`^#{1,${level}} `).test(line));
  return lines.slice(start, length < 0 ? undefined : start + length).join('\n');
}

function codesBelow(heading: string): string[] {
  return [...section(heading).matchAll(/^### `([a-z-]+)`$/gm)].map(([, code]) => code!);
}

const examples = [...page.matchAll(/^```plumule\n([\s\S]*?)^```$/gm)].map(([, text]) => text!);

describe('the problems of the format reference', () => {
  test.each([
    ['error', '## Errors'],
    ['warning', '## Warnings'],
    ['hint', '## Hints'],
  ])('are those of the table: %s', (severity, heading) => {
    const kinds = Object.entries(problemKinds).filter(([, kind]) => kind.severity === severity);
    expect(codesBelow(heading).sort()).toEqual(kinds.map(([code]) => code).sort());
  });

  test.each(Object.keys(problemKinds))('%s has a paragraph that says what to do', code => {
    expect(section(`### \`${code}\``).trim().length).toBeGreaterThan(60);
  });
});

describe('the records of the format reference', () => {
  test('are the keywords, each once', () => {
    const headings = [...section('## Records').matchAll(/^### (.+)$/gm)].map(([, name]) => name!);
    expect(headings.sort()).toEqual(Object.keys(keywords).sort());
  });

  test.each(Object.entries(keywords))('%s has an example and names each of its facts', (keyword, { facts }) => {
    const text = section(`### ${keyword}`);
    expect(text).toMatch(new RegExp(`^${keyword} `, 'm'));
    for (const { shape } of facts) {
      const word = /^[a-z]+(?= )/.exec(shape)?.[0] ?? /[a-z]+$/i.exec(shape)?.[0] ?? shape;
      const unit = { h: '(h|hours|time span)', C: '(C|temperature)', mL: '(mL|volume)', days: '(days|stages|weeks)' }[word] ?? word;
      expect(text, `${shape} of ${keyword}`).toMatch(new RegExp(`\\b${unit}\\b`, 'i'));
    }
  });

  test('have examples without a problem in any line', () => {
    const problems = examples.flatMap(example => example.split('\n'))
      .flatMap(line => parse(line).problems.map(({ code }) => `${code}: ${line}`));
    expect(problems).toEqual([]);
  });

  test('the example on one page is a journal without a problem', () => {
    const journal = new Journal();
    journal.set('page.germ', examples[0]!);
    const book = new ProblemBook(journal);
    book.update({ day: dayOf(2026, 2, 3)!, minutes: undefined });
    expect(book.of('page.germ').map(({ problem }) => problem)).toEqual([]);
  });
});

describe('the rest of the format reference', () => {
  test('lists every agent that needs no declaration, with its name and role', () => {
    for (const { word, name, role } of builtInAgents.values()) {
      expect(section('### Agents')).toContain(`| \`${word}\` | ${word === 'GA3K' ? 'its potassium salt' : name} | ${role} |`);
    }
  });
});

/** The pages that go with the extension, by their path in the project. */
const pages = ['README.md', 'CHANGELOG.md', ...readdirSync(syntaxes).filter(name => name.endsWith('.md')).map(name => `syntaxes/${name}`)];
const root = new URL('../', syntaxes);

function textOf(path: string): string {
  return readFileSync(new URL(path, root), 'utf8');
}

function headingsOf(text: string): Set<string> {
  const slug = (heading: string) => heading.toLowerCase().replace(/[^\p{L}\p{N} -]/gu, '').replaceAll(' ', '-');
  return new Set([...text.matchAll(/^#+ (.+)$/gm)].map(([, heading]) => slug(heading!)));
}

describe('the pages that are packed with the extension', () => {
  test('are the README, the changes and those beside the format reference', () => {
    expect(pages.length).toBeGreaterThan(5);
  });

  test.each(pages)('%s links to places that are there, in files that are packed', path => {
    const packed = textOf('.vscodeignore').split('\n').filter(line => line.startsWith('!')).map(line => line.slice(1).replace(/\*\*$/, ''));
    const links = [...textOf(path).matchAll(/\]\(([^)\s]+)\)/g)].map(([, link]) => link!).filter(link => !link.startsWith('https:'));
    for (const link of links) {
      const [file = '', place] = link.split('#');
      const target = file === '' ? path : new URL(file, new URL(path, root)).href.slice(root.href.length);
      expect(existsSync(new URL(target, root)), link).toBe(true);
      expect(packed.some(name => `${target}/`.startsWith(name)), `${link} is packed`).toBe(true);
      if (place !== undefined) expect([...headingsOf(textOf(target))], link).toContain(place);
    }
  });
});
