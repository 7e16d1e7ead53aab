import { otherwise, rangeOver, testedAt } from '../journal/estimates.ts';
import { cutClasses } from '../model/record.ts';
import { seedsText } from '../words/seeds.ts';
import { found, type LotCheck } from './check.ts';
import { factsSpan } from './spans.ts';

/** A cut test sorts every seed that has neither germinated nor rotted nor been lost; no more, no fewer. */
export const cutDoesNotAddUp: LotCheck = function* (_lot, _context, events) {
  for (const event of events.of('cut')) {
    const { batch, entry, classes, totals, closedBy } = event;
    const expected = rangeOver([event, ...otherwise(batch, event)], each => each.expected);
    const tested = testedAt(batch, event);
    if (!expected || !tested || batch.unread || closedBy) continue;
    const sum = cutClasses.reduce((total, what) => total + classes[what], 0);
    if (sum >= expected.least && sum <= expected.most) continue;
    const { germinated, rotted, lost } = totals;
    const how = `${rangeText(tested)} ${batch.sowing ? 'sown' : tested.most === 1 ? 'seed' : 'seeds'}, ${germinated} germinated, ${rotted} rotted, ${lost} lost`;
    yield found(entry.line, 'cut-does-not-add-up', factsSpan(entry, 'cut'), { batch: batch.path, sum: seedsText(sum), left: rangeText(expected), how });
  }
};

function rangeText({ least, most }: { readonly least: number; readonly most: number }): string {
  return least === most ? String(least) : `${least} to ${most}`;
}
