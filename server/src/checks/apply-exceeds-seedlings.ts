import { countsOf, type Batch, type BatchEvent } from '../journal/life.ts';
import { isoOf } from '../model/day.ts';
import { counted } from '../model/counted.ts';
import { factOf } from '../model/record.ts';
import { found, type LotCheck } from './check.ts';

/** Drops on more seedlings than there can be. */
export const applyExceedsSeedlings: LotCheck = function* (_lot, _context, events) {
  for (const event of events.of('apply')) {
    const { batch } = event;
    const seedlings = factOf(event.entry.record, 'seedlings');
    const most = seedlings && !batch.unread ? mostSeedlings(batch, event) : undefined;
    if (!seedlings || !most || seedlings.n.value <= most.there) continue;
    yield found(event.entry.line, 'apply-exceeds-seedlings', { start: seedlings.start, end: seedlings.end },
      { asked: counted(seedlings.n.value, 'seedling'), batch: batch.path, ...most });
  }
};

/**
 * The most seedlings that can have been there: what had germinated by a count of that day, else by the next one;
 * without such a count all seed that had not rotted or been lost. Those that had died by then are taken off.
 */
function mostSeedlings(batch: Batch, event: BatchEvent): { there: number; how: string } | undefined {
  const { day } = event.entry.moment;
  const at = batch.events.indexOf(event);
  const counts = countsOf(batch).map(count =>
    ({ ...count, day: count.entry.moment.day, before: batch.events.indexOf(count) < at }));
  const last = counts.findLast(({ before }) => before);
  const died = last?.after.died ?? 0;
  const seen = counts.findLast(count => count.day === day) ?? counts.find(({ before }) => !before);
  if (seen) {
    const { germinated } = seen.after;
    return { there: Math.max(0, germinated - died), how: `${germinated} germinated by ${isoOf(seen.day)}${lessDied(died)}` };
  }
  const tested = last?.tested ?? batch.tested;
  if (tested === undefined) return undefined;
  const gone = (last?.after.rotted ?? 0) + (last?.after.lost ?? 0);
  const less = gone > 0 ? `, less ${gone} rotted or lost` : '';
  return { there: Math.max(0, tested - gone - died), how: `${counted(tested, 'seed')}${less}${lessDied(died)}` };
}

function lessDied(died: number): string {
  return died > 0 ? `, less ${died} that had died` : '';
}
