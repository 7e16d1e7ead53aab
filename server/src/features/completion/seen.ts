/** Texts that the journal holds already and that are written again and again: plants, sources, media. */
import type { BatchEvent, Lot } from '../../journal/life.ts';
import { factOf, type JournalRecord } from '../../model/record.ts';
import { gathered } from '../gathered.ts';
import type { Scene } from './scene.ts';

export type SeenKind = 'plant' | 'genus' | 'from' | 'stored' | 'in' | 'whither' | 'source';

/** How often each text stands in the lots. */
type Counts = Map<string, number>;
type OfLots = Exclude<SeenKind, 'source'>;

const kinds: readonly OfLots[] = ['plant', 'genus', 'from', 'stored', 'in', 'whither'];

const inLots = gathered<readonly (readonly [OfLots, string])[], Readonly<Record<OfLots, Counts>>>({
  begin: () => ({
    plant: new Map(), genus: new Map(), from: new Map(), stored: new Map(), in: new Map(), whither: new Map(),
  }),
  part: (id, journal) => {
    const lot = journal.lot(id);
    return lot && kinds.flatMap(kind => textsOf(lot, kind).map(text => [kind, text] as const));
  },
  add: (whole, texts) => texts.forEach(([kind, text]) => see(whole[kind], text, 1)),
  take: (whole, texts) => texts.forEach(([kind, text]) => see(whole[kind], text, -1)),
});

function textsOf({ definition: { record }, batches }: Lot, kind: OfLots): string[] {
  const all = [...batches.values()];
  const texts = kind === 'in' ? all.map(({ medium }) => medium)
    : kind === 'whither'
      ? all.flatMap(({ events }) => events.filter(isLeaving).map(({ entry }) => textIn(entry.record, kind)))
      : [textIn(record, kind)];
  return texts.filter(text => text !== undefined && text !== '') as string[];
}

function isLeaving({ type }: BatchEvent): boolean {
  return type === 'leave' || type === 'gone';
}

function see(counts: Counts, text: string | undefined, times: number): void {
  if (!text) return;
  const sum = (counts.get(text) ?? 0) + times;
  if (sum > 0) counts.set(text, sum);
  else counts.delete(text);
}

/** The most frequent first, then by the alphabet. What the line that is being written says does not count. */
export function seenTexts({ journal, entry, now }: Scene, kind: SeenKind): string[] {
  const counts: Counts = new Map(kind === 'source' ? [] : inLots(journal, now.day)[kind]);
  if (kind === 'source') {
    for (const { record } of journal.globalEntries('guide')) see(counts, factOf(record, kind)?.value.text, 1);
  }
  if (kind === 'plant') for (const { record } of journal.globalEntries('guide')) see(counts, record.subject?.text, 1);
  if (entry) see(counts, textIn(entry.record, kind), -1);
  return [...counts].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1)).map(([text]) => text);
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
