/** A search over everything that the journal defines, by id or by the plant's name. */
import type { JournalLine } from '../journal/journal-file.ts';
import type { Journal } from '../journal/journal.ts';
import type { Batch } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { factsOf, type Span } from '../model/record.ts';
import { EVER, inOrderOf } from './gathered.ts';
import { placeOf, type Place } from './place.ts';
import { seedsText } from '../words/seeds.ts';
import { symbolName, symbolNow, type SymbolText } from './symbols.ts';

export interface FoundSymbol extends SymbolText {
  readonly place: Place;
}

/** More than anybody reads. */
const MOST = 200;
/** Where more is found, nothing of it is judged: a search answers at every key. */
const MOST_JUDGED = 20;

/** Something that can be found. */
interface Named {
  /** Its name in small letters. */
  readonly sort: string;
  readonly line: JournalLine;
  /** Where the name stands. */
  readonly at: Span;
  /** Undefined for what the line defines by itself. */
  readonly batch: { readonly name: string; readonly seeds: number | undefined } | undefined;
}

/**
 * What a query finds, the best first: names that begin with it, then names with a word that does, then names that hold
 * it, then names that hold its letters in order. Case does not count. Batches are found by a query with a `/`.
 */
export function workspaceSymbols(journal: Journal, query: string, now: Moment): FoundSymbol[] {
  const wanted = query.trim().toLowerCase();
  const byRank: Readonly<Record<Rank, Named[]>> = { 0: [], 1: [], 2: [], 3: [] };
  for (const named of (wanted.includes('/') ? batches : definitions)(journal, EVER)) {
    const rank = rankOf(named.sort, wanted);
    if (rank !== undefined) byRank[rank].push(named);
    if (byRank[0].length === MOST) break;
  }
  const found = [...byRank[0], ...byRank[1], ...byRank[2], ...byRank[3]].slice(0, MOST);
  return found.flatMap(({ line, at, batch }): FoundSymbol[] => {
    const symbol = batch ? { kind: 'batch' as const, name: batch.name, detail: seedsText(batch.seeds) }
      : symbolNow(journal, line, now, found.length <= MOST_JUDGED);
    return symbol ? [{ ...symbol, place: placeOf(line, at) }] : [];
  });
}

const definitions = inOrderOf((id, journal) => journal.definitionsOf(id).flatMap(({ line, record }): Named[] => {
  const name = symbolName(record);
  return name === undefined ? [] : [{ sort: name.toLowerCase(), line, at: record.subject!, batch: undefined }];
}));

const batches = inOrderOf((id, journal) => {
  const lot = journal.lot(id);
  return lot ? [...lot.batches.values()].flatMap(batch => namedBatch(batch, lot.plant)) : [];
});

function namedBatch({ path, parent, made: { line, record }, seeds }: Batch, plant: string | undefined): Named[] {
  const part = parent && factsOf(record, 'part').find(({ name }) => `${parent.path}/${name.text}` === path);
  if (!part) return [];
  const name = plant ? `${path} ${plant}` : path;
  return [{ sort: name.toLowerCase(), line, at: part.name, batch: { name, seeds } }];
}

type Rank = 0 | 1 | 2 | 3;

/** 0 is best; undefined where the name does not hold the query. */
function rankOf(name: string, wanted: string): Rank | undefined {
  if (name.startsWith(wanted)) return 0;
  const at = name.indexOf(wanted);
  if (at > 0) return /[\p{L}\p{N}]/u.test(name.charAt(at - 1)) ? 2 : 1;
  let from = 0;
  for (const letter of wanted) {
    if (letter === ' ') continue;
    from = name.indexOf(letter, from) + letter.length;
    if (from < letter.length) return undefined;
  }
  return 3;
}
