import { accounted } from '../journal/life.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { countSpan } from './spans.ts';

/** More seeds germinated, rotted or were lost than there are. Said where it first shows, and again where it grows. */
export const countExceedsSown: LotCheck = function* (_lot, _context, events) {
  for (const { batch, entry, before, after, tested } of events.of('count')) {
    const sum = accounted(after);
    if (tested === undefined || sum <= tested || sum <= accounted(before)) continue;
    const { germinated, rotted, lost } = after;
    const where = batch.sowing ?? batch.made;
    yield found(entry.line, 'count-exceeds-sown',
      countSpan(entry.record, ['germinated', 'emerged', 'leaf', 'rotted', 'lost']),
      { batch: batch.path, germinated, rotted, lost, sum, tested: `${tested}${batch.sowing ? ' sown' : ' seeds'}` },
      { related: [relatedTo(where, `The ${tested} seeds`)] });
  }
};
