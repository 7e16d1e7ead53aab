/** What changed between two states of a journal: its records, and what they come to. */
import { germinatedOf } from '../words/germination.ts';
import { shareText } from '../words/shares.ts';
import { Journal } from '../journal/journal.ts';
import { isUndefined } from '../measures/measured.ts';
import { meantName } from '../merge/identity.ts';
import { itemsOf, newReader, type Item } from '../merge/items.ts';
import { sheetOf } from '../merge/rows.ts';
import { pairsOf } from '../merge/trios.ts';
import { splitLines } from '../text/split-lines.ts';
import { differing, type Lines } from './differing.ts';
import { addedWords, changedWords, remarkWords, removedWords } from './words.ts';

/** Texts of files by their names. */
export type Files = ReadonlyMap<string, string>;

export interface Change {
  /** The batch, the stock or whatever it is about, as records name it; '' for lines that name nothing. */
  readonly about: string;
  readonly words: readonly string[];
}

/** What became of one record. */
export interface RecordChange {
  /** As in `Change`. */
  readonly about: string;
  readonly words: readonly string[];
  /** Whether it is the record of a lot that was not there before. */
  readonly isNewLot: boolean;
}

/**
 * The changes, by what they are about. A record that was moved, into another file too, or is written in another way,
 * is none; neither are comments and blank lines.
 */
export function changesBetween(before: Files, after: Files): Change[] {
  const all = new Map<string, string[]>();
  for (const { about, words } of changesOfRecords(differing(linesOf(before), linesOf(after)))) add(all, about, words);
  for (const [path, words] of sharesBetween(before, after)) add(all, path, [words]);
  return [...all].sort(([a], [b]) => (a < b ? -1 : 1)).map(([about, words]) => ({ about, words }));
}

/** Of each record that is new, another, or gone, in the order of the old records and then of the new ones. */
export function changesOfRecords({ before, after }: { readonly before: Files; readonly after: Files }): RecordChange[] {
  return pairsOf(recordsIn(before), recordsIn(after)).flatMap(({ left, right }) => {
    const words = wordsOf(left, right);
    const record = (right ?? left)!.reading?.record;
    const isNewLot = left === undefined && record?.keyword === 'lot';
    return words.length > 0 ? [{ about: record?.subject?.text ?? '', words, isNewLot }] : [];
  });
}

function wordsOf(left: Item | undefined, right: Item | undefined): string[] {
  if (!right) return [removedWords(left!)];
  if (!left) return [addedWords(right), ...remarkWords({ ...right, tail: [] }, right)];
  const isSame = meantName(left) === meantName(right);
  return [...(isSame ? [] : changedWords(left, right)), ...remarkWords(left, right)];
}

/** The lines of files, without their ends and without a byte order mark. */
export function linesOf(files: Files): Lines {
  return new Map([...files].map(([name, text]) => [name, splitLines(text.replace(/^\uFEFF/, '')).map(line => line.text)]));
}

function add(all: Map<string, string[]>, about: string, words: readonly string[]): void {
  const same = all.get(about);
  if (same) same.push(...words);
  else all.set(about, [...words]);
}

function recordsIn(files: Files): Item[] {
  const read = newReader();
  return [...files].sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, text]) => itemsOf(sheetOf(text).rows, read))
    .filter(({ kind }) => kind === 'record' || kind === 'unread' || kind === 'conflict');
}

/** Of each batch of which another share germinated than before. */
function sharesBetween(before: Files, after: Files): [path: string, words: string][] {
  const [old, now] = [sharesIn(before), sharesIn(after)];
  return [...now].flatMap(([path, share]): [string, string][] => {
    const last = old.get(path);
    if (share === last) return [];
    return [[path, `germinated ${share}${last === undefined ? '' : ` instead of ${last}`}`]];
  });
}

/** Germinated seed of the seed sown less lost. */
function sharesIn(files: Files): Map<string, string> {
  const journal = new Journal();
  for (const [name, text] of files) journal.set(name, text.replace(/^\uFEFF/, ''));
  const shares = new Map<string, string>();
  for (const lot of journal.lots()) {
    for (const batch of lot.batches.values()) {
      const germinated = germinatedOf(batch);
      if (isUndefined(germinated)) continue;
      shares.set(batch.path, shareText(germinated.x, germinated.n));
    }
  }
  return shares;
}
