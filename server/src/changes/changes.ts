/** What changed between two states of a journal: its records, and what they come to. */
import { germinatedOf, type Germinated } from '../words/germination.ts';
import { shareText } from '../words/shares.ts';
import { Journal } from '../journal/journal.ts';
import { isUndefined, type Undefined } from '../measures/measured.ts';
import { dayNameOf, meantName } from '../merge/identity.ts';
import { itemsOf, newReader, type Item } from '../merge/items.ts';
import { sheetOf } from '../merge/rows.ts';
import { pairsOf } from '../merge/trios.ts';
import type { Keyword } from '../model/keywords.ts';
import { splitLines } from '../text/split-lines.ts';
import { differing, type Lines } from './differing.ts';
import { addedWords, changedWords, remarkWords, removedWords } from './words.ts';

/** Texts of files by their names. */
export type Files = ReadonlyMap<string, string>;

export interface Change {
  /** The batch, the stock or whatever it is about, as records name it; '' for lines that name nothing. */
  readonly about: string;
  /** All of it, records first. */
  readonly words: readonly string[];
  readonly records: readonly RecordChange[];
  /** Of a batch, if another share of it has germinated than before. */
  readonly share: ShareChange | undefined;
}

/** What became of one record. */
export interface RecordChange {
  /** As in `Change`. */
  readonly about: string;
  readonly words: readonly string[];
  readonly kind: 'new' | 'changed' | 'removed';
  /** Undefined for a line that cannot be read. */
  readonly keyword: Keyword | undefined;
  /** Its day, as 2026-02-08; '' where it has none. */
  readonly day: string;
}

export interface ShareChange {
  readonly before: Germinated | Undefined | undefined;
  readonly after: Germinated | Undefined;
}

/**
 * The changes, by what they are about. A record that was moved, into another file too, or is written in another way,
 * is none; neither are comments and blank lines.
 */
export function changesBetween(before: Files, after: Files): Change[] {
  const records = new Map<string, RecordChange[]>();
  for (const change of changesOfRecords(differing(linesOf(before), linesOf(after)))) {
    const same = records.get(change.about);
    if (same) same.push(change);
    else records.set(change.about, [change]);
  }
  const shares = sharesBetween(before, after);
  return [...new Set([...records.keys(), ...shares.keys()])].sort().map(about => {
    const own = records.get(about) ?? [];
    const share = shares.get(about);
    const words = [...own.flatMap(record => record.words), ...(share ? [shareWords(share)] : [])];
    return { about, words, records: own, share };
  });
}

/** Of each record that is new, another, or gone, in the order of the old records and then of the new ones. */
export function changesOfRecords({ before, after }: { readonly before: Files; readonly after: Files }): RecordChange[] {
  return pairsOf(recordsIn(before), recordsIn(after)).flatMap(({ left, right }) => {
    const words = wordsOf(left, right);
    const item = (right ?? left)!;
    const record = item.reading?.record;
    const kind = !left ? 'new' : right ? 'changed' : 'removed';
    const about = record?.subject?.text ?? '';
    return words.length > 0 ? [{ about, words, kind, keyword: record?.keyword, day: dayNameOf(item) }] : [];
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

function recordsIn(files: Files): Item[] {
  const read = newReader();
  return [...files].sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, text]) => itemsOf(sheetOf(text).rows, read))
    .filter(({ kind }) => kind === 'record' || kind === 'unread' || kind === 'conflict');
}

/** Of each batch that is still there and of which another share has germinated than before. */
function sharesBetween(before: Files, after: Files): Map<string, ShareChange> {
  const [old, now] = [sharesIn(before), sharesIn(after)];
  const changed = new Map<string, ShareChange>();
  for (const [path, share] of now) {
    const last = old.get(path);
    if (textOf(share) !== textOf(last)) changed.set(path, { before: last, after: share });
  }
  return changed;
}

/** Germinated seed of the seed sown less lost. */
function sharesIn(files: Files): Map<string, Germinated | Undefined> {
  const journal = new Journal();
  for (const [name, text] of files) journal.set(name, text.replace(/^\uFEFF/, ''));
  return new Map([...journal.lots()].flatMap(lot => (
    [...lot.batches.values()].map((batch): [string, Germinated | Undefined] => [batch.path, germinatedOf(batch)]))));
}

/** Undefined where there is no number. */
function textOf(share: Germinated | Undefined | undefined): string | undefined {
  return share === undefined || isUndefined(share) ? undefined : shareText(share.x, share.n);
}

/** Example: 'germinated 9 of 24 = 37.5 % instead of 6 of 24 = 25 %' */
function shareWords({ before, after }: ShareChange): string {
  const last = textOf(before);
  if (isUndefined(after)) return `how much has germinated is no longer known: ${after.undefined}; it was ${last!}`;
  return `germinated ${textOf(after)!}${last === undefined ? '' : ` instead of ${last}`}`;
}
