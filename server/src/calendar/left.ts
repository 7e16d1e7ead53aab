/** What is left of a bottle or a packet on a day. */
import { ledger, type Draw } from '../journal/draws.ts';
import type { Journal } from '../journal/journal.ts';
import type { JournalLine } from '../journal/journal-file.ts';
import type { Moment } from '../journal/moment.ts';
import type { Solution } from '../journal/solutions.ts';
import { exact } from '../solutions/amounts.ts';
import { measured, type Left } from '../solutions/ledger.ts';
import { goneNote } from './emptied.ts';
import { hasCome } from './standing.ts';

export interface Stock {
  readonly solution: Solution;
  /** mL of a bottle, mg of a packet; undefined where it is not known how much there was at first. */
  readonly left: Left | undefined;
  /** What has been taken by now. */
  readonly taken: readonly Draw[];
  /** Those of them that do not say how much: what is left is at most what the others leave. */
  readonly notMeasured: number;
  /** More was taken than was there. */
  readonly overdrawn: boolean;
  /** When the last of it was taken, or a note says that it is gone. */
  readonly emptied: Moment | undefined;
}

/** Undefined for what was not made up yet. `but`: a line that is still being written, which takes nothing. */
export function stockNow(solution: Solution, journal: Journal, now: Moment, but?: JournalLine): Stock | undefined {
  const { moment } = solution.entry;
  if (moment && !hasCome(moment, now)) return undefined;
  const taken = journal.drawsFrom(solution.id)
    .filter(({ entry }) => entry.line !== but && (!entry.moment || hasCome(entry.moment, now)));
  const { left, overdrawn, notMeasured } = ledger(solution, taken);
  const last = left?.most.equals(0) ? taken.at(-1)?.entry.moment : undefined;
  const emptied = last ?? goneNote(solution.id, journal, now)?.moment;
  return {
    solution, left: emptied ? measured(exact(0)) : left, taken, notMeasured: notMeasured.length,
    overdrawn: overdrawn !== undefined, emptied,
  };
}

/** All bottles and packets that there are or were by now, in the order of their definitions. */
export function stocksNow(journal: Journal, now: Moment): Stock[] {
  const all = Array.from(journal.solutions(), solution => stockNow(solution, journal, now));
  return all.filter(stock => stock !== undefined);
}
