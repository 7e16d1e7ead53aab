import { rangeText, wrongCuts } from '../journal/closing.ts';
import { seedsText } from '../words/seeds.ts';
import { found, type LotCheck } from './check.ts';
import { factsSpan } from './spans.ts';

/** A cut test sorts every seed that has neither germinated nor rotted nor been lost; no more, no fewer. */
export const cutDoesNotAddUp: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    for (const { event: { entry, totals }, sum, tested, expected } of wrongCuts(batch)) {
      const { germinated, rotted, lost } = totals;
      const how = `${rangeText(tested)} ${batch.sowing ? 'sown' : tested.most === 1 ? 'seed' : 'seeds'}, ${germinated} germinated, ${rotted} rotted, ${lost} lost`;
      yield found(entry.line, 'cut-does-not-add-up', factsSpan(entry, 'cut'), { batch: batch.path, sum: seedsText(sum), left: rangeText(expected), how });
    }
  }
};
