/** How much there is in a journal: for the editor's status, and to see how far a beginner has come. */
import type { Journal } from '../journal/journal.ts';
import type { Keyword } from '../model/keywords.ts';

export interface Summary {
  readonly files: number;
  readonly lots: number;
  /** Each keyword of which there is a record, in the order of the first ones. */
  readonly keywords: readonly Keyword[];
}

export function summaryOf(journal: Journal): Summary {
  const keywords = new Set<Keyword>();
  for (const { text } of journal.files.values()) {
    for (const { content: { record } } of text) if (record) keywords.add(record.keyword);
  }
  const lots = journal.definedIds().filter(id => journal.kindOf(id) === 'lot').length;
  return { files: journal.files.size, lots, keywords: [...keywords] };
}

/** Of several journals: all together. */
export function summaryOfAll(journals: Iterable<Journal>): Summary {
  const summaries = Array.from(journals, summaryOf);
  const sum = (of: 'files' | 'lots') => summaries.reduce((total, each) => total + each[of], 0);
  return { files: sum('files'), lots: sum('lots'), keywords: [...new Set(summaries.flatMap(({ keywords }) => keywords))] };
}
