/** What the quick fixes of a problem make of a journal. */
import { expect } from 'vitest';
import { ProblemBook } from '../../../../server/src/checks/problem-book.ts';
import { quickFixes } from '../../../../server/src/features/actions/quick-fixes.ts';
import type { Problem, ProblemCode } from '../../../../server/src/model/problems.ts';
import { variantsOf, type Fixture } from '../../../support/fixture.ts';
import { at, journalOf } from '../../journals.ts';
import { applied, journalIn } from '../applied.ts';

export interface Mended {
  readonly title: string;
  /** The lines that the journal has then and did not have before. */
  readonly lines: readonly string[];
  readonly preferred: boolean;
  /** The codes of the problems of the whole journal then. */
  readonly left: readonly string[];
}

/**
 * The fixes of the problem whose place is marked with its code, one after another tried on the journal as it is marked.
 * Throws where a variant of the journal (line ends, emoji) has others, and where one does not mend the problem.
 */
export function mended(code: ProblemCode, source: string, now = '2026-03-01'): Mended[] {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => fixesOf(code, fixture, now));
  for (const other of others) expect(other).toEqual(first);
  return first!;
}

/** Only the titles and the lines. */
export function linesOf(code: ProblemCode, source: string, now?: string): [title: string, ...lines: string[]][] {
  return mended(code, source, now).map(({ title, lines }) => [title, ...lines]);
}

function fixesOf(code: ProblemCode, fixture: Fixture, now: string): Mended[] {
  const mark = fixture.expected.find(({ label }) => label === code);
  if (!mark) throw new Error(`no mark ${code}`);
  const journal = journalOf(fixture);
  const book = new ProblemBook(journal);
  book.update(at(now));
  const found = book.of(mark.file).filter(({ line, problem }) =>
    problem.code === code && line.number === mark.line && problem.start === mark.start);
  if (found.length === 0) throw new Error(`${code} is not where it is marked`);
  const before = Object.fromEntries([...journal.files].map(([name, { text }]) => [name, text.text()]));
  const fixes = quickFixes(found, mark.line, mark.line, { journal, file: mark.file, now: at(now) });
  return fixes.map(({ title, edits, evident }) => {
    const after = applied(journal, edits);
    const lines = Object.entries(after).flatMap(([name, text]) => added(before[name] ?? '', text));
    const left = problemsOf(after, now);
    const isLeft = left.some(({ message }) => found.some(({ problem }) => problem.message === message));
    if (isLeft) throw new Error(`“${title}” does not mend ${code}`);
    return { title, lines, preferred: evident, left: left.map(each => each.code) };
  });
}

function problemsOf(texts: Readonly<Record<string, string>>, now: string): Problem[] {
  const journal = journalIn(texts);
  const book = new ProblemBook(journal);
  book.update(at(now));
  return Object.keys(texts).flatMap(name => book.of(name).map(({ problem }) => problem));
}

/** Mixed line ends would show as lines of their own. */
function added(before: string, after: string): string[] {
  const end = before.includes('\r\n') ? '\r\n' : '\n';
  const old = before.split(end);
  return after.split(end).filter(line => line !== '').filter(line => {
    const index = old.indexOf(line);
    if (index >= 0) old.splice(index, 1);
    return index < 0;
  }).map(line => line.replaceAll(/ ?🌱/g, ''));
}
