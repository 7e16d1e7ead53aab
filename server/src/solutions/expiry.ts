/** How a stock stands to the day it is to be thrown away. */
import type { Day } from '../model/day.ts';

export interface ShelfLife {
  readonly state: 'good' | 'near' | 'expired';
  /** Days until the last good day; negative after it. */
  readonly daysLeft: number;
  /** In days. */
  readonly age: number;
}

/**
 * Days before the end from which on it is near: 30, and of what keeps less than 300 days a tenth of its time. Common
 * practice, no source.
 */
const NEAR_DAYS = 30;
const NEAR_SHARE = 10;

/** `until` is the last good day; months and years are the caller's to count. */
export function shelfLife(today: Day, made: Day, until: Day): ShelfLife {
  const daysLeft = until - today;
  const near = Math.min(NEAR_DAYS, Math.floor((until - made) / NEAR_SHARE));
  return { state: daysLeft < 0 ? 'expired' : daysLeft <= near ? 'near' : 'good', daysLeft, age: today - made };
}
