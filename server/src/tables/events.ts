import { remarksBelow } from '../words/remarks.ts';
import type { Elapsed } from '../journal/moment.ts';
import { massInMg, volumeInMl } from '../solutions/amounts.ts';
import { toNumber } from '../solutions/display.ts';
import { dayAfter } from '../model/quantity.ts';
import { factOf, type FactOfType, type FactType } from '../model/record.ts';
import { dayOf, eventWords, recordsOf, type EventRecord } from './records.ts';
import { purityColumns } from './purity.ts';
import { placed, warmth } from './source.ts';
import {
  between, date, map, number, seeds, table, text, time, whole, word, type Column, type Table,
} from './table.ts';

/** How a record was taken. */
const readings = ['read', 'read in part', 'no date', 'unknown id', 'misplaced', 'blank'] as const;

function fact<Type extends FactType>(type: Type): (of: EventRecord) => FactOfType<Type> | undefined {
  return ({ entry: { record } }) => factOf(record, type);
}

const wordsOf = (type: 'at' | 'in' | 'text' | 'path' | 'regime' | 'whither') => (
  (of: EventRecord) => fact(type)(of)?.value.text);

/** What the tables of events, doses and observations begin with. */
export const eventColumns: readonly Column<EventRecord>[] = [
  ...placed<EventRecord>(({ entry }) => entry.line),
  text('lot', 'The lot that it is about; empty if the journal defines no such lot.', ({ lot }) => lot?.id),
  text('batch', 'The batch that it is about; empty if the journal defines no such batch.', ({ batch }) => batch?.path),
  date('date', 'The day.', ({ entry: { moment } }) => moment?.day),
  time('time', 'The time of day by the clock of the journal.', ({ entry: { moment } }) => moment?.minutes),
  whole('day', 'Days from day 0 of the batch.', dayOf),
];

export const events: Table = table<EventRecord>(
  {
    name: 'events',
    says: 'A row for each record about a lot, a batch, a stock or a packet of powder.',
    key: ['file', 'line'],
  },
  [
    ...eventColumns,
    word('event', 'The keyword of the record.', eventWords, ({ entry: { record } }) => record.keyword),
    text('id', 'What the record names: a lot, a batch, a stock or a packet.', ({ entry: { record } }) => record.subject?.text),
    word('reading', 'How Plumule took the record; all but “read” may be missing from the numbers.', readings, readingOf),
    ...seeds<EventRecord>('seeds', 'Seeds that the record names', seedsOf),
    whole('seedlings', 'Seedlings that the record names.', of => fact('seedlings')(of)?.n.value),
    ...between<EventRecord>('duration_h', 'Hours that the seed was in the soak', of => {
      const length = lengthOf(of);
      return length && { least: length.least / 60, most: length.most / 60 };
    }),
    date('until_date', 'The day until which it was planned.', of => fact('until')(of)?.date.day),
    time('until_time', 'The time of that day.', of => fact('until')(of)?.time?.minutes),
    whole('planned_days', 'Days that a cold or warm stage was planned for.', plannedOf),
    ...warmth<EventRecord>(of => fact('temperature')(of)?.value, 'Temperature'),
    number('volume_ml', 'Millilitres of the whole liquid, made up or left.', of => (
      map(fact('volume')(of) ?? fact('to')(of), ({ value }) => toNumber(volumeInMl(value))))),
    number('mass_mg', 'Milligrams of powder that are left.', of => map(fact('mass')(of), ({ value }) => toNumber(massInMg(value)))),
    ...purityColumns<EventRecord>(fact('purity'), 'powder, as the record gives it'),
    whole('drops', 'Drops that were given.', of => fact('drops')(of)?.n.value),
    text('place', 'Where it went.', wordsOf('at')),
    text('medium', 'What it was sown in.', wordsOf('in')),
    text('regime', 'The regime that it was sown in.', wordsOf('regime')),
    date('look_date', 'The day of the next look.', of => fact('look')(of)?.date.day),
    date('judge_date', 'The day on which the trial will be judged.', of => (
      map(fact('on')(of), on => ('date' in on ? on.date.day : undefined)))),
    whole('judge_day', 'The same in days from day 0.', of => (
      map(fact('on')(of), on => ('age' in on ? on.age.value : undefined)))),
    text('went', 'Where to, or to whom.', wordsOf('whither')),
    text('text', 'The text of a note, a reminder, a scarification or a discard.', wordsOf('text')),
    text('photo', 'The path of a photo.', wordsOf('path')),
    text('record', 'The record, as it stands in the journal.', ({ entry }) => entry.line.text),
    text('remark', 'The remarks below the record, a line each.', ({ entry }) => remarksBelow(entry.line)),
  ],
  source => recordsOf(source).events,
);

function readingOf({ entry: { record, moment }, batch, event, journal }: EventRecord): (typeof readings)[number] {
  const id = record.subject?.text;
  if (record.broken) return 'read in part';
  if (!batch && (id === undefined || !journal.definedIds().includes(id))) return 'unknown id';
  if (!moment) return record.keyword === 'split' ? 'read' : 'no date';
  return event?.type === 'misplaced' || event?.type === 'blank' ? event.type : 'read';
}

function seedsOf(of: EventRecord): { least: number; most: number } | undefined {
  const { n, estimate } = fact('seeds')(of) ?? {};
  if (n) return { least: n.value, most: n.value };
  return estimate && estimate.value.kind !== 'half' ? estimate.value : undefined;
}

function lengthOf({ event }: EventRecord): Elapsed | undefined {
  return event?.type === 'soak' ? event.soak.length : undefined;
}

/** A month has as many days as it has from that day on. */
function plannedOf({ event }: EventRecord): number | undefined {
  if (event?.type !== 'stage') return undefined;
  const { planned, start } = event.stage;
  return planned && dayAfter(start.day, planned) - start.day;
}
