/** A lot or a batch divided into seed that will be treated and seed that will not. */
import type { Journal } from '../../journal/journal.ts';
import type { Batch, Lot } from '../../journal/life.ts';
import { meaningOf } from '../../model/events.ts';
import { POINTS_OF_MANY } from '../../measures/design.ts';
import { isUndefined } from '../../measures/measured.ts';
import { plan, type Plan } from '../../measures/plan.ts';
import { SUPPOSED_SHARES } from '../../trials/split-plan.ts';
import type { Action } from './action.ts';
import { editBelow } from './below.ts';
import { freeNames } from './free-names.ts';

/** Untreated germination that is neither poor nor good. */
const [, MIDDLING] = SUPPOSED_SHARES;

/**
 * A `split` into the two numbers of seeds that let the smallest difference be seen; the title says which. Undefined
 * where nothing can be compared any more: something was done to the seed, or it was divided, or is fewer than two.
 */
export function splitAction(lot: Lot, batch: Batch, journal: Journal): Action | undefined {
  const { path, kept, children, inherited, events, made, closed, unread } = batch;
  const isUntouched = children.length === 0 && !closed && !unread
    && inherited.every(({ type }) => type === 'split')
    && events.every(event => meaningOf(event).isRemark);
  if (!isUntouched || kept === undefined || kept < 2) return undefined;
  const planned = plan(Math.ceil(kept / 2), Math.floor(kept / 2), MIDDLING);
  const { treated, untreated } = planned.best;
  const [a, b] = freeNames(journal, lot, path, 2);
  return {
    title: `Split ${path} into ${a!} (${treated} to treat) and ${b!} (${untreated} to leave untreated): ${shows(planned)}`,
    edits: [editBelow(made.line, [`split ${path}, ${a!} ${seedsText(treated)}, ${b!} ${seedsText(untreated)}`])],
  };
}

function shows({ isMany, best: { visible }, share }: Plan): string {
  if (isMany) return `can show a difference of ${POINTS_OF_MANY} points`;
  if (isUndefined(visible)) return 'too few to show whether it pays';
  return `can tell ${Math.round(100 * share)} % from ${Math.ceil(visible.value * 100)} % or more`;
}

function seedsText(n: number): string {
  return n === 1 ? '1 seed' : `${n} seeds`;
}
