import type { Claim } from './claim.ts';
import { shareLater, type Comparison } from './comparison.ts';
import { claimed as claimedShare } from './contrast.ts';
import { newcombe } from './difference.ts';
import { reaches } from './fisher.ts';
import { isTooSoon } from './no-benefit.ts';
import {
  excludesGreatLoss, isGreater, lasting, overtakenIn, type Claimed, type Last, type Lasts, type Overtaken,
} from './lasting.ts';
import { isUndefined } from './measured.ts';
import type { ShareTest } from './share-test.ts';
import { THRESHOLDS } from './thresholds.ts';
import { isWeakerThan } from './weak.ts';

/**
 * How much room several treatments that were tried beside one untreated part leave each other: the p-values of this one
 * are multiplied by it (Holm). 1: it is the only one.
 */
export interface Room {
  readonly better: number;
  readonly worse: number;
  /** Treatments that share the error. */
  readonly treatments: number;
}

const ALONE: Room = { better: 1, worse: 1, treatments: 1 };

/**
 * The findings that the rules of the verdict ask for. p-values are one-sided and adjusted for all roads and
 * treatments.
 */
export interface Evidence extends Claimed {
  readonly betterP: number;
  readonly worseP: number;
  /** Weak seedlings are more frequent among the treated, however their words overlap. */
  readonly weaker: boolean;
  /** The same among the untreated. */
  readonly untreatedWeaker: boolean;
  /** The interval of the difference excludes a loss, or a gain, above the tolerated one. */
  readonly noGreatLoss: boolean;
  readonly noGreatGain: boolean;
  /** It ends below 30 points without lying above 0. */
  readonly excluded: boolean;
  /** What germinated after the looks compared, or what they leave out, could hide such a benefit. */
  readonly endedEarly: boolean;
  /** Next to nothing germinated on either side, and living seed was not watched for long. */
  readonly tooSoon: boolean;
  readonly ready: boolean;
  /** Seed may still germinate and change the comparison. */
  readonly open: boolean;
  /** It did not last, and is not claimed. */
  readonly overtaken: Overtaken | undefined;
  /** Fewer seeds a side than that, less those found empty. */
  readonly tooFew: boolean;
  readonly room: Room;
}

/**
 * The findings in a comparison. While seed may still germinate, and where `isStrict` says that the end may have been
 * chosen, only what reaches a smaller level counts.
 *
 * @example
 * evidenceOf(compare(treated, untreated)) // { more: true, ahead: true, betterP: 0.0004, ... }
 */
export function evidenceOf(comparison: Comparison, room: Room = ALONE, isStrict = false): Evidence {
  const { better, worse, germinated: { difference }, weak, untreatedWeak } = comparison;
  const { level, soFar, fewestSeeds, points } = THRESHOLDS;
  const open = comparison.open.treated + comparison.open.untreated > 0;
  const tooFew = Math.min(comparison.full.treated, comparison.full.untreated) < fewestSeeds.value;
  const needed = open || isStrict || comparison.isCutShort ? soFar.value : level.value;
  const isShown = (p: number, factor: number) => !tooFew && reaches(p * factor, needed);
  const pace = ({ ahead, sooner }: Claim) => Math.min(
    ...[ahead, sooner].map(found => (isUndefined(found) ? 1 : found.joint)));
  const more = isShown(better.germinated.joint, room.better) && claimedShare(better.germinated).low > 0;
  const ahead = isShown(pace(better), room.better);
  const fewer = isShown(worse.germinated.joint, room.worse) && claimedShare(worse.germinated).low > 0;
  const fewerSound = isShown(worse.sound.joint, room.worse);
  const behind = isShown(pace(worse), room.worse);
  const sounder = isShown(better.sound.joint, room.better) && staysSound(comparison);
  const compared = { more, sounder, ahead, fewer, fewerSound, behind };
  const claimed = lasting(compared, { better: lastsOf(better), worse: lastsOf(worse) });
  return {
    ...claimed,
    overtaken: overtakenIn(compared, claimed),
    betterP: Math.min(1, better.p * room.better),
    worseP: Math.min(1, worse.p * room.worse),
    weaker: isWeakerThan(weak.treated, weak.untreated),
    untreatedWeaker: isWeakerThan(untreatedWeak.untreated, untreatedWeak.treated),
    noGreatLoss: excludesGreatLoss(difference),
    noGreatGain: excludesGreatLoss({ low: -difference.high }),
    excluded: difference.low <= 0 && difference.high < points.value,
    endedEarly: comparison.isCutShort || difference.high + shareLater([comparison]) >= points.value,
    tooSoon: isTooSoon([comparison]),
    ready: comparison.isReady,
    open, tooFew, room,
  };
}

/** With what became of the seedlings after a day of judging. */
function staysSound({ soundAfterJudging: test }: Comparison): boolean {
  return isGreater(test && lastOf(test));
}

function lastsOf({ inTheEnd }: Claim): Lasts | undefined {
  if (!inTheEnd) return undefined;
  return { germinated: lastOf(inTheEnd.germinated), sound: lastOf(inTheEnd.sound) };
}

function lastOf({ p, first, second }: ShareTest): Last {
  return { p, difference: newcombe(first, second) };
}
