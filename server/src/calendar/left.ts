/** What is left of a bottle or a packet on a day. */
import { ledger, type AccountEntry } from '../journal/draws.ts';
import type { Journal } from '../journal/journal.ts';
import type { JournalLine } from '../journal/journal-file.ts';
import type { Moment } from '../journal/moment.ts';
import type { Solution } from '../journal/solutions.ts';
import { exact, type Exact } from '../solutions/amounts.ts';
import { isFound, measured, type LedgerEntry, type Left } from '../solutions/ledger.ts';
import { goneNote } from './emptied.ts';
import { hasCome } from './standing.ts';

export interface Stock {
  readonly solution: Solution;
  /** mL of a bottle, mg of a packet; undefined where it is not known how much there was at first. */
  readonly left: Left | undefined;
  /** When it was measured last, and how much was left then. */
  readonly found: { readonly moment: Moment | undefined; readonly amount: Exact } | undefined;
  /** Draws since then that do not say how much: what is left is at most what the others leave. */
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
  const account = journal.accountOf(solution.id)
    .filter(({ entry }) => entry.line !== but && (!entry.moment || hasCome(entry.moment, now)));
  const { entries, left, overdrawn, notMeasured } = ledger(solution, account);
  const last = left?.most.equals(0) ? entries.at(-1)?.key.entry.moment : undefined;
  const emptied = last ?? goneNote(solution.id, journal, now)?.moment;
  return {
    solution, left: emptied ? measured(exact(0)) : left, found: lastFound(entries), notMeasured: notMeasured.length,
    overdrawn: overdrawn !== undefined, emptied,
  };
}

export function lastFound(entries: readonly LedgerEntry<AccountEntry>[]): Stock['found'] {
  for (const { key: { amount, entry } } of [...entries].reverse()) {
    if (isFound(amount)) return { moment: entry.moment, amount: amount.found };
  }
  return undefined;
}

/** All bottles and packets that there are or were by now, in the order of their definitions. */
export function stocksNow(journal: Journal, now: Moment): Stock[] {
  const all = Array.from(journal.solutions(), solution => stockNow(solution, journal, now));
  return all.filter(stock => stock !== undefined);
}
