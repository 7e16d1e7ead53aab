/** Every line of a journal, by what becomes of it in the tables. */
import type { Journal } from '../journal/journal.ts';
import type { JournalLine } from '../journal/journal-file.ts';
import { dayNumber, type Batch, type BatchEvent, type Entry, type Lot } from '../journal/life.ts';
import { rootOf } from '../journal/mentions.ts';
import { keywords, type Keyword } from '../model/keywords.ts';
import type { Source } from './table.ts';

/** A record that tells of something that happened to a lot, a batch or a bottle. */
export interface EventRecord {
  readonly journal: Journal;
  readonly entry: Entry;
  /** Undefined where the journal defines no such lot or batch. */
  readonly lot: Lot | undefined;
  readonly batch: Batch | undefined;
  /** What it means in the life of the batch; undefined for records about no batch, and for those without a date. */
  readonly event: BatchEvent | undefined;
}

export interface LeftOut {
  readonly line: JournalLine;
  readonly record: Entry['record'] | undefined;
  readonly why: WhyLeftOut;
}

/** In the order in which a line is asked for them. */
export const whyLeftOut = ['open conflict', 'not readable', 'other version of a lot', 'after the day asked for', 'setting', 'day'] as const;
export type WhyLeftOut = (typeof whyLeftOut)[number];

const settings: ReadonlySet<Keyword> = new Set(['regime', 'guide', 'limit', 'agent', 'zone']);

/** Keywords of the table of events. */
export const eventWords = (Object.keys(keywords) as Keyword[])
  .filter(keyword => !settings.has(keyword) && keyword !== 'day' && keyword !== 'lot');

interface Told {
  readonly events: readonly EventRecord[];
  readonly leftOut: readonly LeftOut[];
}

const memo = new WeakMap<Source, Told>();

/** The lines of the files asked for, from top to bottom, but for comments, remarks and blank ones. */
export function recordsOf(source: Source): Told {
  const known = memo.get(source);
  if (known) return known;
  const told = read(source);
  memo.set(source, told);
  return told;
}

function read({ journal, files }: Source): Told {
  const meant = meaningsOf(journal);
  const [events, leftOut]: [EventRecord[], LeftOut[]] = [[], []];
  for (const name of [...files].sort()) {
    const file = journal.files.get(name);
    if (!file) continue;
    const counted = new Set(file.counted());
    for (const line of file.text) {
      const { kind, record } = line.content;
      if (kind !== 'record' && kind !== 'unread') continue;
      const why = counted.has(line) ? whyOf(line, journal) : 'open conflict';
      if (why !== undefined) leftOut.push({ line, record, why });
      else if (record?.keyword !== 'lot') events.push(eventOf(journal.entryAt(line)!, journal, meant));
    }
  }
  return { events, leftOut };
}

/** Undefined for a record that a table has. */
function whyOf(line: JournalLine, journal: Journal): WhyLeftOut | undefined {
  const { record } = line.content;
  if (!record) return 'not readable';
  if (record.keyword === 'day') return 'day';
  if (settings.has(record.keyword)) return 'setting';
  const { moment } = journal.entryAt(line)!;
  if (moment && moment.day > journal.until) return 'after the day asked for';
  if (record.keyword !== 'lot') return undefined;
  // A lot without an id defines nothing.
  if (!record.subject) return 'not readable';
  return journal.lot(record.subject.text)?.definition.line === line ? undefined : 'other version of a lot';
}

function meaningsOf(journal: Journal): ReadonlyMap<JournalLine, BatchEvent> {
  const events = [...journal.lots()].flatMap(lot => [...lot.batches.values()].flatMap(batch => batch.events));
  return new Map(events.map(event => [event.entry.line, event]));
}

function eventOf(entry: Entry, journal: Journal, meant: ReadonlyMap<JournalLine, BatchEvent>): EventRecord {
  const id = entry.record.subject?.text;
  const lot = id === undefined ? undefined : journal.lot(rootOf(id));
  const batch = id === undefined ? undefined : lot?.batches.get(id);
  return { journal, entry, lot, batch, event: meant.get(entry.line) };
}

/** Days from day 0 of the batch; undefined without one. */
export function dayOf({ entry: { moment }, batch }: EventRecord): number | undefined {
  return batch && moment ? dayNumber(batch, moment) : undefined;
}
