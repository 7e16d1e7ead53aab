import { judgeChoice, judgeDayOf, judgeRecordsOf, watched, type JudgeRecord, type WhyIgnored } from '../calendar/judge-days.ts';
import { togetherWith } from '../calendar/together.ts';
import type { Batch, BatchEvent, Lot } from '../journal/life.ts';
import { isoOf, type Day } from '../model/day.ts';
import type { Fix } from '../model/problems.ts';
import { trialOf } from '../trials/lot-trial.ts';
import { found, type LotCheck } from './check.ts';

/** A `judge` that binds nothing: written after seed had been seen, beside an earlier one, or for a day gone by. */
export const notBeforehand: LotCheck = function* (lot, { now }, events) {
  const written = events.of('judge');
  if (written.length === 0) return;
  const standing = standingIn(lot, now.day);
  for (const event of written) {
    const record = judgeRecordsOf([event.batch]).find(({ entry }) => entry === event.entry);
    if (!record || event.batch.unread) continue;
    const why = whyNot(record, standing);
    if (why === undefined) continue;
    const { entry: { line }, batch: { path } } = event;
    yield found(line, 'not-beforehand', record.on, { batch: path, ...why.words }, { fixes: fixesOf(event, record, why.isAhead) });
  }
};

interface Standing {
  readonly holds: ReadonlySet<unknown>;
  readonly ignored: ReadonlyMap<unknown, WhyIgnored>;
}

/** Of all comparisons, and of the batches that take part in none yet. */
function standingIn(lot: Lot, today: Day): Standing {
  const { contests } = trialOf(lot, today);
  const compared = new Set<Batch>();
  const holds = new Set<unknown>();
  const ignored = new Map<unknown, WhyIgnored>();
  for (const { treated, untreated, judging, ignored: others } of contests) {
    for (const { batch } of [...treated.batches, ...untreated?.batches ?? []]) compared.add(batch);
    if (judging) holds.add(judging.record.entry);
    for (const { record, why } of others) ignored.set(record.entry, why);
  }
  for (const batch of lot.batches.values()) {
    if (compared.has(batch)) continue;
    const choice = judgeChoice(judgeRecordsOf([batch]), togetherWith(batch, lot).map(watched));
    // Seed that stayed in the tin is what a record about the lot names, not what it is about.
    if (choice.holds && (batch.origin || compared.size === 0)) holds.add(choice.holds.entry);
    for (const { record, why } of choice.ignored) ignored.set(record.entry, why);
  }
  return { holds, ignored };
}

interface Why {
  readonly words: { readonly why: string; readonly suggestion: string };
  /** Its day lies ahead of the day on which it was written. */
  readonly isAhead: boolean;
}

function whyNot(record: JudgeRecord, { holds, ignored }: Standing): Why | undefined {
  const { entry: { moment } } = record;
  const day = judgeDayOf(record, record.batch.origin?.moment.day);
  if ('date' in record.on && record.on.date.day <= moment.day) {
    return {
      words: {
        why: `its day is not after ${isoOf(moment.day)}, the day on which you wrote it`,
        suggestion: 'Correct a date, or take it out.',
      },
      isAhead: false,
    };
  }
  const why = ignored.get(record.entry);
  if (why === undefined || holds.has(record.entry)) return undefined;
  const words = why === 'seed was seen'
    ? {
      why: `by ${isoOf(moment.day)} you had seen seed germinate or rot`,
      suggestion: 'Set the day before anything comes up. You can keep the day as a reminder.',
    }
    : {
      why: 'an earlier one about the same seed counts instead',
      suggestion: 'Take it out. If nothing has come up yet, you can correct the first one.',
    };
  return { words, isAhead: day !== undefined && day > moment.day };
}

/** Its day stays as a reminder, or the line becomes a comment. */
function fixesOf({ entry: { line: { text }, record } }: BatchEvent, judge: JudgeRecord, isAhead: boolean): Fix[] {
  const day = judgeDayOf(judge, judge.batch.origin?.moment.day);
  const whole = { start: record.keywordSpan.start, end: text.trimEnd().length };
  const reminder = isAhead && day !== undefined
    ? [{ title: 'Make it a reminder', ...whole, text: `due ${judge.batch.path} ${isoOf(day)}, judge the trial` }]
    : [];
  const start = record.keywordSpan.start;
  return [...reminder, { title: 'Make it a comment', start, end: start, text: '# ' }];
}
