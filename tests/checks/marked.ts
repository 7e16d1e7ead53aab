import { expect } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import { problemKinds, type Problem, type ProblemCode } from '../../server/src/model/problems.ts';
import { differences, variantsOf, type Fixture } from '../support/fixture.ts';

interface Present {
  /** `2026-02-01`, with a time where it matters: `2026-02-01 08:00`. */
  readonly now?: string;
}

function momentOf(text: string) {
  const [iso = '', time] = text.split(' ');
  const [hours = 0, minutes = 0] = (time ?? '').split(':').map(Number);
  return { day: dayOfIso(iso)!, minutes: time === undefined ? undefined : hours * 60 + minutes };
}

function bookOf({ files }: Pick<Fixture, 'files'>, { now = '2026-06-01' }: Present): ProblemBook {
  const journal = new Journal();
  for (const { name, text } of files) journal.set(name, text);
  const book = new ProblemBook(journal);
  book.update(momentOf(now));
  return book;
}

/** Of the codes given, the problems of a journal are those that it marks, in all variants of writing it. */
export function expectMarked(codes: readonly ProblemCode[], source: string, present: Present = {}): void {
  for (const { name, fixture } of variantsOf(source)) {
    const book = bookOf(fixture, present);
    const all = fixture.files.flatMap(file => book.of(file.name).map(each => ({ ...each, file: file.name })));
    const found = all
      .filter(({ problem }) => codes.includes(problem.code))
      .map(({ file, line, problem: { start, end, code } }) => ({ file, line: line.number, start, end, label: code }));
    expect(differences(fixture, found), name).toBe('');
    expect(all.map(({ problem }) => problem.message).filter(message => /\{\w+\}/.test(message)), 'unfilled').toEqual([]);
  }
}

/** All problems of a journal, of whatever code, are those that it marks. */
export function expectAllMarked(source: string, present: Present = {}): void {
  expectMarked(Object.keys(problemKinds) as ProblemCode[], source, present);
}

/** The problems of one code in a journal without marks. */
export function problemsIn(code: ProblemCode, source: string, present: Present = {}): Problem[] {
  const fixture = variantsOf(source)[0]!.fixture;
  const book = bookOf(fixture, present);
  const all = fixture.files.flatMap(file => book.of(file.name).map(({ problem }) => problem));
  return all.filter(problem => problem.code === code);
}

/** Where the first problem of a code in a journal of one file points to: the line, from 1, and the message. */
export function relatedIn(code: ProblemCode, text: string, present: Present = {}): string[] {
  const [first] = bookOf({ files: [{ name: 'a.germ', text }] }, present).of('a.germ').filter(({ problem }) => problem.code === code);
  if (!first) throw new Error(`no ${code}`);
  return first.related.map(({ line, message }) => `${line.number + 1} ${message}`);
}
