/** Batches that nobody wrote of any more, and nobody closed. */
import type { Moment } from '../journal/moment.ts';
import { PAST_DAYS } from './due.ts';
import type { Standing } from './standing.ts';

/** Whether the last record of a batch is older than PAST_DAYS. */
export function isLeftOff({ past }: Standing, { day }: Moment): boolean {
  const last = past.at(-1)?.entry.moment.day;
  return last !== undefined && day - last > PAST_DAYS;
}
