import type { Comparison } from './comparison.ts';
import { rounded, worth, type Contrast } from './contrast.ts';
import { reckonedPower } from './design.ts';
import { reaches } from './fisher.ts';
import { isUndefined } from './measured.ts';
import { THRESHOLDS } from './thresholds.ts';

/** p-values of one rung of a ladder after Holm's correction over all of its rungs. */
export interface Corrected {
  readonly fisher: number;
  /** Of both log-rank tests together; undefined where there was none. */
  readonly speed: number | undefined;
}

/** The findings that the rules of the verdict ask for. */
export interface Evidence {
  /**
   * What is judged: `sound` seedlings where the treatment is shown to cost seedlings, else germinated seed.
   */
  readonly outcome: 'germinated' | 'sound';
  readonly contrast: Contrast;
  readonly more: boolean;
  readonly fewer: boolean;
  /** The p-value of Fisher's test by which they are held; on a ladder after Holm. */
  readonly fisherP: number;
  readonly faster: boolean;
  readonly slower: boolean;
  /** The p-value behind `faster` and `slower`. */
  readonly speedP: number | undefined;
  /** Weak seedlings are shown to be more frequent. */
  readonly cost: boolean;
  /** The loss in germination, if any, is within what faster seed makes up for. */
  readonly tolerable: boolean;
  readonly ready: boolean;
  /** Seed may still germinate and change the comparison. */
  readonly open: boolean;
  /** Two shares 30 points apart, from the untreated share or as near to it as there is room. */
  readonly from: number;
  readonly to: number;
  /** The power to have told these two apart; of many seeds a little less than theirs, see reckonedPower. */
  readonly power: number;
  readonly visible: boolean;
  /** The interval of the difference does not lie above 0, and ends below 30 points. */
  readonly excluded: boolean;
}

/** 12 of 40 less 16 of 40 is not quite -0.1. */
const ROUNDING = 1e-9;

/** What a comparison is judged by. */
export type Judged = Pick<Evidence, 'outcome' | 'contrast' | 'cost'>;

export function judgedBy({ germinated, sound, seedlings: { weak } }: Comparison): Judged {
  const cost = !isUndefined(weak) && weak.difference.low > 0;
  return cost ? { outcome: 'sound', contrast: sound, cost } : { outcome: 'germinated', contrast: germinated, cost };
}

/**
 * The findings in a comparison. On a ladder of doses, `corrected` replaces its own p-values, and Fisher's
 * test has to agree with the interval.
 *
 * @example
 * evidenceOf(compare(treated, untreated), false)
 * // { outcome: 'germinated', more: true, faster: true, power: 0.35, ... }
 */
export function evidenceOf(comparison: Comparison, ready: boolean, corrected?: Corrected): Evidence {
  const { level, points, power: wanted, toleratedLoss } = THRESHOLDS;
  const speed = comparison.speed.combined;
  const judged = judgedBy(comparison);
  const { difference, treated, untreated } = judged.contrast;
  const fisherP = corrected?.fisher ?? judged.contrast.fisher.twoSided;
  const shown = corrected === undefined || reaches(fisherP, level.value);
  const speedP = isUndefined(speed) ? undefined : corrected?.speed ?? speed.p;
  const differs = !isUndefined(speed) && speedP !== undefined && reaches(speedP, level.value);
  const from = Math.min(untreated.x / untreated.n, 1 - points.value);
  const to = from + points.value;
  const [n1, n2] = [treated, untreated].map(side => rounded(worth(side, comparison.overdispersion)).n);
  const found = reckonedPower(n1!, n2!, to, from);
  return {
    ...judged,
    more: shown && difference.low > 0,
    fewer: shown && difference.high < 0,
    fisherP,
    faster: differs && speed.faster,
    slower: differs && !speed.faster,
    speedP,
    tolerable: difference.value >= -toleratedLoss.value - ROUNDING,
    ready,
    open: comparison.open.treated + comparison.open.untreated > 0,
    from,
    to,
    power: found,
    visible: found >= wanted.value,
    excluded: difference.low <= 0 && difference.high < points.value,
  };
}
