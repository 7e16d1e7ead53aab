import { bestSplit, isReckoned, MOST_RECKONED, POINTS_OF_MANY, visibleShare, type Split } from './design.ts';
import { isUndefined, type Measured } from './measured.ts';
import { percent } from './verdict-words.ts';

/** What a division of seed into treated and untreated can show, before the experiment. */
export interface Plan {
  readonly treated: number;
  readonly untreated: number;
  /** So many seeds show all that matters, so that it is not worked out. */
  readonly isMany: boolean;
  /** The share of the untreated seed that is reckoned with. */
  readonly share: number;
  /** The smallest treated share that is told from it with a power of 0.8. */
  readonly visible: Measured;
  /** The division of the same seeds that shows the smallest difference; the same one if there is no better. */
  readonly best: Split;
  readonly sentence: string;
}

/** A better division is not worth a word unless it shows at least this much less, as a share (2 points). */
const WORTH_SAYING = 0.02;

/** Plans that were asked for before: a hover asks for the same ones again and again. */
const known = new Map<string, Plan>();
const MOST_KNOWN = 500;

/**
 * Plans a trial with so many treated and untreated seeds, for a share of the untreated that is known from before
 * or supposed.
 *
 * @example
 * plan(20, 4, 0.2).sentence
 * // 'With 20 treated and 4 untreated seeds, 20 % untreated can be told from 91 % treated or more (power 80 %); 14 and
 * // 10 would tell it from 78 %.'
 */
export function plan(treated: number, untreated: number, share: number): Plan {
  const key = `${treated} ${untreated} ${share}`;
  let found = known.get(key);
  if (!found) {
    if (known.size >= MOST_KNOWN) known.clear();
    known.set(key, found = planned(treated, untreated, share));
  }
  return found;
}

function planned(treated: number, untreated: number, share: number): Plan {
  const visible = visibleShare(treated, untreated, share);
  const seeds = `With ${treated} treated and ${untreated} untreated seeds`;
  const base = { treated, untreated, share, visible };
  if (!isReckoned(treated, untreated)) {
    const sentence = Math.min(treated, untreated) > MOST_RECKONED
      ? `${seeds}, any two shares that differ by ${POINTS_OF_MANY} points can be told apart (power 80 %).`
      : `${treated} treated and ${untreated} untreated seeds are more than Plumule calculates with.`;
    return { ...base, isMany: true, best: base, sentence };
  }
  const best = bestSplit(treated + untreated, share);
  const better = limit(best.visible) < limit(visible) - WORTH_SAYING;
  const here = `${seeds}, ${percent(share)} untreated`;
  const shown = isUndefined(visible)
    ? `${here} cannot be told from any treated share`
    : `${here} can be told from ${atLeast(visible.value)} treated or more (power 80 %)`;
  const other = better && !isUndefined(best.visible)
    ? `; ${best.treated} and ${best.untreated} would tell it from ${atLeast(best.visible.value)}`
    : '';
  return { ...base, isMany: false, best: better ? best : base, sentence: `${shown}${other}.` };
}

/** Rounded up, so that the share that is printed can be seen. */
function atLeast(share: number): string {
  return percent(Math.ceil(100 * share) / 100);
}

/** Nothing visible counts as worse than everything. */
function limit(visible: Measured): number {
  return isUndefined(visible) ? 2 : visible.value;
}
