/** The bottles and packets of a journal as values: what each holds, what is left of it, and how long it keeps. */
import { stocksNow, type Stock } from '../../calendar/left.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Moment } from '../../journal/moment.ts';
import { factOf } from '../../model/record.ts';
import { shelfLife } from '../../solutions/expiry.ts';
import { contentHeld, isHeldByEye } from '../../words/held.ts';
import { isSaidIn } from '../agenda.ts';

export interface StockRow extends Stock {
  /** `gone`: used up, or thrown away as a note says. */
  readonly state: 'good' | 'near' | 'expired' | 'gone';
  /** Agent and strength of a bottle. */
  readonly content: string;
  /** Powder was halved by eye on the way to it. */
  readonly isAbout: boolean;
  /** Where it stands, as written; undefined for what is gone. */
  readonly place: string | undefined;
}

export interface StockList {
  /** Tells one journal from another where there are several. */
  readonly name: string | undefined;
  readonly now: Moment;
  readonly rows: readonly StockRow[];
}

export interface StockOptions {
  readonly now: Moment;
  readonly name?: string;
  /** Bottles and packets that these files say something of; without it all. */
  readonly files?: readonly string[];
}

export function stockList(journal: Journal, { now, name, files }: StockOptions): StockList {
  const rows = stocksNow(journal, now)
    .filter(({ solution }) => isSaidIn(journal, solution.id, files))
    .map((stock): StockRow => {
      const state = stateOf(stock, now);
      const place = state === 'gone' ? undefined : factOf(stock.solution.entry.record, 'at')?.value.text;
      const content = contentHeld(stock.solution, journal);
      return { ...stock, content, isAbout: isHeldByEye(stock.solution, journal), state, place };
    });
  return { name, now, rows };
}

function stateOf({ emptied, solution: { keeps } }: Stock, now: Moment): StockRow['state'] {
  if (emptied) return 'gone';
  return keeps ? shelfLife(now.day, keeps.made, keeps.until).state : 'good';
}
