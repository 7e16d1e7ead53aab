import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { agesFor } from '../../server/src/measures/ages.ts';
import { claimOf } from '../../server/src/measures/claim.ts';
import type { Course } from '../../server/src/measures/course.ts';
import { isUndefined } from '../../server/src/measures/measured.ts';
import { course } from './helpers.ts';

/** Looks that found nothing. */
const looked = (...days: number[]): Course => course(50, '', days);

describe('the ages at which a side can be held against another', () => {
  test('are the days on which both were looked at', () => {
    expect(agesFor([looked(7, 14, 21)], [looked(7, 14, 21)])).toEqual({ all: [7, 14, 21], final: 21, apart: 0 });
  });

  test('give the second side the days to its next look, never the first', () => {
    expect(agesFor([looked(7, 21)], [looked(14, 28)])).toEqual({ all: [7, 21], final: 21, apart: 7 });
    expect(agesFor([looked(14, 28)], [looked(7, 21, 35)])).toEqual({ all: [14, 28], final: 28, apart: 7 });
  });

  test('take the last look before each look of the second side', () => {
    expect(agesFor([looked(1, 2, 3, 4, 5)], [looked(3, 6)])!.all).toEqual([3, 5]);
  });

  test('end where the looks lie close together rather than far apart', () => {
    // On day 63 the second side was not looked at for four more weeks; day 42 is better known.
    expect(agesFor([looked(14, 28, 42, 63)], [looked(14, 28, 42, 91)])!.final).toBe(42);
    expect(agesFor([looked(7, 60)], [looked(7, 65)])!.final).toBe(60);
  });

  test('need no later look at a batch in which no seed is left', () => {
    const finished = course(10, '5:10');
    expect(agesFor([looked(7, 14, 28)], [finished])!.final).toBe(28);
    expect(agesFor([finished], [looked(7, 14, 28)])!.final).toBe(28);
  });

  test('are those of all batches of a side: the one looked at least often counts', () => {
    expect(agesFor([looked(7, 14)], [looked(7, 14), looked(7)])).toEqual({ all: [7], final: 7, apart: 0 });
    expect(agesFor([looked(10), looked(20)], [looked(10, 20, 30)])).toEqual({ all: [10, 20], final: 20, apart: 10 });
    expect(agesFor([looked(10)], [looked(10, 30), looked(20)])).toEqual({ all: [10], final: 10, apart: 10 });
    expect(agesFor([looked(10)], [looked(5)])).toEqual({ all: [5], final: 5, apart: 5 });
    expect(agesFor([looked(10), looked(10)], [looked(10), course(10, '5:10')])).toEqual({ all: [10], final: 10, apart: 0 });
  });

  test('end with the later of two that are as well known', () => {
    expect(agesFor([looked(10, 30)], [looked(10, 50)])).toEqual({ all: [10, 30], final: 30, apart: 20 });
  });

  test('are none where the second side was looked at no more', () => {
    expect(agesFor([looked(10)], [course(10, '')])).toBeUndefined();
  });

  test('give the first side nothing where nobody had looked at it yet', () => {
    expect(agesFor([looked(30)], [looked(20)])).toEqual({ all: [20], final: 20, apart: 20 });
  });
});

describe('a claim', () => {
  const times = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 4, maxLength: 12 });
  const days = fc.uniqueArray(fc.integer({ min: 1, max: 70 }), { minLength: 1, maxLength: 6 })
    .map(list => list.sort((a, b) => a - b));
  const seen = (all: readonly number[], looks: readonly number[]): Course => (
    {
      sown: all.length + 3, closed: true,
      checks: looks.map(day => ({ day, germinated: all.filter(time => time <= day).length })),
    });

  test('compares no seed of the first side that was not there yet, and all of the second that was', () => {
    fc.assert(fc.property(times, times, days, days, (a, b, first, second) => {
      const found = claimOf([[seen(a, first)]], [[seen(b, second)]], 'more or sooner');
      if (isUndefined(found)) return;
      const { ages: { final }, germinated } = found;
      expect(germinated.first.x).toBeLessThanOrEqual(a.filter(time => time <= final).length);
      expect(germinated.second.x).toBeGreaterThanOrEqual(b.filter(time => time <= final).length);
    }));
  });

  test('is no stronger where somebody looked less often', () => {
    fc.assert(fc.property(times, times, days, (a, b, all) => {
      const often = claimOf([[seen(a, all)]], [[seen(b, all)]], 'more or sooner');
      const last = all.at(-1)!;
      const seldom = claimOf([[seen(a, all)]], [[seen(b, [last + 5])]], 'more or sooner');
      if (isUndefined(often) || isUndefined(seldom)) return;
      expect(seldom.germinated.seeds).toBeGreaterThanOrEqual(often.germinated.seeds - 1e-9);
    }));
  });

  // Ritz, Pipper & Streibig 2013, Eur J Agronomy 45:1-6, as the Rdatasets collection prints it: wheat, 20 seeds a dish,
  // looked at daily but on the days left out.
  test.each([
    ['10 C', '6:4 7:6 9:8', [1, 2, 3, 4, 5, 10, 11, 12, 13, 14, 16, 17, 18]],
    ['16 C', '4:11 5:7 7:1', [2, 3, 6, 9, 10, 11, 12, 13, 14, 16, 17, 18]],
    ['22 C', '3:1 4:12 5:3 7:3', [2, 6, 9, 10, 11, 12, 13, 14, 16, 17, 18]],
    ['28 C', '4:8 6:8 7:3', [1, 2, 3, 5, 9, 10, 11, 12, 13, 14, 16, 17, 18]],
    ['34 C', '3:5 4:11 5:1 6:1 12:1', [2, 7, 9, 10, 11, 13, 14, 16, 17, 18]],
    ['40 C', '10:1 11:2', [1, 2, 3, 4, 5, 6, 7, 9, 12, 13, 14, 16, 17, 18]],
  ])('is not made of one dish of wheat at %s, looked at on even and on odd days', (_, fresh, looks) => {
    const whole = course(20, fresh, looks);
    const thinned = (rest: number): Course => (
      { ...whole, checks: whole.checks.filter(({ day }) => day % 2 === rest) });
    for (const [first, second] of [[thinned(0), thinned(1)], [thinned(1), thinned(0)]] as const) {
      const found = claimOf([[first]], [[second]], 'more, sooner or sounder');
      expect(isUndefined(found) ? 1 : found.p).toBeGreaterThan(0.3);
    }
  });
});
