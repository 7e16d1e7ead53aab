/** What a treatment needs, and whether it stands on the shelf. */
import { stocksNow, type Stock } from '../calendar/left.ts';
import type { Journal } from '../journal/journal.ts';
import type { Moment } from '../journal/moment.ts';
import { exact, isPositive, type Exact } from '../solutions/amounts.ts';
import { shelfLife } from '../solutions/expiry.ts';
import type { Offer } from './offer.ts';

export interface Bottle {
  readonly stock: Stock;
  /** mL of it in each mL of the soak: 1 where it is used as it is. */
  readonly share: Exact;
  /** It keeps no longer than a tenth of its time. */
  readonly isNear: boolean;
}

export interface Packet {
  readonly stock: Stock;
  readonly isPast: boolean;
}

export interface Supplies {
  /** Bottles with something left that are strong enough and have not passed their date, those to use up first. */
  readonly bottles: readonly Bottle[];
  /** Bottles strong enough that are past their date. */
  readonly past: readonly Stock[];
  /** Packets of the powder with something left. */
  readonly packets: readonly Packet[];
}

/** A bottle of 497 ppm is one of 500: nobody measures closer. Common practice, no source. */
const SAME = 0.05;

/** Undefined for a treatment without a strength: nothing can be measured for it. */
export function suppliesFor({ agent, ppm }: Offer, journal: Journal, now: Moment): Supplies | undefined {
  if (ppm === undefined) return undefined;
  const there = stocksNow(journal, now).filter(({ solution, left, emptied }) => (
    solution.agent?.word === agent.word && !emptied && (!left || isPositive(left.most))));
  const lifeOf = ({ solution: { keeps } }: Stock) => keeps && shelfLife(now.day, keeps.made, keeps.until);
  const isPast = (stock: Stock) => lifeOf(stock)?.state === 'expired';
  const strong = there.filter(({ solution: { form, ppm: held } }) => (
    form !== 'powder' && held.ok && !held.value.lt(exact(ppm).mul(exact(1 - SAME)))));
  const bottles = strong.flatMap((stock): (Bottle & { readonly until: number })[] => {
    const { ppm: held, keeps } = stock.solution;
    if (!held.ok || isPast(stock)) return [];
    const life = lifeOf(stock);
    const share = exact(ppm).div(held.value);
    return [{
      stock, share: share.gt(exact(1 - SAME)) ? exact(1) : share, isNear: life?.state === 'near', until: keeps?.until ?? Infinity,
    }];
  });
  return {
    bottles: bottles.sort((a, b) => Number(b.share.equals(1)) - Number(a.share.equals(1)) || a.until - b.until),
    past: strong.filter(isPast),
    packets: there.filter(({ solution }) => solution.form === 'powder').map(stock => ({ stock, isPast: isPast(stock) })),
  };
}
