import { testedAt } from '../journal/estimates.ts';
import { countTotals } from '../journal/counting.ts';
import { accounted, type CountEvent } from '../journal/life.ts';
import type { CountFact } from '../model/record.ts';
import { seedsText } from '../words/seeds.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { countSpan } from './spans.ts';

/** More seeds germinated, rotted or were lost than there are. Said where it first shows, and again where it grows. */
export const countExceedsSown: LotCheck = function* (_lot, _context, events) {
  for (const event of events.of('count')) {
    const { batch, entry, before, after } = event;
    const sum = accounted(after);
    // Of seeds that were estimated there were at most so many.
    const tested = event.tested ?? testedAt(batch, event)?.most;
    if (tested === undefined || sum <= tested || sum <= accounted(before)) continue;
    const { germinated, rotted, lost } = after;
    const where = batch.sowing ?? batch.made;
    yield found(entry.line, 'count-exceeds-sown',
      countSpan(entry.record, ['germinated', 'emerged', 'leaf', 'rotted', 'lost']),
      {
        batch: batch.path, germinated, rotted, lost, sum, tested: `${event.tested === undefined ? 'at most ' : ''}${batch.sowing ? `${tested} sown` : seedsText(tested)}`,
        suggestion: suggestionFor(event, tested),
      },
      { related: [relatedTo(where, `The ${seedsText(tested)}`)] });
  }
};

/** The sum, where a number was added to one counted before: as a total so far it may be right. */
function suggestionFor(event: CountEvent, tested: number): string {
  const { before, after, counts } = event;
  const added = counts.find(({ what, total }) => what === 'germinated' && !total)?.n.value ?? 0;
  if (added === 0 || before.germinated === 0 || before.germinated + added !== after.germinated) {
    return 'Correct a number. With “=” it is the total so far; without, it is new since the last count.';
  }
  const sum = `${before.germinated} germinated before and ${added} new make ${after.germinated}`;
  return totalMeant(event, tested)?.what === 'germinated'
    ? `${sum}: if ${added} is the total so far, write =${added}; if not, correct a number.`
    : `${sum}: correct a number.`;
}

/** The number that may be the total so far: it is no less than what was counted before, and there are seeds enough. */
export function totalMeant({ before, counts }: Pick<CountEvent, 'before' | 'counts'>, tested: number): CountFact | undefined {
  return counts.find(fact => {
    const { what, n, total } = fact;
    if (total || before[what] === 0 || n.value < before[what]) return false;
    const after = countTotals(before, counts.map(each => (each === fact ? { ...each, total: true } : each)));
    return accounted(after) <= tested;
  });
}
