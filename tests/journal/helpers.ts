import { Journal } from '../../server/src/journal/journal.ts';
import type { Batch, Lot, Totals } from '../../server/src/journal/life.ts';
import { printMoment, type Moment } from '../../server/src/journal/moment.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import { readFixture } from '../support/fixture.ts';

export function journalOf(source: string): Journal {
  const journal = new Journal();
  for (const { name, text } of readFixture(source).files) journal.set(name, text);
  return journal;
}

export function lotOf(source: string, id = 'VER-24'): Lot {
  return journalOf(source).lot(id)!;
}

/** The batch of a journal, by its path. */
export function batchOf(source: string, path = 'VER-24'): Batch {
  return lotOf(source, path.split('/')[0]).batches.get(path)!;
}

/** Example: at('2026-01-10 19:00') */
export function at(text: string): Moment {
  const [iso, time] = text.split(' ');
  const [hours, minutes] = (time ?? '').split(':').map(Number);
  return { day: dayOfIso(iso!)!, minutes: time === undefined ? undefined : hours! * 60 + minutes! };
}

export function when(moment: Moment | undefined): string | undefined {
  return moment && printMoment(moment);
}

/** Those totals that are not 0. */
export function counted(totals: Totals): Partial<Totals> {
  return Object.fromEntries(Object.entries(totals).filter(([, n]) => n !== 0));
}
