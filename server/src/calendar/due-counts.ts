import type { Journal } from '../journal/journal.ts';
import type { Lot } from '../journal/life.ts';
import { isoOf } from '../model/day.ts';
import type { Due } from './due-sources.ts';
import { isCounted, lastLook, nextLook, wokenBy } from './looks.ts';
import { outdoorsSince, wantedLook } from './outdoors.ts';
import type { Standing } from './standing.ts';

/** The next count of a batch, one count interval after the last look at it; in the cold as in the warm. */
export function* countDue({ limits }: Journal, lot: Lot, standing: Standing): Iterable<Due> {
  const look = lastLook(standing);
  if (!look || !isCounted(standing)) return;
  const { batch: { path }, past } = standing;
  const wanted = wantedLook(past);
  // Outdoors the grower says when: nobody looks into a cold frame every week of a winter.
  if (wanted === undefined && outdoorsSince(past)) return;
  yield {
    kind: 'count', id: path, entry: look, since: wokenBy(standing)!.moment,
    at: { day: wanted ?? nextLook(look.moment.day, limits.count(lot.plant).value), minutes: undefined },
    what: `count; last looked at on ${isoOf(look.moment.day)} (${look.record.keyword})`,
    ask: { keyword: 'count', subject: path, facts: '', timed: false },
  };
}
