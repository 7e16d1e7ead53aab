/** From a record to its place in the life of its batch. */
import type { JournalLine } from '../journal/journal-file.ts';
import type { Journal } from '../journal/journal.ts';
import type { Batch, BatchEvent, Entry, Lot } from '../journal/life.ts';
import { rootOf } from '../journal/mentions.ts';
import { keywords } from '../model/keywords.ts';

export interface Lived {
  readonly lot: Lot;
  readonly batch: Batch;
  /** Undefined for a record that is no event: one without a date, or the lot itself. */
  readonly event: BatchEvent | undefined;
}

/** Undefined where the record names no batch of the journal. */
export function lifeOf(journal: Journal, { line, record }: Entry): Lived | undefined {
  const path = record.subject?.text;
  if (path === undefined) return undefined;
  const lot = journal.lot(rootOf(path));
  const batch = lot?.batches.get(path);
  return lot && batch && { lot, batch, event: byLine(batch).get(line) };
}

const memo = new WeakMap<Batch, ReadonlyMap<JournalLine, BatchEvent>>();

/** The events of a batch by their lines: whoever goes through a file asks for one after another. */
function byLine(batch: Batch): ReadonlyMap<JournalLine, BatchEvent> {
  const known = memo.get(batch);
  if (known) return known;
  const events = new Map<JournalLine, BatchEvent>();
  // Of a line that is several events the first counts.
  for (const event of batch.events) if (!events.has(event.entry.line)) events.set(event.entry.line, event);
  memo.set(batch, events);
  return events;
}

/** The plant that a record is about: that of its lot, or the one that a `guide` is for. */
export function plantOf(journal: Journal, { record: { keyword, subject } }: Entry): string | undefined {
  if (!subject) return undefined;
  return keywords[keyword].subject === 'plant' ? subject.text : journal.lot(rootOf(subject.text))?.plant;
}
