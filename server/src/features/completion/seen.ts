/** Texts that the journal holds already and that are written again and again: plants, sources, media. */
import type { Journal } from '../../journal/journal.ts';
import { factOf, type JournalRecord } from '../../model/record.ts';
import type { Scene } from './scene.ts';

export type SeenKind = 'plant' | 'genus' | 'from' | 'stored' | 'in' | 'source';

/** The most frequent first, then by the alphabet. What the line that is being written says does not count. */
export function seenTexts({ journal, entry }: Scene, kind: SeenKind): string[] {
  const counts = new Map<string, number>();
  const see = (text: string | undefined, times = 1) => {
    if (text) counts.set(text, (counts.get(text) ?? 0) + times);
  };
  if (kind === 'source') {
    for (const { record } of journal.globalEntries('guide')) see(factOf(record, kind)?.value.text);
  } else seeLots(journal, kind, see);
  if (kind === 'plant') for (const { record } of journal.globalEntries('guide')) see(record.subject?.text);
  if (entry) see(textIn(entry.record, kind), -1);
  return [...counts].filter(([, n]) => n > 0).sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1)).map(([text]) => text);
}

function seeLots(journal: Journal, kind: Exclude<SeenKind, 'source'>, see: (text: string | undefined) => void): void {
  for (const id of journal.ids()) {
    const lot = journal.lot(id);
    if (!lot) continue;
    if (kind === 'in') for (const { medium } of lot.batches.values()) see(medium);
    else see(textIn(lot.definition.record, kind));
  }
}

function textIn(record: JournalRecord, kind: SeenKind): string | undefined {
  const { keyword, plant, subject } = record;
  switch (kind) {
    case 'plant': return keyword === 'guide' ? subject?.text : plant?.text;
    case 'genus': return plant?.text.split(/\s/)[0];
    default: return factOf(record, kind)?.value.text;
  }
}

/** A text as it is written in a fact. */
export function quoted(text: string): string {
  return text.includes(',') ? `"${text}"` : text;
}

/** A plant's name as it is written; a number in it would be read as a fact. */
export function quotedPlant(text: string): string {
  return /[,\d]/.test(text) ? `"${text}"` : text;
}
