import { endingOf } from '../calendar/endings.ts';
import { isCounted, lastLook, nextLook } from '../calendar/looks.ts';
import { outdoorsSince, wantedLook } from '../calendar/outdoors.ts';
import { standingOf } from '../calendar/standing.ts';
import { found, type LotCheck } from './check.ts';
import { subjectOf } from './spans.ts';

/** Intervals without a look that are too many: common practice, no source. */
const INTERVALS = 8;

/** A batch that is to be counted and that nobody looked at for eight count intervals, a week each by default. */
export const noRecentCount: LotCheck = function* (lot, { now, journal }) {
  const interval = journal.limits.count(lot.plant).value;
  // By days, so that nothing changes in the course of one.
  const today = { day: now.day, minutes: undefined };
  for (const batch of lot.batches.values()) {
    if (batch.unread) continue;
    const standing = standingOf(batch, today);
    const look = lastLook(standing);
    if (!look || !isCounted(standing) || nextLook(look.moment.day, interval, INTERVALS) >= now.day) continue;
    const wanted = wantedLook(standing.past);
    if (wanted === undefined ? outdoorsSince(standing.past) : wanted >= now.day) continue;
    // Nobody need look at seed in the cold.
    const ending = endingOf(standing, today);
    if (ending?.stage === 'chill' && nextLook(ending.end, interval, INTERVALS) >= now.day) continue;
    yield found(look.line, 'no-recent-count', subjectOf(look), { batch: batch.path, days: now.day - look.moment.day });
  }
};
