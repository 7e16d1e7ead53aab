import { Journal } from '../../server/src/journal/journal.ts';
import { printMoment, type Moment } from '../../server/src/journal/moment.ts';
import type { Batch } from '../../server/src/journal/life.ts';
import { due, type DueItem } from '../../server/src/calendar/due.ts';
import { dayOfIso, isoOf, type Day } from '../../server/src/model/day.ts';
import { readFixture } from '../support/fixture.ts';

/** A journal as its grower would write it; several files in one text, each under `--- name`. */
export function journalOf(source: string): Journal {
  const journal = new Journal();
  for (const { name, text } of readFixture(source).files) journal.set(name, text);
  return journal;
}

export function day(iso: string): Day {
  const found = dayOfIso(iso);
  if (found === undefined) throw new RangeError(`no date: ${iso}`);
  return found;
}

/** Example: moment('2026-01-11 19:00'); without a time of day moment('2026-01-11'). */
export function moment(text: string): Moment {
  const [date, time] = text.split(' ');
  const [hours, minutes] = time?.split(':').map(Number) ?? [];
  return { day: day(date!), minutes: hours === undefined ? undefined : hours * 60 + minutes! };
}

export function batchOf(journal: Journal, path: string): Batch {
  const batch = journal.lot(path.split('/')[0]!)?.batches.get(path);
  if (!batch) throw new RangeError(`no batch ${path}`);
  return batch;
}

/** The due list in short: group, moment, kind and id of each item. */
export function dueOf(source: string | Journal, now: string, ...kinds: DueItem['kind'][]): string[] {
  return itemsOf(source, now, ...kinds).map(({ group, kind, id, ...at }) => `${group}: ${printMoment(at)} ${kind} ${id}`);
}

export function itemsOf(source: string | Journal, now: string, ...kinds: DueItem['kind'][]): DueItem[] {
  const journal = typeof source === 'string' ? journalOf(source) : source;
  return due(journal, moment(now)).filter(({ kind }) => kinds.length === 0 || kinds.includes(kind));
}

/** Days as they are printed; `undefined` stays. */
export function iso(value: Day | undefined): string | undefined {
  return value === undefined ? undefined : isoOf(value);
}
