/** From a record to its place in the life of its batch. */
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
  return lot && batch && { lot, batch, event: batch.events.find(({ entry }) => entry.line === line) };
}

/** The plant that a record is about: that of its lot, or the one that a `guide` is for. */
export function plantOf(journal: Journal, { record: { keyword, subject } }: Entry): string | undefined {
  if (!subject) return undefined;
  return keywords[keyword].subject === 'plant' ? subject.text : journal.lot(rootOf(subject.text))?.plant;
}
