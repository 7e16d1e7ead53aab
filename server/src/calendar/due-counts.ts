import type { Journal } from '../journal/journal.ts';
import type { Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { isoOf } from '../model/day.ts';
import type { Due } from './due-sources.ts';
import { endingOf } from './endings.ts';
import { isLeftOff } from './left-off.ts';
import { isCounted, isLeftInCold, lastLook, nextLook, wokenBy } from './looks.ts';
import { outdoorsSince, wantedLook } from './outdoors.ts';
import type { Standing } from './standing.ts';

/**
 * The next count of a batch, one count interval after the last look at it; in the cold as in the warm. A batch that was
 * left off, and of which nothing else would tell, owes one too.
 */
export function* countDue({ limits }: Journal, lot: Lot, standing: Standing, now: Moment): Iterable<Due> {
  const look = lastLook(standing);
  if (!look || !(isCounted(standing) || isForgottenInCold(standing, now))) return;
  const { batch: { path }, past } = standing;
  const wanted = wantedLook(past);
  // Outdoors the grower says when: nobody looks into a cold frame every week of a winter.
  if (wanted === undefined && outdoorsSince(past) && !isLeftOff(standing, now)) return;
  yield {
    kind: 'count', id: path, entry: look, since: wokenBy(standing)!.moment,
    at: { day: wanted ?? nextLook(look.moment.day, limits.count(lot.plant).value), minutes: undefined },
    what: `count; last looked at on ${isoOf(look.moment.day)} (${look.record.keyword})`,
    ask: { keyword: 'count', subject: path, facts: '', timed: false },
  };
}

/** A packet in the cold whose stage has no end, so that its end is never due. */
function isForgottenInCold(standing: Standing, now: Moment): boolean {
  return isLeftInCold(standing) && isLeftOff(standing, now) && !endingOf(standing, now);
}
