/** A search over everything that the journal defines, by id or by the plant's name. */
import type { Journal } from '../journal/journal.ts';
import { factsOf } from '../model/record.ts';
import { placeOf, type Place } from './place.ts';
import { seedsText, symbolOf, type SymbolText } from './symbols.ts';

export interface FoundSymbol extends SymbolText {
  readonly place: Place;
}

/** More than anybody reads. */
const MOST = 200;

/**
 * What a query finds, the best first: names that begin with it, then names with a word that does, then names that hold
 * it, then names that hold its letters in order. Case does not count. Batches are found by a query with a `/`.
 */
export function workspaceSymbols(journal: Journal, query: string): FoundSymbol[] {
  const wanted = query.trim().toLowerCase();
  const found: { symbol: FoundSymbol; rank: number }[] = [];
  for (const symbol of wanted.includes('/') ? batches(journal) : definitions(journal)) {
    const rank = rankOf(symbol.name.toLowerCase(), wanted);
    if (rank !== undefined) found.push({ symbol, rank });
  }
  found.sort((a, b) => a.rank - b.rank || compareNames(a.symbol.name, b.symbol.name));
  return found.slice(0, MOST).map(({ symbol }) => symbol);
}

function* definitions(journal: Journal): Iterable<FoundSymbol> {
  for (const id of journal.definedIds()) {
    for (const { line, record } of journal.definitionsOf(id)) {
      const symbol = symbolOf(journal, record);
      if (symbol && record.subject) yield { ...symbol, place: placeOf(line, record.subject) };
    }
  }
}

function* batches(journal: Journal): Iterable<FoundSymbol> {
  for (const { batches, plant } of journal.lots()) {
    for (const { path, parent, made, seeds } of batches.values()) {
      const part = parent && factsOf(made.record, 'part').find(({ name }) => `${parent.path}/${name.text}` === path);
      if (part) yield { kind: 'batch', name: plant ? `${path} ${plant}` : path, detail: seedsText(seeds), place: placeOf(made.line, part.name) };
    }
  }
}

/** 0 is best; undefined where the name does not hold the query. */
function rankOf(name: string, wanted: string): number | undefined {
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

function compareNames(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
