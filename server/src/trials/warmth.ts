/** How warm seed was kept, as written. */
import { celsius, type Temperature } from '../model/quantity.ts';
import { factOf, type JournalRecord } from '../model/record.ts';
import { isSameWarmth } from './alike.ts';

/** Degrees Celsius by day and by night. */
export interface Warmth {
  readonly day: number;
  readonly night: number;
}

export function warmthOf({ day, night, unit }: Temperature): Warmth {
  return { day: celsius(day, unit), night: celsius(night ?? day, unit) };
}

/** The temperature that a record gives; undefined where none is written. */
export function warmthIn(record: JournalRecord): Warmth | undefined {
  const written = factOf(record, 'temperature')?.value;
  return written && warmthOf(written);
}

/** Whether both are written and the same within what thermometers tell. */
export function areAsWarm(a: Warmth | undefined, b: Warmth | undefined): boolean {
  return a !== undefined && b !== undefined && isSameWarmth(a.day, b.day) && isSameWarmth(a.night, b.night);
}

/** What is not written may be the same. */
export function mayBeAsWarm(a: Warmth | undefined, b: Warmth | undefined): boolean {
  return !a || !b || areAsWarm(a, b);
}
