import { describe, expect, it } from 'vitest';
import { sinceCommit, sinceText } from '../../server/src/features/since-commit.ts';
import { Journal } from '../../server/src/journal/journal.ts';

const LOTS = 'lot V-1 Iris, 60 seeds\nsplit V-1, A 24 seeds, B 24 seeds\nlot V-2 Crocus, 30 seeds\n';
const COUNTS = 'day 2026-02-01\ncount V-1/A, 3\ncount V-1/B, 0\nsow V-2\n';

function since(now: Readonly<Record<string, string>>, committed: Readonly<Record<string, string>>) {
  const journal = new Journal();
  for (const [name, text] of Object.entries(now)) journal.set(name, text);
  return sinceCommit(journal, new Map(Object.entries(committed).map(([name, text]) => [name, text.split('\n')])));
}

describe('the changes of a lot since the last commit', () => {
  it.each([
    ['nothing', COUNTS, 'V-1', undefined],
    ['another lot', COUNTS.replace('sow V-2', 'sow V-2, 15 C'), 'V-1', undefined],
    ['a count', `${COUNTS}count V-1/A, 2\n`, 'V-1', 'since the last commit: A 2 more germinated on 1 February 2026'],
    ['the lot itself', `${COUNTS}note V-2, Moved.\n`, 'V-2', 'since the last commit: new: note on 1 February 2026, Moved.'],
    [
      'more than can be shown', `${COUNTS}count V-1/A, 2\ncount V-1/B, 1\ncount V-1/A, 0\ncount V-1/A, 1\n`, 'V-1',
      'since the last commit: A 2 more germinated on 1 February 2026 · B 1 more germinated on 1 February 2026 · 2 more changes',
    ],
    [
      'one more than can be shown', `${COUNTS}count V-1/A, 2\ncount V-1/B, 1\ncount V-1/A, 0\n`, 'V-1',
      'since the last commit: A 2 more germinated on 1 February 2026 · B 1 more germinated on 1 February 2026 · 1 more change',
    ],
    ['a new day of an old count', COUNTS.replace('02-01', '02-02'), 'V-2', 'since the last commit: sow now on 2 February 2026 instead of 1 February 2026'],
  ])('are told: %s', (_, now, lot, text) => {
    const found = since({ 'a.germ': LOTS, 'b.germ': now }, { 'a.germ': LOTS, 'b.germ': COUNTS });
    expect(sinceText(found, lot)).toBe(text);
    expect([...found.files]).toEqual(now === COUNTS ? [] : ['b.germ']);
  });

  it('are none for a record that moved into another file, and none but that for a new lot', () => {
    const found = since(
      { 'a.germ': LOTS, 'b.germ': 'lot V-3 Iris\nsow V-3 2026-02-08\n', 'c.germ': COUNTS },
      { 'a.germ': LOTS + COUNTS, 'b.germ': '', 'c.germ': '' },
    );
    expect(['V-1', 'V-2', 'V-3'].map(lot => sinceText(found, lot))).toEqual([undefined, undefined, 'new since the last commit']);
  });

  it('are not told one by one where another tool rewrote a thousand records', () => {
    const many = (n: number) => Array.from({ length: n }, (_, i) => `note V-1 2026-02-01, Number ${i}.\n`).join('');
    const told = (n: number) => sinceText(since({ 'a.germ': LOTS + many(n) }, { 'a.germ': LOTS }), 'V-1');
    expect(told(999)).toContain('997 more changes');
    expect(told(1001)).toBeUndefined();
  });
});
