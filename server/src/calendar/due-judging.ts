import type { Journal } from '../journal/journal.ts';
import { isGivenOut } from '../journal/given-out.ts';
import type { Batch, Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { listed } from '../syntax/nearest.ts';
import type { Due } from './due-sources.ts';
import { GRACE_DAYS, judgeChoice, judgeDayOf, judgeRecordsOf, watched, type JudgeRecord } from './judge-days.ts';
import { hasCome, type Standing } from './standing.ts';
import { SAME_SOWING_DAYS, togetherWith } from './together.ts';

/** Batches that are named one by one. */
const MOST_NAMES = 4;

/**
 * The day on which a trial is to be judged: each batch that is still open wants a count then. It is done when all of
 * them were looked at from that day on, or when the days on which that counts are over and one of them was.
 */
export function* judgeDue(_journal: Journal, lot: Lot, { batch }: Standing, now: Moment): Iterable<Due> {
  if (!batch.events.some(({ type }) => type === 'judge')) return;
  const family = [batch];
  // A list is gone through in the order in which it grows.
  for (const each of family) family.push(...each.children);
  for (const record of judgeRecordsOf([batch]).filter(each => each.batch === batch)) {
    const bound = family.filter(each => each.sowing && !isGivenOut(each) && holdsFor(record, each, lot));
    // What was sown has a day 0.
    const days = bound.map(each => judgeDayOf(record, each.origin?.moment.day)!);
    const waiting = bound.map((each, i) => ({ batch: each, day: days[i]! }))
      .filter(each => !isAnswered(each.batch, each.day, now));
    if (waiting.length === 0 || bound.some((each, i) => isPast(each, days[i]!, now))) continue;
    // What was sown days later is judged days later: its turn comes once these have been counted.
    const first = Math.min(...waiting.map(({ day }) => day));
    const open = waiting.filter(({ day }) => day <= first + SAME_SOWING_DAYS).map(each => each.batch);
    const { entry } = record;
    yield {
      kind: 'judge', id: batch.path, entry, since: entry.moment, at: { day: first, minutes: undefined },
      what: `judge the trial; count ${namesOf(open)} that day`,
      ask: open.length === 1 ? { keyword: 'count', subject: open[0]!.path, facts: '', timed: false } : undefined,
    };
  }
}

function namesOf(batches: readonly Batch[]): string {
  return batches.length > MOST_NAMES ? `all ${batches.length} batches` : listed(batches.map(({ path }) => path), 'and');
}

function holdsFor(record: JudgeRecord, batch: Batch, lot: Lot): boolean {
  return judgeChoice(judgeRecordsOf([batch]), togetherWith(batch, lot).map(watched)).holds?.entry === record.entry;
}

function isAnswered({ events, closed }: Batch, day: number, now: Moment): boolean {
  return (closed !== undefined && hasCome(closed.entry.moment, now)) || events.some(event => (
    event.type === 'count' && event.entry.moment.day >= day && hasCome(event.entry.moment, now)));
}

function isPast({ events }: Batch, day: number, now: Moment): boolean {
  return events.some(event => (
    event.type === 'count' && event.entry.moment.day > day + GRACE_DAYS && hasCome(event.entry.moment, now)));
}
