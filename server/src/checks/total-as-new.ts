import { germinatedBy, lastOfTotals } from '../journal/as-totals.ts';
import { countsOf, hasTotal, type Batch, type CountEvent } from '../journal/life.ts';
import { isoOf } from '../model/day.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { countSpan } from './spans.ts';

/** Numbers that are probably totals without their `=`, and count lines that were written twice. */
export const totalAsNew: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    const counts = countsOf(batch);
    if (batch.unread || counts.length < 2) continue;
    yield* twice(batch, counts);
    const last = lastOfTotals(batch);
    if (last) {
      const numbers = counts.map(germinatedBy).join(', ');
      yield found(last.entry.line, 'total-as-new', countSpan(last.entry.record, ['germinated']), {
        what: `The counts of ${batch.path} (${numbers}) rise from one to the next and add up to ${last.after.germinated} of ${batch.tested} seeds.`,
        suggestion: 'If they are totals so far, put “=” before each number.',
      });
    }
  }
};

function* twice(batch: Batch, counts: readonly CountEvent[]): ReturnType<LotCheck> {
  for (const [n, count] of counts.entries()) {
    const { entry } = count;
    const before = counts[n - 1];
    if (!before || hasTotal(count) || before.entry.moment.day !== entry.moment.day || !isSame(before, count)) continue;
    yield found(entry.line, 'total-as-new', countSpan(entry.record, count.counts.map(({ what }) => what)), {
      what: `This count of ${batch.path} appears twice on ${isoOf(entry.moment.day)}, and is added twice.`,
      suggestion: 'Take one of the two lines out, or put “=” before the numbers.',
    }, { related: [relatedTo(before.entry, 'The first')] });
  }
}

function isSame(a: CountEvent, b: CountEvent): boolean {
  const text = ({ counts }: CountEvent) => counts.map(({ what, n, total }) => `${what} ${total ? '=' : ''}${n.value}`).sort().join();
  const isSameTime = a.entry.moment.minutes === b.entry.moment.minutes;
  return isSameTime && a.counts.some(({ n }) => n.value > 0) && text(a) === text(b);
}
