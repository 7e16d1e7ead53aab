/** Parts of the sentences of verdicts, on counted and on estimated seed, of one lot and of several. */
import type { Difference } from './difference.ts';
import { wholePercent } from './verdict-words.ts';

type Side = 'treated' | 'untreated';

/** What a share of the seed did, in words. */
export const DID: Readonly<Record<'germinated' | 'sound', string>> = {
  germinated: 'had germinated', sound: 'had given sound seedlings',
};

export const CUT_SHORT = 'seed that had not germinated was taken out then, and what was counted since cannot be compared';

/**
 * Behind a difference that shows nothing.
 *
 * @example
 * chanceWords({ value: 0.25, low: -0.09, high: 0.52 }) // ', which may be chance'
 */
export function chanceWords({ value, low, high }: Difference): string {
  if (wholePercent(value) === 0) return '';
  return low > 0 || high < 0 ? ', which is too near to no difference to rule out chance' : ', which may be chance';
}

export const TOO_SOON = 'which is too few to tell: living seed was left, and it was not watched for long enough';

/** Example: weakTreatedWords('4 to 6 of 18') is '4 to 6 of 18 treated seedlings are weak (leggy, abnormal or dead)' */
export function weakTreatedWords(treated: string): string {
  return `${treated} treated seedlings are weak (leggy, abnormal or dead)`;
}

/** Numbers of both sides as above, and by which looks. */
export function weakWords(numbers: Readonly<Record<Side, string>>, isByLastLooks = false): string {
  return `${isByLastLooks ? 'by the last looks, ' : ''}${weakTreatedWords(numbers.treated)} and ${numbers.untreated} untreated`;
}

/** The side that germinated on may have shown what the other had no time for, or had when nobody looked. */
export function laterWords(n: string, side: Side, isOtherShorter: boolean): string {
  const other = side === 'treated' ? 'untreated' : 'treated';
  const why = isOtherShorter
    ? `the ${other} seed was not watched for as long`
    : 'the looks at the two sides lie too far apart to compare';
  return `${n} more ${side} ${n === '1' ? 'seed' : 'seeds'} germinated after that, and ${why}`;
}

/** The side that nobody had looked at by the looks compared, where that is one of them. */
export function unseenSide({ treated, untreated }: Readonly<Record<Side, { readonly to: number }>>): Side | undefined {
  if ((treated.to === 0) === (untreated.to === 0)) return undefined;
  return treated.to === 0 ? 'treated' : 'untreated';
}

export function unseenWords(side: Side, other: string): string {
  return `${other}, and the ${side} seed had not been looked at by then`;
}
