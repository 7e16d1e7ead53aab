/** What changed in each lot since the last commit of the files that hold it. */
import { counted } from '../model/counted.ts';
import { changesOfRecords } from '../changes/changes.ts';
import { differing, type Lines } from '../changes/differing.ts';
import type { Journal } from '../journal/journal.ts';

export interface SinceCommit {
  /** What changed in each lot, by its id. */
  readonly lots: ReadonlyMap<string, LotChanges>;
  /** The files in which anything changed. */
  readonly files: ReadonlySet<string>;
}

interface LotChanges {
  readonly isNew: boolean;
  /** Each with the batch that it is about. Example: 'A 3 more germinated on 8 February 2026' */
  readonly words: readonly string[];
}

/** Changes shown one by one. */
const MOST = 2;
/** With more records than this another tool has been at the files, and words for each help nobody. */
const MOST_RECORDS = 1000;

const NOTHING: SinceCommit = { lots: new Map(), files: new Set() };

/** `committed`: the lines, as committed last, of the files that may have changed since. */
export function sinceCommit(journal: Journal, committed: Lines): SinceCommit {
  const now = new Map([...committed.keys()].map(file => [file, linesOf(journal, file)]));
  const found = differing(committed, now);
  if (found.count > MOST_RECORDS) return NOTHING;
  const lots = new Map<string, { isNew: boolean; words: string[] }>();
  for (const { about, words, kind, keyword } of changesOfRecords(found)) {
    const [id, ...parts] = about.split('/');
    const of = lots.get(id!) ?? { isNew: false, words: [] };
    lots.set(id!, of);
    of.isNew ||= kind === 'new' && keyword === 'lot';
    of.words.push(...words.map(each => [parts.join('/'), each].filter(text => text !== '').join(' ')));
  }
  const isChanged = (file: string) => found.before.get(file) !== '' || found.after.get(file) !== '';
  return { lots, files: new Set([...committed.keys()].filter(isChanged)) };
}

/**
 * Undefined where nothing changed.
 *
 * Example: 'since the last commit: A 3 more germinated on 8 February 2026 · 2 more changes'
 */
export function sinceText({ lots }: SinceCommit, lot: string): string | undefined {
  const changes = lots.get(lot);
  if (!changes) return undefined;
  if (changes.isNew) return 'new since the last commit';
  const more = changes.words.length - MOST;
  const shown = [...changes.words.slice(0, MOST), ...(more > 0 ? [counted(more, 'more change')] : [])];
  return `since the last commit: ${shown.join(' · ')}`;
}

function linesOf(journal: Journal, file: string): string[] {
  return Array.from(journal.files.get(file)?.text ?? [], ({ text }) => text);
}
