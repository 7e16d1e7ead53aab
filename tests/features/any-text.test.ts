import fc from 'fast-check';
import { expect, test } from 'vitest';
import { completionsAt } from '../../server/src/features/completion/completion.ts';
import { hoverAt } from '../../server/src/features/hover/hover.ts';
import { hintsIn } from '../../server/src/features/inlay.ts';
import { lensesOf, lensTitle } from '../../server/src/features/lens.ts';
import { linksOf } from '../../server/src/features/links.ts';
import { selectionsAt } from '../../server/src/features/selection.ts';
import { signatureAt } from '../../server/src/features/signature.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import type { Position, Range } from '../../server/src/text/line-store.ts';
import { at } from './journals.ts';
import { tokensIn } from '../support/tokens.ts';

const now = at('2026-01-19 19:05');

const word = fc.constantFrom(
  'lot', 'split', 'soak', 'lift', 'sow', 'count', 'cut', 'day', 'stock', 'dilute', 'regime', 'guide', 'limit', 'note', 'due', 'photo', 'chill',
  'V-1', 'V-1/A', 'V-1/A/', 'G1', 'Iris', '2026-01-10', '19:00', '24 h', '3', '=3', '3 rotted', 'A 24 seeds', 'GA3', '500 ppm', 'at', 'bag 1 slot 2',
  'from', '"a, b"', '"', 'until', '20/10 C', 'https://example.org/x', '../a.jpg', '9999-12-31', '100 years', '1e9 weeks', '#', '🌱', '\u0301', '\ufeff', ',', ', ', ' ', '  ', '\t', '/', '=',
);
const line = fc.oneof(
  { weight: 4, arbitrary: fc.array(fc.tuple(word, fc.constantFrom(' ', ', ', ',', '')), { maxLength: 8 }).map(all => all.flat().join('')) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 20 }) },
);
const head = 'lot V-1 Iris, 60 seeds\nsplit V-1, A 24 seeds\nstock G1 2026-01-01, GA3 20 mg, 20 mL\n';
const text = fc.tuple(fc.constantFrom('', head), fc.array(line, { maxLength: 6 }), fc.constantFrom('\n', '\r\n'))
  .map(([above, lines, end]) => `${above}${lines.join('\n')}`.replaceAll('\n', end));

function isBefore(a: Position, b: Position): boolean {
  return a.line < b.line || (a.line === b.line && a.character < b.character);
}

function isWithin(inner: Range, outer: Range): boolean {
  return !isBefore(inner.start, outer.start) && !isBefore(outer.end, inner.end);
}

/** An expectation of its own costs more than many a call that it looks at, and there are some hundred thousand. */
function holds(is: boolean, what: unknown): void {
  if (!is) expect.fail(JSON.stringify(what));
}

test('of any text, at any position, all that is shown or offered there fits the text', () => {
  fc.assert(fc.property(text, written => {
    const journal = new Journal();
    journal.set('a.germ', written);
    const file = journal.files.get('a.germ')!.text;
    for (let number = 0; number < file.lineCount; number++) {
      const { length } = file.at(number).text;
      for (let character = 0; character <= length; character++) {
        const position = { line: number, character };
        const found = completionsAt(journal, 'a.germ', position, now);
        if (found) {
          holds(found.start <= found.cursor && found.cursor <= found.end && found.end <= length, found);
          holds(found.items.length <= 100, found);
        }
        const { place, markdown } = hoverAt(journal, 'a.germ', position, now) ?? { place: { line: number, start: 0, end: length }, markdown: '–' };
        holds(place.line === number, place);
        holds(place.start <= character && character <= place.end && place.end <= length, place);
        holds(!/^$|\b(NaN|undefined|Infinity)\b|\[object/.test(markdown), markdown);
        const signature = signatureAt(journal, 'a.germ', position);
        for (const part of signature?.parts ?? []) holds(part.end <= signature!.label.length, signature);
        const [ranges = []] = selectionsAt(file, [position]);
        holds(ranges.length > 0, position);
        ranges.forEach((range, n) => {
          holds(n === 0 || isWithin(ranges[n - 1]!, range), ranges);
          holds(isWithin({ start: position, end: position }, range), ranges);
        });
      }
    }
    let last = { line: 0, end: 0 };
    for (const token of tokensIn(journal, 'a.germ')) {
      expect(token.line > last.line || token.start >= last.end).toBe(true);
      expect(token.end).toBeLessThanOrEqual(file.at(token.line).text.length);
      last = token;
    }
    for (const { line: number, character } of hintsIn(journal, 'a.germ', 0, file.lineCount, { counts: true, soaks: true, stages: true, stocks: true }, now)) {
      expect(character).toBe(file.at(number).text.length);
    }
    for (const { line: number, end } of linksOf(file)) expect(end).toBeLessThanOrEqual(file.at(number).text.length);
    for (const lens of lensesOf(journal, 'a.germ')) expect(lensTitle(journal, lens, now)).not.toBe('');
  }), { numRuns: 60 });
});

test('a position outside the text, and a file that the journal does not have, have no help', () => {
  const journal = new Journal();
  journal.set('a.germ', head);
  for (const line of [-1, 99]) {
    expect(completionsAt(journal, 'a.germ', { line, character: 0 }, now)).toBeUndefined();
    expect(signatureAt(journal, 'a.germ', { line, character: 0 })).toBeUndefined();
  }
  expect(completionsAt(journal, 'b.germ', { line: 0, character: 0 }, now)).toBeUndefined();
  expect([lensesOf(journal, 'b.germ'), ...tokensIn(journal, 'b.germ')]).toEqual([[]]);
});
