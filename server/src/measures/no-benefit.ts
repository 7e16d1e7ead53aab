/** Whether comparisons together show that there is no benefit that matters: the lack of a difference is not enough. */
import { shareLater, type Comparison } from './comparison.ts';
import { differenceOver } from './difference-over.ts';
import { isUndefined } from './measured.ts';
import { THRESHOLDS } from './thresholds.ts';

/** Next to nothing germinated in any of them, and living seed was not watched for long. */
export function isTooSoon(comparisons: readonly Comparison[]): boolean {
  const { fewestSeeds, watchedDays } = THRESHOLDS;
  return comparisons.some(({ living }) => living > 0)
    && comparisons.reduce((sum, each) => sum + germinatedIn(each), 0) < fewestSeeds.value
    && comparisons.every(({ byDay }) => byDay < watchedDays.value);
}

/**
 * Over several lots: the interval of the difference includes 0 and excludes a benefit that matters, with what
 * germinated later. A lot in which nothing had its time says nothing, and must not make the interval narrower.
 */
export function hasNoBenefit(comparisons: readonly Comparison[]): boolean {
  const telling = comparisons.filter(each => !each.isCutShort && !(germinatedIn(each) === 0 && isTooSoon([each])));
  const difference = differenceOver(telling.map(({ germinated }) => germinated));
  return !isUndefined(difference) && !isTooSoon(telling) && difference.low <= 0
    && difference.high + shareLater(telling) < THRESHOLDS.points.value;
}

function germinatedIn({ germinated: { treated, untreated } }: Comparison): number {
  return treated.x + untreated.x;
}
