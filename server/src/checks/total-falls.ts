import { found, type LotCheck } from './check.ts';
import { eventsOf } from './events.ts';

/** A total with `=` that is lower than the one before. */
export const totalFalls: LotCheck = function* (lot) {
  for (const { batch, event: { entry, counts, before } } of eventsOf(lot, 'count')) {
    for (const { what, n, total, start, end } of counts) {
      if (!total || n.value >= before[what]) continue;
      yield found(entry.line, 'total-falls', { start, end }, { what, batch: batch.path, before: before[what], now: n.value });
    }
  }
};
