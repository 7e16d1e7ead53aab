/** Counts that cannot be: more than sown, more than germinated, totals that fall, and dates that cannot be. */
import { countsOf, type CountEvent } from '../journal/life.ts';
import { isoOf } from '../model/day.ts';
import type { Countable } from '../model/record.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { spanOfCount } from './spans.ts';

export const countExceedsSown: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    const sown = batch.sowing ? batch.sown : batch.kept;
    if (sown === undefined) continue;
    let before = 0;
    for (const { entry, after } of countsOf(batch)) {
      const { germinated, rotted, lost } = after;
      const sum = germinated + rotted + lost;
      // Shown where the sum first passes the seeds, and again only where it grows further.
      if (sum > sown && sum > before) {
        yield found(entry.line, 'count-exceeds-sown', spanOfCount(entry.record, ['germinated', 'emerged', 'leaf', 'rotted', 'lost']),
          { batch: batch.path, germinated, rotted, lost, sum, sown }, [], [relatedTo(batch.sowing ?? batch.made, `The ${sown} seeds`)]);
      }
      before = sum;
    }
  }
};

const ofSeedlings = ['died', 'leggy', 'abnormal'] as const satisfies readonly Countable[];

export const moreThanGerminated: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    for (const { entry, before, after } of countsOf(batch)) {
      for (const what of ofSeedlings) {
        if (after[what] <= after.germinated || after[what] === before[what]) continue;
        yield found(entry.line, 'more-than-germinated', spanOfCount(entry.record, [what]),
          { n: after[what], what, batch: batch.path, germinated: after.germinated });
      }
    }
  }
};

export const totalFalls: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    for (const event of countsOf(batch)) yield* falls(event, batch.path);
  }
};

function* falls({ entry, counts, before }: CountEvent, batch: string) {
  for (const { what, n, total, start, end } of counts) {
    if (total && n.value < before[what]) {
      yield found(entry.line, 'total-falls', { start, end }, { what, batch, before: before[what], now: n.value });
    }
  }
}

export const countInFuture: LotCheck = function* ({ batches }, { now }) {
  for (const batch of batches.values()) {
    for (const { entry } of countsOf(batch)) {
      const { line, record, moment } = entry;
      if (moment.day > now.day) {
        yield found(line, 'count-in-future', record.date ?? record.subject ?? record.keywordSpan, { date: isoOf(moment.day), today: isoOf(now.day) });
      }
    }
  }
};

export const countBeforeSowing: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    const { origin, sowing } = batch;
    const first = sowing ?? undefined;
    for (const { entry, emptied } of countsOf(batch)) {
      const early = first ? entry.moment.day < first.moment.day : !origin || entry.moment.day < origin.moment.day;
      if (!early || emptied) continue;
      const before = first ? `before it was sown on ${isoOf(first.moment.day)}`
        : origin ? `before the ${origin.by} on ${isoOf(origin.moment.day)}` : 'but no sowing is written';
      yield found(entry.line, 'count-before-sowing', entry.record.date ?? entry.record.subject ?? entry.record.keywordSpan,
        { batch: batch.path, date: isoOf(entry.moment.day), before }, [], first ? [relatedTo(first, 'The sowing')] : []);
    }
  }
};
