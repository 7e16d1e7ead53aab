import { counted } from '../model/counted.ts';
import {
  bestDishes, bestSplit, designOf, limitOf, MOST_RECKONED, ONE_DISH, POINTS_OF_MANY, visibleShare, type Dishes,
    type Layout, type Split,
} from './design.ts';
import { isUndefined, type Measured } from './measured.ts';
import { percent } from './verdict-words.ts';

/** What a division of seed into treated and untreated can show, before the experiment. */
export interface Plan extends Layout {
  readonly treated: number;
  readonly untreated: number;
  /** So many seeds show all that matters, so that it is not worked out. */
  readonly isMany: boolean;
  /** The share of the untreated seed that is reckoned with. */
  readonly share: number;
  /** The smallest treated share for which the verdict is "worth repeating" with a power of 0.8. */
  readonly visible: Measured;
  /** The division of the same seeds that shows the smallest difference; the same one if there is no better. */
  readonly best: Split;
  /** The same seeds in several dishes a side, where they stand in one: what they show although dishes differ. */
  readonly inDishes: Dishes | undefined;
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
 * // 'With 20 treated and 4 untreated seeds, the verdict is “worth repeating” 4 times in 5 if 20 % germinate
 * // untreated and 86 % treated. With 12 and 12, 74 % treated are enough.'
 */
export function plan(treated: number, untreated: number, share: number, layout = ONE_DISH): Plan {
  const key = [treated, untreated, share, layout.dishes.treated, layout.dishes.untreated, layout.treatments].join(' ');
  let found = known.get(key);
  if (!found) {
    if (known.size >= MOST_KNOWN) known.clear();
    known.set(key, found = planned(treated, untreated, share, layout));
  }
  return found;
}

function planned(treated: number, untreated: number, share: number, layout: Layout): Plan {
  const { dishes, treatments } = layout;
  const visible = visibleShare(designOf(treated, untreated, layout), share);
  const base = { treated, untreated, share, visible, ...layout };
  const isSingle = dishes.treated === 1 && dishes.untreated === 1;
  const isMany = isSingle && Math.min(treated, untreated) > MOST_RECKONED;
  const seeds = `With ${sidesText(treated, untreated, layout)}`;
  const inDishes = isSingle ? bestDishes(treated, untreated, share, treatments) : undefined;
  if (isMany) {
    const sentence = `${seeds}, the verdict finds any gain of ${POINTS_OF_MANY} points (4 times in 5).`;
    return { ...base, isMany, best: base, inDishes, sentence };
  }
  const best = bestSplit(treatments * treated + untreated, share, layout);
  const better = limitOf(best.visible) < limitOf(visible) - WORTH_SAYING;
  const shown = isUndefined(visible)
    ? `${seeds}, “worth repeating” is unlikely even if ${percent(share)} germinate untreated and all treated.`
    : `${seeds}, the verdict is “worth repeating” 4 times in 5 if ${percent(share)} germinate untreated and ${atLeast(visible.value)} treated.`;
  const other = better && !isUndefined(best.visible)
    ? ` With ${best.treated} and ${best.untreated}, ${atLeast(best.visible.value)} treated are enough.`
    : '';
  return { ...base, isMany: false, best: better ? best : base, inDishes, sentence: `${shown}${other}` };
}

/** Example: '48 treated seeds in 4 dishes and 48 untreated in 4, one of 3 treatments' */
function sidesText(treated: number, untreated: number, { dishes, treatments }: Layout): string {
  const sides = dishes.treated + dishes.untreated > 2
    ? `${treated} treated seeds in ${dishesText(dishes.treated)} and ${untreated} untreated in ${dishes.untreated}`
    : `${treated} treated and ${untreated} untreated seeds`;
  return treatments > 1 ? `${sides}, one of ${treatments} treatments` : sides;
}

function dishesText(n: number): string {
  return counted(n, 'dish', 'dishes');
}

/** Rounded up, so that the share that is printed is found. */
function atLeast(share: number): string {
  return percent(Math.ceil(100 * share) / 100);
}
