import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rewriteCounts } from '../../../server/src/features/actions/totals.ts';
import { Journal } from '../../../server/src/journal/journal.ts';
import { countsOf } from '../../../server/src/journal/life.ts';
import { applied } from './applied.ts';

const head = 'lot VER-24 Veratrum nigrum, 60 seeds\nsow VER-24 2026-01-11\n';

function journalOf(text: string): Journal {
  const journal = new Journal();
  journal.set('a.germ', text);
  return journal;
}

function rewrite(text: string, as: 'totals' | 'new'): string | undefined {
  const journal = journalOf(text);
  const action = rewriteCounts(journal.lot('VER-24')!.root, as, journal);
  if (!action) return undefined;
  // One edit for each line.
  expect(new Set(action.edits.map(({ line }) => line)).size).toBe(action.edits.length);
  return applied(journal, action.edits)['a.germ'];
}

test('new counts become totals so far', () => {
  expect(rewrite(`${head}count VER-24 2026-01-19, 3, 1 rotted\ncount VER-24 2026-01-26, 4 germinated\n`, 'totals')).toBe(
    `${head}count VER-24 2026-01-19, =3, =1 rotted\ncount VER-24 2026-01-26, =7 germinated\n`);
});

test('a total takes in what is only implied: what emerged has germinated', () => {
  expect(rewrite(`${head}count VER-24 2026-01-19, 1 germinated, 4 emerged\n`, 'totals')).toBe(
    `${head}count VER-24 2026-01-19, =4 germinated, =4 emerged\n`);
});

test('totals become what is new', () => {
  expect(rewrite(`${head}count VER-24 2026-01-19, =3\ncount VER-24 2026-01-26, = 7 germinated, 2 emerged\n`, 'new')).toBe(
    `${head}count VER-24 2026-01-19, 3\ncount VER-24 2026-01-26, 4 germinated, 2 emerged\n`);
});

test('a total that falls is not rewritten, nor counts that are in that form already', () => {
  expect(rewrite(`${head}count VER-24 2026-01-19, =3\ncount VER-24 2026-01-26, =2\n`, 'new')).toBeUndefined();
  expect(rewrite(`${head}count VER-24 2026-01-19, 3\n`, 'new')).toBeUndefined();
});

test('the history stays the same, there and back', () => {
  const count = fc.record({
    germinated: fc.nat(3), emerged: fc.nat(3), leaf: fc.nat(2), rotted: fc.nat(1), asTotal: fc.boolean(),
  });
  fc.assert(fc.property(fc.array(count, { minLength: 1, maxLength: 6 }), counts => {
    const lines = counts.map(({ germinated, emerged, leaf, rotted }, i) =>
      `count VER-24 2026-02-0${i + 1}, ${germinated} germinated, ${emerged} emerged, ${leaf} leaf, ${rotted} rotted\n`);
    const text = head + lines.join('');
    const totals = (of: string) => countsOf(journalOf(of).lot('VER-24')!.root).map(({ after }) => after);
    const there = rewrite(text, 'totals');
    expect(totals(there!)).toEqual(totals(text));
    const back = rewrite(there!, 'new');
    expect(totals(back!)).toEqual(totals(text));
  }));
});
