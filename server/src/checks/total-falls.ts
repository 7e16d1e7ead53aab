import { fallingTotals } from '../journal/wrong-numbers.ts';
import { found, type LotCheck } from './check.ts';

/** A total with `=` that is lower than the one before. */
export const totalFalls: LotCheck = function* (_lot, _context, events) {
  for (const count of events.of('count')) {
    const { batch, entry } = count;
    for (const { fact: { what, n, start, end }, before } of fallingTotals(count)) {
      yield found(entry.line, 'total-falls', { start, end }, { what, batch: batch.path, before, now: n.value });
    }
  }
};
