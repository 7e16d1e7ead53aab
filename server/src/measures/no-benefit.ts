/** Whether comparisons together show that there is no benefit that matters: the lack of a difference is not enough. */
import { shareLater, type Comparison } from './comparison.ts';
import { differenceOver } from './difference-over.ts';
import { isUndefined } from './measured.ts';
import { THRESHOLDS } from './thresholds.ts';

/** Living seed was not watched for long: next to nothing germinated in any, or less than half in a few weeks. */
export function isTooSoon(comparisons: readonly Comparison[]): boolean {
  const { fewestSeeds, watchedDays, firstDays } = THRESHOLDS;
  if (comparisons.every(({ living }) => living === 0)) return false;
  const germinated = sumOver(comparisons, 'x');
  const days = Math.max(...comparisons.map(({ byDay }) => byDay));
  return (germinated < fewestSeeds.value && days < watchedDays.value)
    || (germinated * 2 < sumOver(comparisons, 'n') && days < firstDays.value);
}

/**
 * Over several lots: the interval of the difference includes 0 and excludes a benefit that matters, with what
 * germinated later. A lot in which nothing had its time says nothing, and must not make the interval narrower.
 */
export function hasNoBenefit(comparisons: readonly Comparison[]): boolean {
  const telling = comparisons.filter(each => !each.isCutShort && !(sumOver([each], 'x') === 0 && isTooSoon([each])));
  const difference = differenceOver(telling.map(({ germinated }) => germinated));
  return !isUndefined(difference) && !isTooSoon(telling) && difference.low <= 0
    && difference.high + shareLater(telling) < THRESHOLDS.points.value;
}

function sumOver(comparisons: readonly Comparison[], what: 'x' | 'n'): number {
  return comparisons.reduce((sum, { germinated: { treated, untreated } }) => sum + treated[what] + untreated[what], 0);
}
