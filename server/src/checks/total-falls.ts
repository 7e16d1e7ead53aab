import { found, type LotCheck } from './check.ts';

/** A total with `=` that is lower than the one before. */
export const totalFalls: LotCheck = function* (_lot, _context, events) {
  for (const { batch, entry, counts, before } of events.of('count')) {
    for (const { what, n, total, start, end } of counts) {
      if (!total || n.value >= before[what]) continue;
      yield found(entry.line, 'total-falls', { start, end }, { what, batch: batch.path, before: before[what], now: n.value });
    }
  }
};
