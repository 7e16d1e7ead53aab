/** In which part of a record a position is. The same grammar as for reading, on a line that is still being written. */
import type { JournalLine } from '../../journal/journal-file.ts';
import { isKeyword, keywords, type Keyword } from '../../model/keywords.ts';
import type { Span } from '../../model/record.ts';
import { syntaxOf, type Piece } from '../../syntax/grammar.ts';
import { standsAlone } from '../../syntax/subject.ts';

/** A word without a blank or a comma in it. */
export interface Run extends Span {
  readonly text: string;
}

export type Segment =
  | ({ readonly part: 'keyword'; readonly rest: string } & Span)
  | { readonly part: 'head'; readonly keyword: Keyword; readonly runs: readonly Run[] }
  /** One fact, from behind its comma to the next one or the line's end. */
  | ({ readonly part: 'fact'; readonly keyword: Keyword; readonly pieces: readonly Piece[] } & Span);

/** Undefined in remarks and comments, and behind a word that is no keyword. */
export function segmentAt(line: JournalLine, cursor: number): Segment | undefined {
  const { text, content: { kind } } = line;
  if (kind === 'comment' || kind === 'remark') return undefined;
  const begin = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  if (kind === 'blank') return text.length === begin ? { part: 'keyword', rest: '', start: begin, end: begin } : undefined;
  const syntax = syntaxOf(text);
  if (!syntax) return undefined;
  const { image, startOffset: start } = syntax.keyword;
  const end = start + image.length;
  if (cursor <= end) return { part: 'keyword', start, end, rest: text.slice(end).trim() };
  const keyword = image.toLowerCase();
  if (!isKeyword(keyword) || !standsAlone(text, end)) return undefined;
  const { facts } = syntax;
  const index = facts.findLastIndex(({ comma }) => comma < cursor);
  const fact = facts[index];
  if (!fact) return { part: 'head', keyword, runs: runsIn(text, end, facts[0]?.comma ?? text.length) };
  const isText = keywords[keyword].facts.every(({ type }) => type === 'text');
  const next = isText ? undefined : facts[index + 1]?.comma;
  return { part: 'fact', keyword, pieces: fact.pieces, start: fact.comma + 1, end: next ?? text.length };
}

function runsIn(text: string, from: number, to: number): Run[] {
  return [...text.slice(from, to).matchAll(/\S+/g)].map(({ 0: run, index }) =>
    ({ text: run, start: from + index, end: from + index + run.length }));
}
