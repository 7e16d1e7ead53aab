/** Keywords as they stand in a sentence: `sowed`, `cutting`, `applies`. */
import { keywords, type Keyword } from '../model/keywords.ts';

function formsOf(keyword: string): string[] {
  const stem = keyword.replace(/e$/, '');
  const doubled = keyword + keyword.slice(-1);
  const soft = keyword.replace(/y$/, 'i');
  return [
    ...['s', 'es', 'ed', 'ing', 'n'].map(end => stem + end), ...['ed', 'ing'].map(end => doubled + end),
    `${keyword}s`, `${keyword}ing`, `${soft}ed`, `${soft}es`,
  ];
}

const keywordByForm = new Map((Object.keys(keywords) as Keyword[]).flatMap(keyword =>
  formsOf(keyword).map(form => [form, keyword] as const)));

/** The keyword of which a word is another form; undefined for any other word. */
export function keywordOfForm(word: string): Keyword | undefined {
  return keywordByForm.get(word.toLowerCase());
}
