import { afterItsClose } from '../journal/closing.ts';
import { isoOf } from '../model/day.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { subjectOf } from './spans.ts';

export const afterClose: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    for (const { event: { entry }, closedBy } of afterItsClose(batch)) {
      yield found(entry.line, 'after-close', subjectOf(entry),
        { batch: batch.path, keyword: closedBy.entry.record.keyword, date: isoOf(closedBy.entry.moment.day) },
        { related: [relatedTo(closedBy.entry, 'Closed here')] });
    }
  }
};
