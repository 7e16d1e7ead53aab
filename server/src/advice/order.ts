/** Which of several doses goes first: by sound seedlings, as the best dose of a report does. */
import type { Comparison } from '../measures/comparison.ts';
import { differenceOver } from '../measures/difference-over.ts';
import { isUndefined, type Undefined } from '../measures/measured.ts';
import { isSameDose } from '../trials/alike.ts';
import type { Tried } from './tried.ts';

/** Sound seedlings of the treated seed less those of the untreated, as shares; undefined where none was measured. */
export function soundGainOf(comparisons: readonly (Comparison | Undefined)[]): number | undefined {
  const over = differenceOver(comparisons.flatMap(each => (isUndefined(each) ? [] : [each.sound])));
  return isUndefined(over) ? undefined : over.value;
}

/**
 * The one that paid in most lots by themselves; of several the one with the greatest gain, then the weakest. To be
 * tried in many lots is no merit. None goes before a dose that is shown to be the better one.
 */
export function mostSure(all: readonly Tried[]): Tried | undefined {
  return unbeaten(all).toSorted((a, b) => b.paidIn.length - a.paidIn.length
    || gainOf(b) - gainOf(a) || weaknessOf(a) - weaknessOf(b))[0];
}

/** The one with the greatest gain so far, then the weakest. */
export function mostPromising(all: readonly Tried[]): Tried | undefined {
  return unbeaten(all).toSorted((a, b) => gainOf(b) - gainOf(a) || weaknessOf(a) - weaknessOf(b))[0];
}

/** All of them where each was beaten by another, in one lot or another. */
function unbeaten(all: readonly Tried[]): readonly Tried[] {
  const found = all.filter(tried => !all.some(other => other !== tried && hasBeaten(other, tried)));
  return found.length > 0 ? found : all;
}

/** Whether a report names one dose as the best of a ladder in which the other is. */
function hasBeaten(best: Tried, other: Tried): boolean {
  if (best.agent.word !== other.agent.word || best.ppm === undefined || other.ppm === undefined) return false;
  return best.ladders.some(({ agent, ladder }) => (
    agent.word === best.agent.word && !isUndefined(ladder.best) && isSameDose(ladder.best.value, best.ppm!)
    && ladder.doses.some(({ dose }) => isSameDose(dose, other.ppm!))));
}

function gainOf({ soundGain }: Tried): number {
  return soundGain ?? -1;
}

function weaknessOf({ ppm }: Tried): number {
  return ppm ?? Infinity;
}
