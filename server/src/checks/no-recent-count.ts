import { accounted, isGivenOut, type Batch } from '../journal/life.ts';
import type { Day } from '../model/day.ts';
import { dayAfter } from '../model/quantity.ts';
import { found, type LotCheck } from './check.ts';
import { subjectOf } from './spans.ts';

const INTERVALS_WITHOUT_COUNT = 8;

/** An open batch that nobody looked at for eight count intervals (of a week by default): common practice, no source. */
export const noRecentCount: LotCheck = function* ({ batches, plant }, { now, journal }) {
  const patience = dayAfter(0, journal.limits.count(plant).value) * INTERVALS_WITHOUT_COUNT;
  for (const batch of batches.values()) {
    const { path, sowing, closed, unread } = batch;
    if (!sowing || closed || unread || isGivenOut(batch) || isAllAccounted(batch)) continue;
    const last = batch.events.findLast(({ type }) => type === 'count' || type === 'sow' || type === 'stage' || type === 'pot');
    const { entry } = last ?? { entry: sowing };
    const seen = Math.max(entry.moment.day, chilledUntil(batch) ?? -Infinity);
    if (now.day - seen <= patience) continue;
    yield found(entry.line, 'no-recent-count', subjectOf(entry), { batch: path, days: now.day - entry.moment.day });
  }
};

/** The day until which the seed is meant to lie in the cold, where nobody need look at it. */
function chilledUntil({ stages }: Batch): Day | undefined {
  const stage = stages.at(-1);
  return stage?.stage === 'chill' && !stage.end && stage.planned ? dayAfter(stage.start.day, stage.planned) : undefined;
}

/** Nothing is left to wait for. */
function isAllAccounted({ tested, totals }: Batch): boolean {
  return tested !== undefined && accounted(totals) >= tested;
}
