/** Weak seedlings of a treatment, in all lots in which it was tried: what speaks against a dose that paid. */
import type { Comparison } from '../measures/comparison.ts';
import { isUndefined, type Undefined } from '../measures/measured.ts';
import { isMoreOften, type BothWeak } from '../measures/weak.ts';
import { rangeText } from '../model/estimate.ts';

export interface WeakTreated {
  /** Where the words of the counts may be about the same seedlings, the number has limits. */
  readonly least: number;
  readonly most: number;
  readonly of: number;
}

/** Of treated seedlings; undefined where they are not more frequent than untreated ones by more than is tolerated. */
export function weakOf(comparisons: readonly (Comparison | Undefined)[]): WeakTreated | undefined {
  const known = comparisons.flatMap(each => (isUndefined(each) ? [] : [each.weak]));
  const treated = sumOf(known.map(weak => weak.treated));
  return isMoreOften(treated, sumOf(known.map(weak => weak.untreated))) ? treated : undefined;
}

function sumOf(all: readonly BothWeak['treated'][]): WeakTreated {
  return all.reduce((sum, { least, most, of }) => (
    { least: sum.least + least, most: sum.most + most, of: sum.of + of }), { least: 0, most: 0, of: 0 });
}

/** Example: '42 of 69 treated seedlings are weak (leggy, abnormal or dead)' */
export function weakTreatedText(weak: WeakTreated): string {
  return `${rangeText(weak)} of ${weak.of} treated seedlings are weak (leggy, abnormal or dead)`;
}
