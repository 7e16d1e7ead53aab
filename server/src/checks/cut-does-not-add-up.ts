import { wrongCuts } from '../journal/closing.ts';
import { rangeText } from '../model/estimate.ts';
import { rangedSeedsText, seedsText } from '../words/seeds.ts';
import { found, type LotCheck } from './check.ts';
import { factsSpan } from './spans.ts';

/** A cut test sorts every seed that has neither germinated nor rotted nor been lost; no more, no fewer. */
export const cutDoesNotAddUp: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    for (const { event: { entry, totals }, sum, tested, expected } of wrongCuts(batch)) {
      const { germinated, rotted, lost } = totals;
      const how = `${batch.sowing ? `${rangeText(tested)} sown` : rangedSeedsText(tested)}, ${germinated} germinated, ${rotted} rotted, ${lost} lost`;
      yield found(entry.line, 'cut-does-not-add-up', factsSpan(entry, 'cut'), { batch: batch.path, sum: seedsText(sum), left: rangeText(expected), how });
    }
  }
};
