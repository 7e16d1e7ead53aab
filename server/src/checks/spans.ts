import { factsOf, type Countable, type JournalRecord, type Span } from '../model/record.ts';

/** From the first to the last part of a `split`. */
export function spanOfParts(record: JournalRecord): Span {
  const parts = factsOf(record, 'part');
  return { start: parts[0]?.start ?? record.keywordSpan.start, end: parts.at(-1)?.end ?? record.keywordSpan.end };
}

/** The count of one of these, else the subject. */
export function spanOfCount(record: JournalRecord, whats: readonly Countable[]): Span {
  const count = factsOf(record, 'count').findLast(({ what }) => whats.includes(what));
  return count ?? record.subject ?? record.keywordSpan;
}
