/** Problems as the command line lists them, whatever the format. Lines and columns (UTF-16 units) count from 1. */
import type { Found } from '../checks/check.ts';
import type { JournalLine } from '../journal/journal-file.ts';
import { problemKinds, type ProblemCode, type Severity } from '../model/problems.ts';
import type { Span } from '../model/record.ts';
import type { OpenJournal } from './open.ts';
import { severities } from './program/choices.ts';

/** Part of one line; `endColumn` is the first column behind it. */
export interface Spot {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endColumn: number;
}

interface ListedFix {
  readonly title: string;
  readonly column: number;
  readonly endColumn: number;
  readonly text: string;
}

export interface ListedProblem extends Spot {
  readonly severity: Severity;
  readonly code: ProblemCode;
  readonly message: string;
  /** Other places that the problem speaks of. */
  readonly related: readonly (Spot & { readonly message: string })[];
  /** Replacements on the problem's line, each of which would mend it. */
  readonly fixes: readonly ListedFix[];
}

/** The problems of the files asked for that are at least so grave; by file, from top to bottom. */
export function listProblems(journals: readonly OpenJournal[], least: Severity): ListedProblem[] {
  const shown = severities.slice(0, severities.indexOf(least) + 1);
  return journals
    .flatMap(({ book, asked }) => asked.flatMap(file => book.of(file)))
    .map(listed)
    .filter(({ severity }) => shown.includes(severity));
}

function listed({ line, problem, related }: Found): ListedProblem {
  const { code, message, fixes } = problem;
  return {
    ...spotOf(line, problem),
    severity: problemKinds[code].severity,
    code,
    message,
    related: related.map(each => ({ ...spotOf(each.line, each), message: each.message })),
    fixes: fixes.map(({ title, start, end, text }) => ({ title, column: start + 1, endColumn: end + 1, text })),
  };
}

function spotOf(line: JournalLine, { start, end }: Span): Spot {
  return { file: line.store.name, line: line.number + 1, column: start + 1, endColumn: end + 1 };
}

export type Tally = Readonly<Record<Severity, number>>;

export function tally(problems: readonly ListedProblem[]): Tally {
  const count = (severity: Severity) => problems.filter(each => each.severity === severity).length;
  return { error: count('error'), warning: count('warning'), information: count('information'), hint: count('hint') };
}
