import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { isKeyword, keywords, type Keyword } from '../../server/src/model/keywords.ts';
import type { Problem } from '../../server/src/model/problems.ts';
import { factsOf, type Span } from '../../server/src/model/record.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { anyLine, brokenLine, recordLine } from '../support/arbitrary-lines.ts';

/** Any UTF-16 at all, and what the format's own signs make of it. */
const anyText = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.array(fc.integer({ min: 0, max: 0xffff })).map(codes => String.fromCharCode(...codes)),
  fc.array(fc.constantFrom(
    'count', 'lot', 'soak', 'note', 'day', ' ', '\t', ',', '"', '=', '-', '/', '.', '3', '24', 'h', '%', '°', 'C', '2026-01-19',
    '19:30', 'X', 'GA3', '，', '🌱', '\ud83c', '\u0000', '\ufeff', '\u2028', '\u00a0', 'from', 'A', '#', "'", 'T',
  ), { maxLength: 14 }).map(signs => signs.join('')),
);
const hostile = fc.oneof(anyText, anyText.map(text => `count ${text}`), anyText.map(text => `lot ${text}`), brokenLine, anyLine);

describe('reading a line', () => {
  it('never throws, and reports within the line, in words', () => {
    fc.assert(fc.property(hostile, line => {
      for (const problem of parse(line).problems) expectSound(problem, line);
    }), { numRuns: 3000 });
  });

  it('finds a record or a problem in every line that begins with a letter, and in no other a record, but for a date alone', () => {
    fc.assert(fc.property(hostile, line => {
      const { kind, record, problems } = parse(line);
      const first = line.replace(/^\ufeff/, '');
      if (/^\p{L}/u.test(first)) {
        expect(record !== undefined || problems.length > 0).toBe(true);
        expect(kind).toBe(record ? 'record' : 'unread');
        if (record?.broken) expect(problems).not.toEqual([]);
      } else {
        // A date that lacks its `day` is a day that nobody knows, lest the one above it hold.
        expect(record === undefined || (record.broken && record.keyword === 'day' && /^\d/.test(first))).toBe(true);
        expect(problems.length).toBe(kind === 'unread' || record ? 1 : 0);
        if (!record) expect(kind).toBe(first.trim() === '' ? 'blank' : first.startsWith('#') ? 'comment' : /^\s/.test(first) ? 'remark' : 'unread');
      }
    }), { numRuns: 3000 });
  });

  it('drops nothing in silence: where it has no problem, every sign is part of something', () => {
    fc.assert(fc.property(hostile, line => {
      const { record, problems } = parse(line);
      if (record && problems.length === 0) expect(dropped(line, spansOf(line)), line).toBe('');
    }), { numRuns: 3000 });
  });

  it('has no problem with any record of the format, written tidily or not', () => {
    fc.assert(fc.property(recordLine, ({ tidy, loose }) => {
      for (const line of [tidy, loose]) expect(parse(line).problems, line).toEqual([]);
    }), { numRuns: 3000 });
  });

  it('gives the same reading for the same text', () => {
    fc.assert(fc.property(hostile, line => {
      expect(parse(line)).toEqual(parse(line));
    }));
  });

  it('ends on lines of twenty thousand characters, and says no more of them than of others', () => {
    const long = (sign: string) => sign.repeat(20_000 / sign.length);
    for (const sign of [
      '1', 'a', ',', '1,', '1-', '"', ' "', '" ', ' "a', 'a/', '/', ':', '=', '= ', '°', '🌱', ', 1', ', a', ', "', '，', '\t', '\0',
    ]) {
      for (const begin of ['count X, ', 'count ', 'lot A B, from ', 'soak X', 'a']) {
        const { problems } = parse(begin + long(sign));
        expect(problems.length).toBeLessThanOrEqual(20);
        // What an editor is sent must not grow with the line.
        const words = problems.flatMap(({ message, fixes }) => [message, ...fixes.map(({ title }) => title)]);
        expect(Math.max(0, ...words.map(each => each.length)), `${begin}${sign}...`).toBeLessThan(500);
      }
    }
  });
});

describe('the example of each keyword', () => {
  test.each(Object.entries(keywords))('%s has no problem', (keyword, { example }) => {
    const { record, problems } = parse(example);
    expect(problems).toEqual([]);
    expect(record!.keyword).toBe(keyword);
  });

  test.each(Object.keys(keywords).filter(isKeyword))('the facts of %s have shapes that it takes', keyword => {
    const begin = keyword === 'guide' ? 'guide Primula' : keyword === 'lot' ? 'lot A-1 Primula vialii' : beginOf(keyword);
    for (const { type, shape } of keywords[keyword].facts) {
      const needed = keywords[keyword].facts.filter(use => use.required && use.type !== type).map(use => use.shape);
      const limit = keyword === 'limit' && type !== 'duration' ? 'limit GA3' : begin;
      const line = [limit, ...needed, shape, ...(type === 'for' ? ['500 ppm'] : [])].join(', ');
      const { record, problems } = parse(line);
      expect(problems, line).toEqual([]);
      expect(factsOf(record!, type), line).toHaveLength(1);
    }
  });
});

/** The head of a keyword's example. */
function beginOf(keyword: Keyword): string {
  return keyword === 'limit' ? 'limit soak' : keywords[keyword].example.split(',')[0]!;
}

function expectSound({ start, end, message, fixes }: Problem, line: string): void {
  expect(0 <= start && start < end && end <= line.length, `${start} to ${end} of ${line.length}`).toBe(true);
  expect(message).toMatch(/^[“A-Z].*[.?] \S|^[“A-Z].*[.?]$/s);
  expect(message).not.toMatch(/\{\w+\}|undefined|NaN|\p{Cs}/u);
  for (const fix of fixes) {
    expect(0 <= fix.start && fix.start <= fix.end && fix.end <= line.length).toBe(true);
    expect(fix.title).not.toBe('');
    expect(line.slice(0, fix.start) + fix.text + line.slice(fix.end)).not.toBe(line);
  }
}

/** All that a record says has its place in: keyword, subject, plant, date, time, facts. */
function spansOf(line: string): Span[] {
  const { keywordSpan, subject, plant, date, time, facts } = parse(line).record!;
  return [keywordSpan, subject, plant, date, time, ...facts].filter(span => span !== undefined);
}

/** What is left of a line without the spans, the blanks, the commas and the marks around a quoted name. */
function dropped(line: string, spans: readonly Span[]): string {
  const signs = line.split('');
  for (const { start, end } of spans) signs.fill(' ', start, end);
  const around = spans.map(({ start, end }) => [start - 1, end]).filter(([before, after]) => line[before!] === '"' && line[after!] === '"');
  for (const [before, after] of around) signs[before!] = signs[after!] = ' ';
  return signs.join('').replaceAll(/[\s,\u2028\ufeff]/g, '');
}
