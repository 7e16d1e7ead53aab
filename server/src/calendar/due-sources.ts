/** Where the items of the due list come from: one function for each, as each check is one of its own. */
import type { Journal } from '../journal/journal.ts';
import type { Entry, Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import type { Ask } from './ask.ts';
import { aheadDue } from './due-ahead.ts';
import { countDue } from './due-counts.ts';
import { judgeDue } from './due-judging.ts';
import { remindersOfBatch, remindersOfThings } from './due-reminders.ts';
import { soakDue } from './due-soaks.ts';
import { stageDue } from './due-stages.ts';
import { stocksDue } from './due-stocks.ts';
import type { Standing } from './standing.ts';

/**
 * `stage`: the end of a chill or a warm stage. `judge`: the day on which a trial is to be judged. `stock`: a stock
 * keeps no longer. `reminder`: a `due` record. `ahead`: a record of a date to come, which is a plan.
 */
export type DueKind = 'soak' | 'stage' | 'count' | 'judge' | 'stock' | 'reminder' | 'ahead';

export interface Due {
  readonly kind: DueKind;
  /** In words, text of the journal among them: escape it where it is shown. */
  readonly what: string;
  /** The batch, the stock, or whatever a reminder is about. */
  readonly id: string;
  readonly at: Moment;
  /** The record that it comes from. */
  readonly entry: Entry;
  /** Tells it from others of its kind and id, and stays the same while the item is put off. */
  readonly since: Moment;
  /** The record to write; undefined where it stands in the journal already, or where there are several. */
  readonly ask: Ask | undefined;
  /** A soak that no record ended and that lies far back: no date is late, a record is missing. */
  readonly isEndMissing?: boolean;
}

const batchSources = [soakDue, stageDue, countDue, judgeDue, remindersOfBatch, aheadDue] as const;
const thingSources = [stocksDue, remindersOfThings] as const;

export function* dueOfBatch(journal: Journal, lot: Lot, standing: Standing, now: Moment): Iterable<Due> {
  for (const source of batchSources) yield* source(journal, lot, standing, now);
}

/** Of what is no seed. */
export function* dueOfThings(journal: Journal, now: Moment): Iterable<Due> {
  for (const source of thingSources) yield* source(journal, now);
}
