/** What the tables have in common: the lots and batches of a journal, and where things stand in it. */
import type { JournalLine } from '../journal/journal-file.ts';
import { lotsInOrder } from '../journal/lots.ts';
import type { Batch, Lot } from '../journal/life.ts';
import { isSaidIn } from '../report/agenda.ts';
import type { Temperature } from '../model/quantity.ts';
import { celsius } from '../model/quantity.ts';
import { map, number, text, whole, type Column, type Source } from './table.ts';

/** The lots that the files say something of, in the order of the journal. */
export function lotsOf({ journal, files }: Source): Lot[] {
  return lotsInOrder(journal.lots()).filter(({ id }) => isSaidIn(journal, id, files));
}

export interface BatchOf {
  readonly lot: Lot;
  readonly batch: Batch;
}

export function batchesOf(source: Source): BatchOf[] {
  return lotsOf(source).flatMap(lot => [...lot.batches.values()].map(batch => ({ lot, batch })));
}

/** Where a record stands. */
export function placed<Of>(lineOf: (of: Of) => JournalLine): Column<Of>[] {
  return [
    text('file', 'The file of the record.', of => lineOf(of).store.name),
    whole('line', 'Its line in the file, from 1.', of => lineOf(of).number + 1),
  ];
}

/** Degrees Celsius by day and by night. */
export function warmth<Of>(of: (of: Of) => Temperature | undefined, what: string): Column<Of>[] {
  return [
    number('temperature_day_c', `${what} in degrees Celsius, by day.`, each => (
      map(of(each), ({ day, unit }) => celsius(day, unit)))),
    number('temperature_night_c', `${what} in degrees Celsius, by night; the same as by day if it is constant.`, each => (
      map(of(each), ({ day, night, unit }) => celsius(night ?? day, unit)))),
  ];
}
