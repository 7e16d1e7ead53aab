/** The records of a batch in the order of time and across files: all, the next one, the one before. */
import type { JournalLine } from '../journal/journal-file.ts';
import type { Journal } from '../journal/journal.ts';
import type { Entry } from '../journal/life.ts';
import { rootOf } from '../journal/mentions.ts';
import { printMoment } from '../journal/moment.ts';
import { inOrder } from '../journal/order.ts';
import { factsOf, type Span } from '../model/record.ts';
import type { Position } from '../text/line-store.ts';
import { batchPathAt } from './batch-at.ts';
import { placeOf, type Place } from './place.ts';

export type Direction = 'next' | 'previous';

export interface Neighbour {
  /** The lot or the batch whose records they are. */
  readonly path: string;
  /** Where it is named there; undefined behind the last record, and before the first. */
  readonly place: Place | undefined;
}

/** Undefined on a line that is about no lot or batch. A remark belongs to the record above it. */
export function neighbourOf(
  journal: Journal, file: string, position: Position, direction: Direction,
): Neighbour | undefined {
  const found = recordsAt(journal, file, position);
  if (!found) return undefined;
  const { path, records, here } = found;
  const next = records[here + (direction === 'next' ? 1 : -1)];
  return { path, place: next?.place };
}

export interface RecordsOfBatch {
  /** The lot or the batch whose records they are. */
  readonly path: string;
  /** Those without a date first, then in the order of time. */
  readonly records: readonly RecordOfBatch[];
  /** Which of them was asked from. */
  readonly here: number;
}

interface RecordOfBatch {
  /** Where the batch is named there. */
  readonly place: Place;
  /** From the record itself or from the `day` line above it. Example: '2026-02-08', '2026-02-08 19:00' */
  readonly when: string | undefined;
  /** As it is written. */
  readonly text: string;
}

/** All records of the batch that a place is about; undefined where it is about none. */
export function recordsAt(journal: Journal, file: string, position: Position): RecordsOfBatch | undefined {
  const line = recordAbove(journal, file, position.line);
  const subject = line?.content.record?.subject;
  if (!line || !subject) return undefined;
  const named = line.number === position.line ? batchPathAt(journal, file, position) : undefined;
  for (const path of [named ?? subject.text, subject.text]) {
    const found = recordsOf(journal, path);
    const here = found.findIndex(({ entry }) => entry.line === line);
    if (here < 0) continue;
    const records = found.map(({ entry, span }) => ({
      place: placeOf(entry.line, span), when: entry.moment && printMoment(entry.moment), text: entry.line.text.trim(),
    }));
    return { path, records, here };
  }
  return undefined;
}

function recordAbove(journal: Journal, file: string, from: number): JournalLine | undefined {
  const text = journal.files.get(file)?.text;
  for (let number = Math.min(from, (text?.lineCount ?? 0) - 1); text && number >= 0; number--) {
    const line = text.at(number);
    if (line.content.record) return line;
    if (line.content.kind !== 'remark') return undefined;
  }
  return undefined;
}

interface OfBatch {
  readonly entry: Entry;
  /** Its name there. */
  readonly span: Span;
}

/** Those without a date first: they define it. */
function recordsOf(journal: Journal, path: string): OfBatch[] {
  const spans = new Map(journal.mentionsOf(rootOf(path)).flatMap(entry => {
    const span = nameIn(entry, path);
    return span ? [[entry.line, { entry, span }] as const] : [];
  }));
  const entries = [...spans.values()].map(({ entry }) => entry);
  const inTime = inOrder(entries);
  const dated = new Set(inTime.map(({ line }) => line));
  return [...entries.filter(({ line }) => !dated.has(line)), ...inTime].map(({ line }) => spans.get(line)!);
}

function nameIn({ record }: Entry, path: string): Span | undefined {
  const { subject } = record;
  if (subject?.text === path) return subject;
  return factsOf(record, 'part').find(({ name }) => `${subject?.text}/${name.text}` === path)?.name;
}
