import { testedAt } from '../journal/estimates.ts';
import { accounted } from '../journal/life.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { countSpan } from './spans.ts';

/** More seeds germinated, rotted or were lost than there are. Said where it first shows, and again where it grows. */
export const countExceedsSown: LotCheck = function* (_lot, _context, events) {
  for (const event of events.of('count')) {
    const { batch, entry, counts, before, after } = event;
    const sum = accounted(after);
    // Of seeds that were estimated there were at most so many.
    const tested = event.tested ?? testedAt(batch, event)?.most;
    if (tested === undefined || sum <= tested || sum <= accounted(before)) continue;
    const { germinated, rotted, lost } = after;
    const where = batch.sowing ?? batch.made;
    const again = counts.find(({ what, n, total }) => what === 'germinated' && !total && n.value > 0 && n.value === before.germinated)?.n.value;
    yield found(entry.line, 'count-exceeds-sown',
      countSpan(entry.record, ['germinated', 'emerged', 'leaf', 'rotted', 'lost']),
      {
        batch: batch.path, germinated, rotted, lost, sum, tested: `${event.tested === undefined ? 'at most ' : ''}${tested}${batch.sowing ? ' sown' : ' seeds'}`,
        suggestion: again === undefined ? 'Correct a number. With “=” it is the total so far; without, it is new since the last count.'
          : `${again} had been counted before: write =${again} if that is the total so far.`,
      },
      { related: [relatedTo(where, `The ${tested} seeds`)] });
  }
};
