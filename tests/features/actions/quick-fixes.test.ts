import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../../server/src/checks/problem-book.ts';
import { fixAll, quickFixes } from '../../../server/src/features/actions/quick-fixes.ts';
import type { Journal } from '../../../server/src/journal/journal.ts';
import { anyLine } from '../../support/arbitrary-lines.ts';
import { at } from '../journals.ts';
import { applied, journalIn } from './applied.ts';

const now = at('2026-03-01 12:00');

function foundIn(journal: Journal, name = 'a.germ') {
  const book = new ProblemBook(journal);
  book.update(now);
  return book.of(name);
}

/** The titles of the fixes of a line, the one that the editor may take unasked with a star. */
function titles(text: string, line = 0): string[] {
  const journal = journalIn({ 'a.germ': text });
  return quickFixes(foundIn(journal), line, line, { journal, file: 'a.germ', now })
    .map(({ title, evident }) => (evident ? `* ${title}` : title));
}

describe('of several fixes', () => {
  test.each([
    ['lto V Iris', ['* Change to “lot”', 'Make it a remark']],
    ['hurrah, it is up', ['Make it a remark']],
    ['lot V Iris, 5 sedes', ['* Change to “seeds”']],
    ['lot V Iris, collected 3/4/2025', ['Change to “2025-04-03”', 'Change to “2025-03-04”']],
    ['lot V Iris, 5 seeds, 6 seeds', ['Take out the second']],
    ['lot V Iris, 5 seeds,', ['* Take out the comma']],
    // A thousandth of the dose, or a slip: the grower says.
    ['soak V, GA3 500 ppb', ['Change to “ppm”']],
    ['soak V, GA3 500 Ppm', ['* Change to “ppm”']],
    // Two facts, but germinated seed is counted once.
    ['count V 2026-01-01, 3,1 rotted', ['* Change to “3, 1”']],
    ['count V 2026-01-01, 31,56', ['Change to “31, 56”']],
    // It is more than 400 days ahead, and so would be the same day of the next year: it is that day.
    ['chill V 2027-04-06, 4 C\nlot V Iris', ['Change to “2026-04-06”']],
  ])('%j has %j', (line, expected) => {
    expect(titles(line)).toEqual(expected);
  });

  test('only those of the lines asked for are offered', () => {
    expect(titles('lot V Iris, 5 sedes\nlot W Iris, 5 sedes\nlot X Iris, 5 sedes', 1)).toHaveLength(1);
    expect(titles('lot V Iris, 5 sedes', 1)).toEqual([]);
  });
});

describe('every evident slip of a file', () => {
  test('is mended in one go, one edit a line, and what can mean two things is left', () => {
    const text = 'lot V Iris, 5 seeds,\nsow V 2026-1-11, 18,5 C\nlift V 3/4/2026\nlto W Iris\nstock G1 2026-01-09, GA3 20 Mg, 20,5 ml\nsoak V 2026-01-10, GA3 500 ppb\n';
    const journal = journalIn({ 'a.germ': text });
    const action = fixAll(foundIn(journal), journal)!;
    expect(action.edits.map(({ line }) => line)).toEqual([0, 1, 4]);
    expect(applied(journal, action.edits)).toEqual({
      'a.germ': 'lot V Iris, 5 seeds\nsow V 2026-01-11, 18.5 C\nlift V 3/4/2026\nlto W Iris\nstock G1 2026-01-09, GA3 20 mg, 20.5 ml\nsoak V 2026-01-10, GA3 500 ppb\n',
    });
    expect(fixAll([], journal)).toBeUndefined();
  });
});

test('whatever a journal says, every fix is an edit of its lines that it has', () => {
  const lines = fc.array(fc.oneof(anyLine, fc.constantFrom(
    'lot VER-24 Veratrum, 9 seeds', 'split VER-24, A 9 seeds, b2 9 seeds', 'sow VER-24/A, 12 seeds', 'count VER-24/A 2026-01-20, 7',
    'count VER-24/A 2026-01-30, 9', 'cut VER-24/A 2026-02-01, 20 dead', 'soak VER-24/b2 2026-01-10 19:00, GA3', 'day 2026-02-02',
    'sow VER-24/b2 2026-01-11', 'zone Europe/Viena', 'lot VER-24 Veratrum, 9 seeds', 'split VER-24, A 2 seeds', 'soak a 2026-01-09 19:00, G1',
    'count VER-24/A 2026-12-20, =1', 'soak VER-24/A 2026-01-10 19:00, water, until 2026-01-10 07:00', 'sow VER-24/Z 2026-01-10, 2 seeds',
  )), { minLength: 1, maxLength: 14 });
  const mended = new Set<string>();
  fc.assert(fc.property(lines, fc.constantFrom('\n', '\r\n'), (all, end) => {
    const journal = journalIn({ 'a.germ': all.join(end) });
    const found = foundIn(journal);
    for (const { edits, code, title } of quickFixes(found, 0, all.length, { journal, file: 'a.germ', now })) {
      mended.add(code);
      expect(title).not.toMatch(/\{|undefined|NaN/);
      const text = applied(journal, edits)['a.germ']!;
      expect(text).not.toBe(all.join(end));
      if (end === '\r\n' && all.length > 1) expect(text.replaceAll('\r\n', '')).not.toMatch(/\n/);
    }
    const every = fixAll(found, journal);
    if (every) expect(applied(journal, every.edits)['a.germ']).not.toBe(all.join(end));
  }), { numRuns: 400 });
  expect(mended.size).toBeGreaterThan(15);
});
