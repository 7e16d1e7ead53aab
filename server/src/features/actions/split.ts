/** A lot or a batch divided into seed that will be treated and seed that will not. */
import type { Journal } from '../../journal/journal.ts';
import type { Batch, Lot } from '../../journal/life.ts';
import { meaningOf } from '../../model/events.ts';
import { POINTS_OF_MANY, type Dishes } from '../../measures/design.ts';
import { isUndefined, type Measured } from '../../measures/measured.ts';
import { plan, type Plan } from '../../measures/plan.ts';
import { SUPPOSED_SHARES } from '../../trials/split-plan.ts';
import { seedsText } from '../../words/seeds.ts';
import type { Action } from './action.ts';
import { editBelow } from './below.ts';
import { freeNames } from './free-names.ts';

/** Untreated germination that is neither poor nor good. */
const [, MIDDLING] = SUPPOSED_SHARES;

/**
 * Splits into seed to treat and seed to leave untreated: in one dish each, by the numbers with which the smallest
 * difference is found, and in several dishes, where the seeds fill them. The title says what each finds. None where
 * nothing can be compared any more: something was done to the seed, or it was divided, or is fewer than two.
 */
export function splitActions(lot: Lot, batch: Batch, journal: Journal): Action[] {
  const { path, kept, children, inherited, events, made, closed, unread } = batch;
  const isUntouched = children.length === 0 && !closed && !unread
    && inherited.length === 0
    && events.every(event => meaningOf(event).isRemark);
  if (!isUntouched || kept === undefined || kept < 2) return [];
  const planned = plan(Math.ceil(kept / 2), Math.floor(kept / 2), MIDDLING);
  const { best: { treated, untreated }, inDishes } = planned;
  const [a, b] = freeNames(journal, lot, path, 2);
  const split = (title: string, parts: readonly string[]): Action => (
    { title, edits: [editBelow(made.line, [`split ${path}, ${parts.join(', ')}`])] });
  return [
    split(`Split ${path} into ${a!} (${treated} to treat) and ${b!} (${untreated} to leave untreated): ${shows(planned)}`,
      [`${a!} ${seedsText(treated)}`, `${b!} ${seedsText(untreated)}`]),
    ...inDishes ? [inSeveralDishes(inDishes)] : [],
  ];

  function inSeveralDishes({ dishes, visible }: Dishes): Action {
    const size = Math.floor(kept! / (2 * dishes));
    const names = freeNames(journal, lot, path, 2 * dishes);
    const side = (from: number): string => `${names[from]!} to ${names[from + dishes - 1]!}`;
    return split(
      `Split ${path} into ${dishes} dishes of ${size} to treat (${side(0)}) and ${dishes} to leave untreated (${side(dishes)}): ${found(visible)}, even if dishes differ`,
      names.map(name => `${name} ${seedsText(size)}`));
  }
}

function shows({ isMany, best: { visible } }: Plan): string {
  return isMany ? `can show a gain of ${POINTS_OF_MANY} points` : found(visible);
}

function found(visible: Measured): string {
  return isUndefined(visible)
    ? 'too few to show whether it pays'
    : `can show a gain from ${Math.round(100 * MIDDLING)} to ${Math.ceil(visible.value * 100)} %`;
}
