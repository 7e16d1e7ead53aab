import type { Stay } from '../calendar/stays.ts';
import { inJournalOrder } from '../journal/journal-file.ts';
import type { Entry } from '../journal/life.ts';
import { isBefore, type Moment } from '../journal/moment.ts';
import { isoOf } from '../model/day.ts';
import { found, type Found, type SlotCheck } from './check.ts';

/**
 * Two batches that certainly lay in one slot at one time, shown at the one that came later. A batch and those split off
 * from it may share theirs. Of several already there, the first is named.
 */
export const slotTaken: SlotCheck = function* (stays) {
  let there: Stay[] = [];
  for (const stay of inOrder(stays)) {
    there = there.filter(({ to }) => !to || !stay.from || isBefore(stay.from, to));
    const other = there.find(each => !isFamily(each, stay) && isCertain(each, stay));
    if (other) yield taken(stay, other);
    there.push(stay);
  }
};

function taken({ id, place, entry, fact: { start, end } }: Stay, other: Stay): Found {
  const since = other.from ? ` (since ${isoOf(other.from.day)})` : '';
  const { start: from, end: to } = other.fact;
  return found(entry.line, 'slot-taken', { start, end }, { batch: id, place, other: other.id, since }, {
    related: [{ line: other.entry.line, start: from, end: to, message: `${other.id} was put here` }],
  });
}

/** By the day on which each came, those of unknown day first; else as they stand in the journal. */
function inOrder(stays: readonly Stay[]): Stay[] {
  const lines = new Map(inJournalOrder(new Set(stays.map(({ entry }) => entry.line))).map((line, i) => [line, i]));
  const minutesOf = ({ from }: Stay) => (from ? from.day * 1440 + (from.minutes ?? 0) : -Infinity);
  const lineOf = ({ entry: { line } }: Stay) => lines.get(line)!;
  return stays.toSorted((a, b) =>
    compare(minutesOf(a), minutesOf(b)) || lineOf(a) - lineOf(b) || compare(a.id, b.id));
}

function compare<T extends number | string>(a: T, b: T): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Whether one was put there by a record about the other, or about what the other was split off from. */
function isFamily(a: Stay, b: Stay): boolean {
  return isPartOf(a.id, b.entry) || isPartOf(b.id, a.entry);
}

function isPartOf(id: string, { record: { subject } }: Entry): boolean {
  return subject !== undefined && (id === subject.text || id.startsWith(`${subject.text}/`));
}

/** Whether both lay there right before the first of the two went: what was not written leaves it open. */
function isCertain(a: Stay, b: Stay): boolean {
  const first = !a.to || (b.to && isBefore(b.to, a.to)) ? b.to : a.to;
  return isThereBefore(a, first) && isThereBefore(b, first);
}

function isThereBefore({ from, to }: Stay, end: Moment | undefined): boolean {
  if (!end) return true;
  return from ? isBefore(from, end) : to !== undefined && !isBefore(end, to);
}
