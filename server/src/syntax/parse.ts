/** From one line of text to what it says. Total: any string gives a reading, and nothing is dropped in silence. */
import { isKeyword, keywords, type Keyword } from '../model/keywords.ts';
import type { Problem } from '../model/problems.ts';
import { noneUnread, type Fact, type JournalRecord, type Span, type Written } from '../model/record.ts';
import { taken } from './fact-types.ts';
import { inWords, readFacts, reportEmpty, type ReadFacts } from './facts.ts';
import { startOf, syntaxOf, type RecordSyntax } from './grammar.ts';
import { readHead } from './head.ts';
import { reportKeyword, reportLine } from './line-slips.ts';
import { reportLimit } from './limits.ts';
import { withoutComma } from './plant.ts';
import { LineReader } from './reader.ts';
import { reportNoSubject, runEnd, standsAlone } from './subject.ts';

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
  const first = line.codePointAt(start);
  if (first === undefined) return blank;
  if (first === 35) return comment;
  const letter = (first >= 97 && first <= 122) || /\p{L}/u.test(String.fromCodePoint(first));
  if (!letter && /\s/.test(line.charAt(start))) return line.trim() === '' ? blank : remark;
  const reader = new LineReader(line);
  const syntax = letter ? syntaxOf(line) : undefined;
  const record = syntax ? readRecord(reader, syntax) : reportLine(reader, start, first);
  return { kind: record ? 'record' : 'unread', record, problems: reader.problems.length > 0 ? reader.problems : none };
}

function readRecord(reader: LineReader, written: RecordSyntax): JournalRecord | undefined {
  const { image } = written.keyword;
  const start = startOf(written.keyword);
  const keywordSpan = { start, end: start + image.length };
  const keyword = image.toLowerCase();
  if (!isKeyword(keyword) || !standsAlone(reader.line, keywordSpan.end)) {
    return reportKeyword(reader, { start, end: runEnd(reader.line, start) }, written.head);
  }
  const takes = taken(keyword);
  const syntax = keyword === 'lot' ? withoutComma(reader, takes, written) : written;
  const head = readHead(reader, takes, keywordSpan, syntax.head);
  const { facts, unread } = isText(keyword)
    ? restAsText(reader, keyword, syntax) : readFacts(reader, takes, syntax, head);
  const broken = reader.problems.length > 0;
  if (!broken) reportMissing(reader, keyword, keywordSpan, facts, head.date !== undefined);
  if (!broken && keyword === 'limit' && head.subject) reportLimit(reader, keywordSpan, head.subject, facts);
  const { subject, plant, date, time } = head;
  return { keyword, keywordSpan, subject, plant, date, time, facts, unread, broken };
}

/** Records whose only fact is a text: everything behind the first comma is that text, commas included. */
function isText(keyword: Keyword): boolean {
  const { facts } = keywords[keyword];
  return facts.length === 1 && facts[0]!.type === 'text';
}

function restAsText(reader: LineReader, keyword: Keyword, syntax: RecordSyntax): ReadFacts {
  const [first] = syntax.facts;
  if (!first) return { facts: [], unread: noneUnread };
  const written = reader.line.slice(first.comma + 1);
  const text = written.trim();
  if (text === '') {
    reportEmpty(reader, keyword, first.comma, true);
    return { facts: [], unread: noneUnread };
  }
  const start = first.comma + 1 + written.indexOf(text);
  const end = start + text.length;
  const value: Written = /^"[^"]*"$/.test(text)
    ? { text: text.slice(1, -1).trim(), start: start + 1, end: end - 1 } : { text, start, end };
  return { facts: [{ type: 'text', value, start, end }], unread: noneUnread };
}

function reportMissing(reader: LineReader, keyword: Keyword, span: Span, facts: readonly Fact[], dated: boolean): void {
  const { facts: uses, example, dated: needs } = keywords[keyword];
  for (const use of uses) {
    if (use.required && !facts.some(({ type }) => type === use.type || type === use.unless)) {
      reader.report('missing-fact', span, { keyword, shape: inWords(use), example });
    }
  }
  if (needs === 'own' && !dated) reportNoSubject(reader, keyword, span, 'an id and the date of the reminder');
}
