import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { acrossLots } from '../../server/src/measures/across-lots.ts';
import { measureBatch } from '../../server/src/measures/batch.ts';
import { compare } from '../../server/src/measures/comparison.ts';
import { ladderOf } from '../../server/src/measures/ladder.ts';
import { plan } from '../../server/src/measures/plan.ts';
import { judge } from '../../server/src/measures/verdict.ts';

/** Whatever a journal may hold: days before day 0, odd seedlings, cut tests, and now and then totals that cannot be. */
const total = fc.integer({ min: 0, max: 3 });
const rare = fc.nat({ max: 19 }).map(n => n === 0);
const courses = fc.record({
  more: fc.oneof(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 40 })),
  checks: fc.array(fc.record({
    day: fc.integer({ min: 0, max: 20 }),
    germinated: total, leaf: total, leggy: total, died: total, rotted: total, lost: total,
  }), { minLength: 1, maxLength: 6 }),
  start: fc.integer({ min: -20, max: 5 }),
  cut: fc.boolean(),
  uncounted: rare,
  faulty: rare,
}).map(({ more, checks, start, cut, uncounted, faulty }) => {
  let before = { day: start, germinated: 0, leaf: 0, leggy: 0, died: 0, rotted: 0, lost: 0 };
  const cumulative = checks.map(check => {
    const sum = { ...before };
    for (const [key, n] of Object.entries(check)) sum[key as keyof typeof sum] += n;
    return (before = sum);
  });
  return {
    sown: faulty ? more : before.germinated + before.rotted + before.lost + more,
    checks: uncounted ? [] : cumulative,
    ...cut && { cut: { fresh: more, hard: 0, dead: 0, empty: 0 } },
  };
});

/** Every number in it is one, and every sentence is whole. */
function expectSound(result: unknown): void {
  // One expectation for all: they are many thousands, and each costs more than the look at a value.
  const wrong: unknown[] = [];
  const visit = (value: unknown): void => {
    if (typeof value === 'object' && value !== null) Object.values(value).forEach(visit);
    else if (typeof value === 'number' ? !Number.isFinite(value)
      : typeof value === 'string' && /NaN|Infinity|undefined|\[object/.test(value)) wrong.push(value);
  };
  visit(result);
  expect(wrong).toEqual([]);
}

describe('whatever a journal holds', () => {
  test('a batch has sound numbers or reasons', () => {
    fc.assert(fc.property(courses, course => expectSound(measureBatch(course))));
  });

  const side = fc.array(courses, { minLength: 1, maxLength: 3 });

  test('a comparison and its verdict have them', () => {
    fc.assert(fc.property(side, side, (treated, untreated) => {
      const comparison = compare(treated, untreated);
      const verdict = judge(comparison);
      expectSound(comparison);
      expectSound(verdict);
      expect(verdict.sentence).toMatch(/^[A-Z].*\.$/);
    }));
  });

  test('a ladder, and several lots, have them', () => {
    fc.assert(fc.property(side, fc.array(side, { maxLength: 3 }), (untreated, sides) => {
      const ladder = ladderOf(untreated, sides.map((batches, i) => {
        const comparison = compare(batches, untreated);
        return { dose: 100 * (i + 1), name: 'a dose', batches, comparison, verdict: judge(comparison) };
      }));
      const across = acrossLots(sides.map((treated, i) => ({ lot: String(i), treated: [treated], untreated })));
      expectSound([ladder, across]);
      expect(across.sentence).toMatch(/^[A-Z].*\.$/);
    }));
  });

  test('a plan has them', () => {
    const seeds = fc.integer({ min: 1, max: 40 });
    fc.assert(fc.property(seeds, seeds, fc.double({ min: 0, max: 1, noNaN: true }), (treated, untreated, share) => {
      expectSound(plan(treated, untreated, share));
    }));
  });
});
