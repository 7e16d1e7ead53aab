import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOf } from '../../server/src/model/day.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
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

  test.each(files.filter(name => !['problems.germ', '2024-25-untidy.germ'].includes(name)))('%s has no problem but hints', name => {
    const graver = book.of(name).map(({ problem }) => problem).filter(({ code }) => problemKinds[code].severity !== 'hint');
    expect(graver).toEqual([]);
  });

  test('ask about what an untidy winter leaves open, once each', () => {
    const graver = book.of('2024-25-untidy.germ').map(({ line, problem: { code } }) => `${line.text.split(',')[0]!} ${code}`)
      .filter(text => !/(?:ready-untreated|no-recent-count|split-too-small)$/.test(text));
    expect(graver).toEqual([
      'soak CAM-24/A 21:00 lift-missing', 'soak CAM-24/B 21:00 lift-missing',
      'soak IRI-24/A 21:30 lift-missing', 'soak IRI-24/B 21:30 lift-missing', 'count FRI-24/B not-counted',
      'count IRI-24/A total-as-new', 'day 2024-01-19 year-slip', 'count CAM-24/A total-as-new',
    ]);
  });

  test('read the doses of what was poured together in an egg cup as they were in it', () => {
    // 200 mg halved twice are 50 mg, in 100 mL 500 ppm: 5 mL of that in 20 mL are 125 ppm, with as much water 250 ppm.
    const ppm = (path: string) => {
      const [dose] = journal.lot(path.split('/')[0]!)!.batches.get(path)!.soaks[0]!.doses;
      return dose!.ppm.ok && toNumber(dose!.ppm.value);
    };
    expect(['CAM-24/A', 'IRI-24/A'].map(ppm)).toEqual([125, 250]);
  });

  test('have the problems that they show on purpose, each message with all that it names', () => {
    const problems = book.of('problems.germ').map(({ problem }) => problem);
    expect(problems.length).toBeGreaterThan(30);
    expect(problems.filter(({ message }) => /\{\w+\}/.test(message))).toEqual([]);
  });
});
