/** Drops of an active agent that can have reached seed which had not germinated: a treatment that nobody measured. */
import { accounted, type Batch, type BatchEvent, type CountEvent } from '../journal/life.ts';
import { isoOf } from '../model/day.ts';
import { factOf } from '../model/record.ts';
import { undefinedBecause, type Undefined } from '../measures/measured.ts';
import type { Drops } from './drops-watch.ts';
import { isActive } from './treatment.ts';

/**
 * Whether an event gave drops that can have reached such seed. Drops are for seedlings: they went on these where some
 * had been counted by then and the record says how many drops or seedlings, or where some of them were stuck; and where
 * the next count has all the seedlings that the record names. Anything else, such as 5 mL on a dish, wets the seed.
 */
export function isDropsOnSeed(batch: Batch, event: BatchEvent): event is Drops {
  if (event.type !== 'apply' || !event.doses.some(dose => dose.agent === undefined || isActive(dose))) return false;
  const life = [...batch.inherited, ...batch.events];
  const at = life.indexOf(event);
  const before = countIn(life.slice(0, at).toReversed());
  const named = factOf(event.entry.record, 'seedlings')?.n.value;
  if (!before || before.after.germinated === 0) {
    const next = countIn(life.slice(at));
    return named === undefined || !next || next.after.germinated < named;
  }
  const { after, tested } = before;
  if (tested !== undefined && accounted(after) >= tested) return false;
  return named === undefined && !factOf(event.entry.record, 'drops') && after.stuck === 0 && after.freed === 0;
}

function countIn(events: readonly BatchEvent[]): CountEvent | undefined {
  return events.find(event => event.type === 'count');
}

/** Why a batch is in no comparison that had such drops. */
export function wettedBy({ entry }: BatchEvent): Undefined {
  return undefinedBecause(
    `the “apply” of ${isoOf(entry.moment.day)} can have reached seed that had not germinated, so the seed is not untreated, `
    + 'and how long it was in the liquid is unknown');
}
