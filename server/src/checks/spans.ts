/** Where in its line a problem is shown, and where the other record is that it speaks of. */
import { fileName } from '../journal/journal-file.ts';
import type { Entry, Soak } from '../journal/life.ts';
import { factOf, factsOf, type Countable, type JournalRecord, type Span } from '../model/record.ts';

/** Of a whole record: its subject. */
export function subjectOf({ record }: Pick<Entry, 'record'>): Span {
  return spanOf(record.subject ?? record.keywordSpan);
}

/** Of when it happened: its date, or its subject where a `day` line says the date. */
export function dateOf({ record }: Pick<Entry, 'record'>): Span {
  return spanOf(record.date ?? record.subject ?? record.keywordSpan);
}

/** From the first to the last of the facts of a `split` or a `cut`. */
export function factsSpan({ record }: Pick<Entry, 'record'>, type: 'part' | 'cut'): Span {
  const facts = factsOf(record, type);
  const [first, last] = [facts[0], facts.at(-1)];
  return first && last ? { start: first.start, end: last.end } : subjectOf({ record });
}

/** The last count of one of these, else the subject. */
export function countSpan(record: JournalRecord, whats: readonly Countable[]): Span {
  const count = factsOf(record, 'count').findLast(({ what }) => whats.includes(what));
  return count ? spanOf(count) : subjectOf({ record });
}

/** Where another record is, in words: no line number, for lines come and go above it. */
export function placeOf({ line }: Pick<Entry, 'line'>, from: Pick<Entry, 'line'>): string {
  return line.store === from.line.store ? 'further up in this file' : `in ${fileName(line.store.name)}`;
}

/** What says how long a soak is; the subject where nothing on its line does. */
export function lengthSpan({ entry, endedBy }: Soak): Span {
  const { record } = entry;
  const fact = endedBy === 'duration' ? factOf(record, 'duration') : endedBy === 'until' ? factOf(record, 'until') : undefined;
  return fact ? spanOf(fact) : subjectOf(entry);
}

function spanOf({ start, end }: Span): Span {
  return { start, end };
}
