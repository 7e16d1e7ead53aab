/** From one line of text to what it says. Total: any string gives a reading, and nothing on a line is dropped in silence. */
import { isKeyword, keywords, type Keyword } from '../model/keywords.ts';
import type { Problem } from '../model/problems.ts';
import type { Fact, JournalRecord, Span } from '../model/record.ts';
import { readFact, reportRepeats } from './facts.ts';
import { syntaxOf, type RecordSyntax } from './grammar.ts';
import { readHead } from './head.ts';
import { listed, nearest } from './nearest.ts';
import { LineReader, replacement } from './reader.ts';

export interface Reading {
  readonly kind: 'blank' | 'comment' | 'remark' | 'record' | 'unread';
  readonly record: JournalRecord | undefined;
  readonly problems: readonly Problem[];
}

const none: readonly Problem[] = [];
const blank: Reading = { kind: 'blank', record: undefined, problems: none };
const comment: Reading = { kind: 'comment', record: undefined, problems: none };
const remark: Reading = { kind: 'remark', record: undefined, problems: none };

/**
 * Reads a line, given without its line end. A byte order mark before the first character is passed over.
 *
 * Example: parse('count VER-24/A, 3').record?.facts[0] is 3 germinated
 */
export function parse(line: string): Reading {
  const start = line.charCodeAt(0) === 0xfeff ? 1 : 0;
  const first = line.charAt(start);
  if (line.trim() === '') return blank;
  if (first === '#') return comment;
  if (/\s/.test(first)) return remark;
  const reader = new LineReader(line);
  const record = /\p{L}/u.test(String.fromCodePoint(line.codePointAt(start) ?? 0)) ? readRecord(reader) : unreadable(reader, start);
  return { kind: record ? 'record' : 'unread', record, problems: reader.problems.length > 0 ? reader.problems : none };
}

function unreadable(reader: LineReader, start: number): undefined {
  const character = String.fromCodePoint(reader.line.codePointAt(start) ?? 0);
  return reader.report('unknown-line', { start, end: start + character.length }, {}, [
    { title: 'Make it a comment', start, end: start, text: '# ' },
    { title: 'Make it a remark', start, end: start, text: '  ' },
  ]);
}

function readRecord(reader: LineReader): JournalRecord | undefined {
  const syntax = syntaxOf(reader.line);
  if (!syntax) return unreadable(reader, 0);
  const keywordSpan = { start: syntax.keyword.startOffset, end: syntax.keyword.startOffset + syntax.keyword.image.length };
  const keyword = syntax.keyword.image.toLowerCase();
  if (!isKeyword(keyword)) return unknownKeyword(reader, keywordSpan);
  const head = readHead(reader, keyword, keywordSpan, syntax.head);
  const facts = isText(keyword) ? restAsText(reader, syntax) : readFacts(reader, keyword, syntax);
  const broken = reader.problems.length > 0;
  if (!broken) reportMissing(reader, keyword, keywordSpan, facts, head.date !== undefined);
  return { keyword, keywordSpan, ...head, facts, broken };
}

function readFacts(reader: LineReader, keyword: Keyword, syntax: RecordSyntax): Fact[] {
  const facts: Fact[] = [];
  for (const { comma, pieces } of syntax.facts) {
    const fact = readFact(reader, keyword, comma, pieces);
    if (fact) facts.push(fact);
  }
  reportRepeats(reader, keyword, facts);
  return facts;
}

/** Records whose only fact is a text: everything behind the first comma is that text, commas included. */
function isText(keyword: Keyword): boolean {
  const { facts } = keywords[keyword];
  return facts.length === 1 && facts[0]?.type === 'text';
}

function restAsText({ line }: LineReader, syntax: RecordSyntax): Fact[] {
  const first = syntax.facts[0];
  if (!first) return [];
  const start = first.pieces[0]?.start ?? line.length;
  const end = line.trimEnd().length;
  const text = line.slice(start, end);
  if (text === '') return [];
  const quoted = /^"[^"]*"$/.test(text) ? 1 : 0;
  const value = { text: text.slice(quoted, text.length - quoted), start: start + quoted, end: end - quoted };
  return [{ type: 'text', value, start, end }];
}

function unknownKeyword(reader: LineReader, span: Span): undefined {
  const word = reader.slice(span);
  const near = nearest(word, Object.keys(keywords));
  const suggestion = near
    ? `Did you mean “${near}”?`
    : `The keywords are ${listed(Object.keys(keywords), 'and')}. A remark begins with a blank, a comment with #.`;
  const fixes = near ? [replacement(span, near)] : [{ title: 'Make it a remark', start: span.start, end: span.start, text: '  ' }];
  return reader.report('unknown-keyword', span, { word, suggestion }, fixes);
}

function reportMissing(reader: LineReader, keyword: Keyword, span: Span, facts: readonly Fact[], dated: boolean): void {
  const { facts: uses, example, dated: needs } = keywords[keyword];
  for (const use of uses) {
    if (use.required && !facts.some(fact => fact.type === use.type)) {
      reader.report('missing-fact', span, { keyword, shape: `“${use.shape}”`, example });
    }
  }
  if (keyword === 'day' && !dated) reader.report('missing-subject', span, { keyword, what: 'a date', example });
  if (needs === 'own' && !dated) reader.report('missing-date', span);
}
