/** What a selection grows to: word, fact, record, its remarks, day, heading, file. */
import type { JournalText } from '../journal/journal-file.ts';
import type { Span } from '../model/record.ts';
import type { Position, Range } from '../text/line-store.ts';
import { foldsOf, type Fold } from './folding.ts';

/** From the smallest to the largest, each a part of the next, at each of the positions. */
export function selectionsAt(text: JournalText, positions: readonly Position[]): Range[][] {
  const folds = foldsOf(text);
  return positions.map(position => selectionsOf(text, folds, text.clamp(position)));
}

function selectionsOf(text: JournalText, folds: readonly Fold[], { line: number, character }: Position): Range[] {
  const line = text.at(number);
  const holdsCursor = (span: Span | undefined): span is Span =>
    span !== undefined && span.start <= character && character <= span.end;
  const facts = line.content.record?.facts ?? [];
  const within = [wordAt(line.text, character), pathAt(line.text, character), ...facts, trimmed(line.text)]
    .filter(holdsCursor)
    .map(({ start, end }) => ({ start: { line: number, character: start }, end: { line: number, character: end } }));
  const around = folds.filter(({ start, end }) => start <= number && number <= end)
    .map(({ start, end }) => linesOf(text, start, end));
  const all = [...within, ...around, linesOf(text, 0, text.lineCount - 1)];
  return all.sort((a, b) => sizeOf(a) - sizeOf(b) || widthOf(a) - widthOf(b)).reduce<Range[]>((kept, range) => {
    const last = kept.at(-1);
    return !last || (holds(range, last) && !holds(last, range)) ? [...kept, range] : kept;
  }, []);
}

function linesOf(text: JournalText, start: number, end: number): Range {
  return { start: { line: start, character: 0 }, end: { line: end, character: text.at(end).text.length } };
}

function sizeOf({ start, end }: Range): number {
  return end.line - start.line;
}

function widthOf({ start, end }: Range): number {
  return end.character - start.character;
}

function holds(outer: Range, inner: Range): boolean {
  return !isBefore(inner.start, outer.start) && !isBefore(outer.end, inner.end);
}

function isBefore(a: Position, b: Position): boolean {
  return a.line < b.line || (a.line === b.line && a.character < b.character);
}

/** Letters and digits with the signs that an id holds: `VER-24` of `VER-24/A`. */
function wordAt(text: string, character: number): Span | undefined {
  return runAt(text, character, /[\p{L}\p{M}\p{N}_.+-]+/gu);
}

/** All up to the next blank or comma: `VER-24/A`. */
function pathAt(text: string, character: number): Span | undefined {
  return runAt(text, character, /[^\s,]+/g);
}

function runAt(text: string, character: number, pattern: RegExp): Span | undefined {
  for (const { 0: run, index } of text.matchAll(pattern)) {
    if (index <= character && character <= index + run.length) return { start: index, end: index + run.length };
  }
  return undefined;
}

/** The line without the blanks around it. */
function trimmed(text: string): Span | undefined {
  const start = text.search(/[^\s\ufeff]/);
  return start < 0 ? undefined : { start, end: text.trimEnd().length };
}
