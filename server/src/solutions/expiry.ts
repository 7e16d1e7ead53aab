/** How a stock stands to the day it is to be thrown away. */
import type { Day } from '../model/day.ts';

export interface ShelfLife {
  readonly state: 'good' | 'near' | 'expired';
  /** Days until the last good day; negative after it. */
  readonly daysLeft: number;
  /** Age in days; undefined where the day it was made is not known. */
  readonly age: number | undefined;
}

/** Days before the end at which a warning begins: common practice, no source. */
export const NEAR_DAYS = 30;

/** The last good day is `keepsUntil`; months and years are the caller's to count. */
export function shelfLife(today: Day, keepsUntil: Day, made?: Day, nearDays: number = NEAR_DAYS): ShelfLife {
  const daysLeft = keepsUntil - today;
  let state: ShelfLife['state'] = 'good';
  if (daysLeft < 0) state = 'expired';
  else if (daysLeft <= nearDays) state = 'near';
  return { state, daysLeft, age: made === undefined ? undefined : today - made };
}
