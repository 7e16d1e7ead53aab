import { hasTotal } from '../journal/life.ts';
import { found, type LotCheck } from './check.ts';

/** A total with `=` that is lower than the one before. */
export const totalFalls: LotCheck = function* (_lot, _context, events) {
  for (const count of events.of('count')) {
    if (!hasTotal(count)) continue;
    const { batch, entry, counts, before } = count;
    for (const { what, n, total, start, end } of counts) {
      if (!total || n.value >= before[what]) continue;
      yield found(entry.line, 'total-falls', { start, end }, { what, batch: batch.path, before: before[what], now: n.value });
    }
  }
};
