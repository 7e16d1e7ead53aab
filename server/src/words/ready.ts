/** Untreated seed that came up well and soon, in words. */
import type { ReadyRecord } from '../trials/ready.ts';
import { groupNames } from './trials.ts';

/**
 * Example: '18 of 20 untreated seeds germinated (90 %, 95 % interval 70 to 97) in B, half of the seed by day 12.'
 */
export function readyText({ group, readiness: { x, n, halfBy, interval } }: ReadyRecord): string {
  const percent = (share: number) => String(Math.round(100 * share));
  return `${x} of ${n} untreated seeds germinated (${percent(x / n)} %, 95 % interval ${percent(interval.low)} to ${percent(interval.high)}) in ${groupNames(group)}, half of the seed by day ${halfBy}.`;
}
