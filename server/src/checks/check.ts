/** What a check is: a pure function from what the journal says of one thing to the problems of that thing. */
import type { Stay } from '../calendar/stays.ts';
import type { Draw } from '../journal/draws.ts';
import type { Journal } from '../journal/journal.ts';
import type { JournalLine } from '../journal/journal-file.ts';
import type { Entry, Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import type { Solution } from '../journal/solutions.ts';
import { problem, type Fix, type Problem, type ProblemCode } from '../model/problems.ts';
import type { Span } from '../model/record.ts';
import type { Events } from './events.ts';
import { subjectOf } from './spans.ts';

/** Another place that a problem speaks of. */
export interface Related extends Span {
  readonly line: JournalLine;
  readonly message: string;
}

export interface Found {
  readonly line: JournalLine;
  readonly problem: Problem;
  readonly related: readonly Related[];
}

export interface Context {
  readonly journal: Journal;
  /** The day and, where it is known, the time for which running soaks and missing counts are judged. */
  readonly now: Moment;
}

export type LotCheck = (lot: Lot, context: Context, events: Events) => Iterable<Found>;
/** `draws` are everything that is taken from it. */
export type SolutionCheck = (solution: Solution, context: Context, draws: readonly Draw[]) => Iterable<Found>;
/** `mentions` are all records that name the id. */
export type IdCheck = (id: string, mentions: readonly Entry[], context: Context) => Iterable<Found>;
export type JournalCheck = (context: Context) => Iterable<Found>;
/** `stays` are all that ever lay in one slot. */
export type SlotCheck = (stays: readonly Stay[]) => Iterable<Found>;
/** `lots` are all of one plant, in no order. */
export type PlantCheck = (lots: readonly Lot[]) => Iterable<Found>;

interface More {
  readonly fixes?: readonly Fix[] | undefined;
  readonly related?: readonly Related[] | undefined;
}

/**
 * A problem of a line. Its message may not hold a line number: lines come and go above it without the check being asked
 * again. Other places are named in `related`, which knows their lines.
 */
export function found(
  line: JournalLine, code: ProblemCode, span: Span, values: Readonly<Record<string, string | number>> = {},
  { fixes = [], related = [] }: More = {},
): Found {
  return { line, problem: problem(code, span, values, fixes), related };
}

/** The place of an entry as another problem names it. */
export function relatedTo(entry: Pick<Entry, 'line' | 'record'>, message: string): Related {
  return { line: entry.line, ...subjectOf(entry), message };
}
