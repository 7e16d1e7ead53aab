/** What a claim comes to by the last look at every batch, where that tells more than the looks compared. */
import { germinated, sound } from './contrast.ts';
import { atMost } from './looks.ts';
import { shareTest, type ShareTest, type Side } from './share-test.ts';
import { surely, surelySound } from './surely.ts';

/** The shares by the last looks; the two sides may have been watched for different times. */
export interface InTheEnd {
  readonly germinated: ShareTest;
  readonly sound: ShareTest;
}

/**
 * Undefined where nothing was found after the age compared that speaks against the claim: no more germinated seed of
 * the second side, and no more weak seedlings of the first. Seed that was lost since counts as not germinated.
 */
export function inTheEnd(first: Side, second: Side, age: number): InTheEnd | undefined {
  const isCaughtUp = second.flat().some(course => germinated(course) > atMost(course, 'germinated', age));
  const isWeakened = first.flat().some(course => surelySound(Infinity)(course) < surelySound(age)(course));
  if (!isCaughtUp && !isWeakened) return undefined;
  return {
    germinated: shareTest(first, second, surely(Infinity), germinated),
    sound: shareTest(first, second, surelySound(Infinity), sound),
  };
}
