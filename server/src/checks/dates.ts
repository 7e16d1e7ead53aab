/** Dates that contradict each other. The order of dates against the order of lines is no problem. */
import { isBefore, printMoment } from '../journal/moment.ts';
import { isoOf } from '../model/day.ts';
import { dayAfter } from '../model/quantity.ts';
import { isRemarkKind } from '../model/keywords.ts';
import { factOf } from '../model/record.ts';
import { found, relatedTo, subjectOf, type LotCheck } from './check.ts';

export const endBeforeStart: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    for (const { type, entry } of batch.events) {
      const until = type === 'soak' ? factOf(entry.record, 'until') : undefined;
      if (!until) continue;
      const end = { day: until.date.day, minutes: until.time?.minutes };
      if (isBefore(end, entry.moment)) {
        yield found(entry.line, 'end-before-start', until, { end: printMoment(end), start: printMoment(entry.moment) });
      }
    }
  }
};

export const afterClose: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    for (const { entry, closedBy } of batch.events) {
      if (!closedBy || isRemarkKind(entry.record.keyword)) continue;
      yield found(entry.line, 'after-close', subjectOf(entry),
        { batch: batch.path, keyword: closedBy.entry.record.keyword, date: isoOf(closedBy.entry.moment.day) }, [],
        [relatedTo(closedBy.entry, 'Closed here')]);
    }
  }
};

export const sownBeforeCollected: LotCheck = function* (lot) {
  if (!lot.collected) return;
  for (const batch of lot.batches.values()) {
    for (const { type, entry } of batch.events) {
      if ((type !== 'sow' && type !== 'soak' && type !== 'stage') || entry.moment.day >= lot.collected.first) continue;
      yield found(entry.line, 'sown-before-collected', entry.record.date ?? subjectOf(entry),
        { batch: batch.path, date: isoOf(entry.moment.day), collected: isoOf(lot.collected.first) }, [], [relatedTo(lot.definition, 'The lot')]);
    }
  }
};

const INTERVALS_WITHOUT_COUNT = 8;

/** An open batch that nobody looked at for eight times the count interval (a week by default): common practice, no source. */
export const noRecentCount: LotCheck = function* ({ batches }, { now, journal }) {
  const interval = dayAfter(0, journal.limits.count.value);
  for (const batch of batches.values()) {
    if (batch.closed || !batch.sowing || batch.kept === 0) continue;
    const last = batch.events.findLast(({ type }) => type === 'count' || type === 'sow' || type === 'stage' || type === 'pot')?.entry ?? batch.sowing;
    const days = now.day - last.moment.day;
    if (days > interval * INTERVALS_WITHOUT_COUNT && !allAccounted(batch)) {
      yield found(last.line, 'no-recent-count', subjectOf(last), { batch: batch.path, days });
    }
  }
};

/** Nothing is left to wait for. */
function allAccounted({ sown, totals }: { sown: number | undefined; totals: { germinated: number; rotted: number; lost: number } }): boolean {
  return sown !== undefined && totals.germinated + totals.rotted + totals.lost >= sown;
}
