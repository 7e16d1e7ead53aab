/**
 * A journal as it would be if what is nobody else's business had never been written in it. Whatever is made of that
 * journal, such as pages, pictures and tables, cannot say it.
 */
import { Journal } from '../journal/journal.ts';
import { hasUnreadDate, type JournalFile, type JournalLine } from '../journal/journal-file.ts';
import { isoOf } from '../model/day.ts';
import type { Keyword } from '../model/keywords.ts';
import type { Private } from '../model/privates.ts';
import type { Fact, FactType, JournalRecord, Span } from '../model/record.ts';
import { printTime } from '../journal/moment.ts';
import { PlaceNames } from './place-names.ts';

const privateFacts: Partial<Readonly<Record<FactType, Private>>> = {
  at: 'places', stored: 'places', from: 'sources', source: 'sources', whither: 'people', text: 'remarks', path: 'photos',
};

/** Records that say nothing without what is left out. */
const privateRecords: Partial<Readonly<Record<Keyword, Private>>> = { note: 'remarks', due: 'remarks', photo: 'photos' };

/** It has the errors of the line that it stands for, and none of its words. */
const UNREADABLE = '?';
const NO_DATE = '2026-02-30';

/** The journal without what is private, in files that are called by numbers; lines keep their places. */
export function redacted(journal: Journal, files: readonly string[], shown: ReadonlySet<Private>): Journal {
  const names = [...files].sort();
  const places = new PlaceNames();
  const made = new Journal();
  for (const [i, name] of names.entries()) {
    const file = journal.files.get(name);
    if (file) made.set(publicName(i, names.length), publicText(file, shown, places));
  }
  return made;
}

/** Numbers of one length sort as the files do. */
export function publicName(index: number, files: number): string {
  return `${String(index + 1).padStart(String(files).length, '0')}.germ`;
}

function publicText(file: JournalFile, shown: ReadonlySet<Private>, places: PlaceNames): string {
  const counted = new Set(file.counted());
  return [...file.text].map(line => (counted.has(line) ? publicLine(line, shown, places) : '')).join('\n');
}

function publicLine(line: JournalLine, shown: ReadonlySet<Private>, places: PlaceNames): string {
  const { kind, record } = line.content;
  if (kind === 'unread') return UNREADABLE;
  if (kind === 'remark') return shown.has('remarks') ? line.text : '';
  if (!record) return '';
  const secret = privateRecords[record.keyword];
  if (secret && !shown.has(secret)) return '';
  const facts = record.facts.flatMap(fact => publicFact(line.text, fact, shown, places));
  return [headOf(line, record), ...facts, ...(record.broken ? [UNREADABLE] : [])].join(', ');
}

function headOf(line: JournalLine, { keyword, subject, plant, date, time }: JournalRecord): string {
  const written = (span: Span | undefined) => (span ? [line.text.slice(span.start, span.end)] : []);
  return [
    keyword, ...written(subject), ...written(plant),
    ...(date ? [isoOf(date.day)] : hasUnreadDate(line) ? [NO_DATE] : []),
    ...(time ? [printTime(time.minutes)] : []),
  ].join(' ');
}

function publicFact(line: string, fact: Fact, shown: ReadonlySet<Private>, places: PlaceNames): string[] {
  const secret = privateFacts[fact.type];
  if (!secret || shown.has(secret)) return [line.slice(fact.start, fact.end)];
  return fact.type === 'at' ? [`at ${places.of(fact.value.text)}`] : [];
}
