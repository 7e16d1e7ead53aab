/** `judge` records: on which day a trial is to be judged, as the grower said beforehand. */
import type { Batch, DatedEntry } from '../journal/life.ts';
import type { Day } from '../model/day.ts';
import { factOf, type JudgeDayFact } from '../model/record.ts';

/**
 * Days after the day of judging on which a look may still take its place. A grower who counts every week does not
 * always come on the day itself. Common practice, no source.
 */
export const GRACE_DAYS = 7;

export interface JudgeRecord {
  readonly entry: DatedEntry;
  /** The lot or the batch that it names. */
  readonly batch: Batch;
  readonly on: JudgeDayFact;
}

/** A batch as a `judge` record finds it. */
export interface Watched {
  /** Day 0; undefined where it has none yet. */
  readonly dayZero: Day | undefined;
  /** The first day on which seed of it was seen to have germinated or rotted. */
  readonly found: Day | undefined;
  /** The day on which it was closed. */
  readonly closed: Day | undefined;
}

/** The day on which a record wants a batch judged; undefined where it counts from a day 0 that is not there yet. */
export function judgeDayOf({ on }: JudgeRecord, dayZero: Day | undefined): Day | undefined {
  if ('date' in on) return on.date.day;
  return dayZero === undefined ? undefined : dayZero + on.age.value;
}

/** The records about some batches and about what these were split off from, in the order in which they were written. */
export function judgeRecordsOf(batches: readonly Batch[]): JudgeRecord[] {
  const family = new Set<Batch>();
  for (const batch of batches) for (let each: Batch | undefined = batch; each; each = each.parent) family.add(each);
  return [...family]
    .flatMap(batch => batch.events.flatMap(({ type, entry }) => {
      const on = type === 'judge' ? factOf(entry.record, 'on') : undefined;
      return on ? [{ entry, batch, on }] : [];
    }))
    .sort((a, b) => a.entry.moment.day - b.entry.moment.day);
}

export type WhyIgnored = 'seed was seen' | 'another stands';

export interface Ignored {
  readonly record: JudgeRecord;
  readonly why: WhyIgnored;
}

export interface JudgeChoice {
  /** The record that holds; undefined: none does. */
  readonly holds: JudgeRecord | undefined;
  readonly ignored: readonly Ignored[];
}

/**
 * Which of several records holds for batches that are judged together: the first one, and only where it was written on
 * a day before anything had been seen in any of them. What is chosen later may have been chosen by what was seen. A
 * record whose day does not lie after day 0 is about an earlier sowing, one that was written when all was over about a
 * later one; neither is about these.
 */
export function judgeChoice(records: readonly JudgeRecord[], sides: readonly Watched[]): JudgeChoice {
  const isOver = ({ entry: { moment } }: JudgeRecord) => sides.every(({ closed = Infinity }) => closed < moment.day);
  const about = records.filter(record => !isOver(record) && sides.every(({ dayZero }) => {
    const day = judgeDayOf(record, dayZero);
    return day === undefined || dayZero === undefined || day > dayZero;
  }));
  const seen = Math.min(...sides.map(({ found }) => found ?? Infinity));
  const [first] = about;
  const holds = first && first.entry.moment.day < seen ? first : undefined;
  // What is written after the day is about another sowing too.
  const last = holds ? Math.max(...sides.map(({ dayZero }) => judgeDayOf(holds, dayZero) ?? Infinity)) : Infinity;
  return {
    holds,
    ignored: about.filter(record => record !== holds && record.entry.moment.day <= last)
      .map(record => ({ record, why: record.entry.moment.day < seen ? 'another stands' : 'seed was seen' })),
  };
}

/** A batch by itself, over the whole of its life. */
export function watched({ origin, events, closed }: Batch): Watched {
  const first = events.find(event => event.type === 'count' && event.after.germinated + event.after.rotted > 0);
  return { dayZero: origin?.moment.day, found: first?.entry.moment.day, closed: closed?.entry.moment.day };
}
