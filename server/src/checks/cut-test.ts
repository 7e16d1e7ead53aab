import { cutClasses, factsOf } from '../model/record.ts';
import { found, type LotCheck } from './check.ts';

/** A cut test sorts every seed that has neither germinated nor rotted nor been lost; no more, no fewer. */
export const cutDoesNotAddUp: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    for (const event of batch.events) {
      if (event.type !== 'cut' || event.expected === undefined || event.entry.record.broken) continue;
      const sum = cutClasses.reduce((total, what) => total + event.classes[what], 0);
      if (sum === event.expected) continue;
      const { germinated, rotted, lost } = batch.totals;
      const base = (batch.sowing ? batch.sown : batch.kept) ?? 0;
      const facts = factsOf(event.entry.record, 'cut');
      const span = { start: facts[0]?.start ?? 0, end: facts.at(-1)?.end ?? 0 };
      const how = `${base} ${batch.sowing ? 'sown' : 'seeds'}, ${germinated} germinated, ${rotted} rotted, ${lost} lost`;
      yield found(event.entry.line, 'cut-does-not-add-up', span, { batch: batch.path, sum, left: event.expected, how });
    }
  }
};
