/** What is known in spite of estimates, and what is not, once the life of a batch has been read with all their ends. */
import { cutClasses } from '../model/record.ts';
import type { BatchDraft, Draft } from './batches.ts';
import { otherwise, rangeOf } from './estimates.ts';
import { accounted, type BatchEvent } from './life.ts';

/** What was concluded from a number that is not known, and would be otherwise by some number, is not known either. */
export function forgetGuesses(batch: BatchDraft): void {
  for (const what of ['kept', 'sown', 'tested'] as const) {
    if (batch.worlds.some(world => world[what] !== batch[what])) batch[what] = undefined;
  }
  for (const event of batch.events as Draft<BatchEvent>[]) {
    if (event.type !== 'count' && event.type !== 'cut') continue;
    if (otherwise(batch, event).some(({ tested }) => tested !== event.tested)) event.tested = undefined;
  }
}

/**
 * A cut test sorts every seed that had not germinated, and so counts them all in the end: what was estimated is known,
 * where it lies within the estimate and no seed was split off.
 */
export function settleByCut(batch: BatchDraft): void {
  const { cut, events, sowing, worlds } = batch;
  const range = rangeOf(batch, 'tested');
  if (worlds.length === 0 || !cut || cut.closedBy || batch.tested !== undefined || !range || batch.unread) return;
  if (batch.children.length > 0) return;
  const sorted = cutClasses.reduce((sum, what) => sum + cut.classes[what], 0);
  const all = sorted + accounted(cut.totals);
  if (all < range.least || all > range.most) return;
  batch.tested = all;
  if (sowing && batch.atSowing.germinated + batch.atSowing.spoilt === 0) batch.sown = all;
  for (const event of events as Draft<BatchEvent>[]) {
    if (event.type === 'count' || event.type === 'cut') event.tested = all;
    if (event.type === 'cut') event.expected = sorted;
  }
}
