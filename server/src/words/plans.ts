/** What a trial can show before it is made, in plain words. */
import { isUndefined, type Measured } from '../measures/measured.ts';
import type { Plan } from '../measures/plan.ts';
import { rangeText } from '../model/estimate.ts';
import type { SplitPlan } from '../trials/split-plan.ts';

export const PLAN_HEAD = ['Untreated', 'Treated must reach', 'Better split', 'In several dishes'] as const;

const NEEDED = 'So much must germinate for the verdict “worth repeating” 4 times in 5.';

const ASSUMED = 'It is assumed that you count both sides on the same days, about weekly, and that treated seed germinates no sooner.';

const DISHES_DIFFER = 'Dishes are assumed to differ a little, as they do (correlation 0.05).';

const IN_DISHES = '“In several dishes”: so many on each side, of so many seeds each.';

const ONE_DISH = 'With one dish a side, the two dishes are assumed to be alike; nothing can show that afterwards.';

/** What is assumed for a plan. */
export function planBasis({ dishes, treatments, inDishes }: Plan): readonly string[] {
  const isSingle = dishes.treated === 1 && dishes.untreated === 1;
  return [
    ASSUMED,
    ...treatments > 1 ? [`One of ${treatments} treatments helps, and the others do nothing.`] : [],
    ...isSingle ? [ONE_DISH] : [],
    ...!isSingle || inDishes ? [DISHES_DIFFER] : [],
  ];
}

/** How a table of plans is to be read, and what is assumed for it. */
export function planTableBasis(plan: Plan): readonly string[] {
  return [NEEDED, ...plan.inDishes ? [IN_DISHES] : [], ...planBasis(plan)];
}

/**
 * One share of the untreated seed, the smallest treated share that is found beside it, and what would show more.
 *
 * Example: ['40 %', '70 % or more', '', '82 % (4 dishes of 12)']
 */
export function planRow({ treated, untreated, share, visible, best, inDishes }: Plan): [string, string, string,
  string] {
  const better = best.treated === treated ? '' : `${best.treated} and ${best.untreated}: ${visibleText(best.visible)}`;
  return [
    `${percentText(share)} %`,
    isUndefined(visible) ? '– (not even 100 %)' : orMore(visibleText(visible)),
    better,
    inDishes && !isUndefined(inDishes.visible)
      ? `${visibleText(inDishes.visible)} (${inDishes.dishes} dishes of ${sizeText(treated, untreated, inDishes.dishes)})`
      : '',
  ];
}

/** Nothing is more than all. */
function orMore(share: string): string {
  return share === '100 %' ? share : `${share} or more`;
}

/** Example: '12', or '9 to 12' where the sides or the dishes of a side are not of one size */
function sizeText(treated: number, untreated: number, dishes: number): string {
  const least = Math.floor(Math.min(treated, untreated) / dishes);
  const most = Math.ceil(Math.max(treated, untreated) / dishes);
  return rangeText({ least, most });
}

/** Example: '24 treated (A, B) and 12 untreated (C) seeds' */
export function planSides({ treated, untreated }: Pick<SplitPlan, 'treated' | 'untreated'>): string {
  return `${treated.seeds} treated (${treated.names.join(', ')}) and ${untreated.seeds} untreated (${untreated.names.join(', ')}) seeds`;
}

/** Rounded up, so that the share that is shown can be seen. */
function visibleText(visible: Measured): string {
  return isUndefined(visible) ? '–' : `${Math.ceil(100 * visible.value)} %`;
}

function percentText(share: number): string {
  return String(Math.round(1000 * share) / 10);
}
