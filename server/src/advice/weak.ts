/** Weak seedlings of a treatment, in all lots in which it was tried: what speaks against a dose that paid. */
import type { Comparison } from '../measures/comparison.ts';
import { isUndefined, type Undefined } from '../measures/measured.ts';
import { weakTreatedWords } from '../measures/verdict-phrases.ts';
import { isMoreOften, weakOver } from '../measures/weak.ts';
import { rangeText } from '../model/estimate.ts';

/** Where the words of the counts may be about the same seedlings, the number has limits. */
export type WeakTreated = ReturnType<typeof weakOver>;

/** Of treated seedlings; undefined where they are not more frequent than untreated ones by more than is tolerated. */
export function weakOf(comparisons: readonly (Comparison | Undefined)[]): WeakTreated | undefined {
  const known = comparisons.flatMap(each => (isUndefined(each) ? [] : [each.weak]));
  const treated = weakOver(known.map(weak => weak.treated));
  return isMoreOften(treated, weakOver(known.map(weak => weak.untreated))) ? treated : undefined;
}

/** Example: '42 of 69 treated seedlings are weak (leggy, abnormal or dead)' */
export function weakTreatedText(weak: WeakTreated): string {
  return weakTreatedWords(`${rangeText(weak)} of ${weak.of}`);
}
