/** Batches that nobody wrote of any more, and nobody closed. */
import type { Moment } from '../journal/moment.ts';
import { endingOf } from './endings.ts';
import { wantedLook } from './outdoors.ts';
import type { Standing } from './standing.ts';

/**
 * Days after which nobody acts on what was due: a year, and the month in which a grower looks back on it. Common
 * practice, no source.
 */
export const PAST_DAYS = 400;

/**
 * Whether it is more than PAST_DAYS since the last record of a batch, since the end of the stage that it is in, and
 * since the day on which the grower means to look again. A record of a day to come shows that it is not forgotten.
 */
export function isLeftOff(standing: Standing, now: Moment): boolean {
  const { past, ahead, batch: { made } } = standing;
  const isOld = (day: number | undefined) => day === undefined || now.day - day > PAST_DAYS;
  const last = past.at(-1)?.entry.moment.day;
  return last !== undefined && isOld(last) && isOld(made.moment?.day) && ahead.length === 0
    && isOld(wantedLook(past)) && isOld(endingOf(standing, now)?.end);
}
