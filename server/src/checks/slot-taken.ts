import type { Stay } from '../calendar/stays.ts';
import { inJournalOrder } from '../journal/journal-file.ts';
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
  const since = other.from ? ` since ${isoOf(other.from.day)}` : '';
  const { start: from, end: to } = other.fact;
  return found(entry.line, 'slot-taken', { start, end }, { batch: id, place, other: other.id, since }, {
    related: [{ line: other.entry.line, start: from, end: to, message: `${other.id} was put here` }],
  });
}

/** By the day on which each came, those of unknown day first; else as they stand in the journal. */
function inOrder(stays: readonly Stay[]): Stay[] {
  const lines = new Map(inJournalOrder(new Set(stays.map(({ entry }) => entry.line))).map((line, i) => [line, i]));
  const minutesOf = ({ from }: Stay) => (from ? from.day * 1440 + (from.minutes ?? 0) : -Infinity);
  return stays.toSorted((a, b) =>
    compare(minutesOf(a), minutesOf(b)) || lines.get(a.entry.line)! - lines.get(b.entry.line)! || (a.id < b.id ? -1 : 1));
}

function compare(a: number, b: number): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function isFamily({ id: a }: Stay, { id: b }: Stay): boolean {
  return a === b || a.startsWith(`${b}/`) || b.startsWith(`${a}/`);
}

/**
 * Whether both lay there right before the first of the two went: what was not written leaves it open. Batches that were
 * put there by one record came as one, and are told apart by another place or not at all.
 */
function isCertain(a: Stay, b: Stay): boolean {
  if (a.entry.line === b.entry.line) return false;
  const first = !a.to || (b.to && isBefore(b.to, a.to)) ? b.to : a.to;
  return isThereBefore(a, first) && isThereBefore(b, first);
}

function isThereBefore({ from, to }: Stay, end: Moment | undefined): boolean {
  if (!end) return true;
  return from ? isBefore(from, end) : to !== undefined && !isBefore(end, to);
}
