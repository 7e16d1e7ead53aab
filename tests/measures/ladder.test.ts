import { describe, expect, test } from 'vitest';
import { compare, type Comparison } from '../../server/src/measures/comparison.ts';
import type { Course } from '../../server/src/measures/course.ts';
import { ladderOf } from '../../server/src/measures/ladder.ts';
import { roomsOf } from '../../server/src/measures/room.ts';
import { judge } from '../../server/src/measures/verdict.ts';
import { course, known } from './helpers.ts';

const batch = (n: number, x: number, more: object = {}) => [course(n, `10:${x}`, [28, 40], more)];

/** A ladder judged as a lot judges it: all doses share the error. */
function judgeLadder(untreated: readonly Course[], doses: readonly { dose: number; batches: readonly Course[] }[]) {
  const comparisons = doses.map(({ batches }) => compare(batches, untreated));
  const rooms = roomsOf(comparisons.filter((comparison): comparison is Comparison => 'better' in comparison));
  return ladderOf(untreated, doses.map((dose, i) => {
    const comparison = comparisons[i]!;
    const room = 'better' in comparison ? rooms.get(comparison) : undefined;
    return { ...dose, name: `${dose.dose} ppm`, comparison, verdict: judge(comparison, room ? { room } : {}) };
  }));
}

describe('a ladder of doses', () => {
  test('names the best dose where it is shown to be better than every other', () => {
    const ladder = judgeLadder(batch(40, 6), [
      { dose: 250, batches: batch(40, 10) },
      { dose: 500, batches: batch(40, 32) },
      { dose: 1000, batches: batch(40, 17) },
    ]);
    expect(ladder.best).toEqual({ value: 500 });
    expect(ladder.doses.map(({ dose, verdict }) => [dose, verdict.verdict])).toEqual([
      [250, 'no sign of a benefit'], [500, 'worth repeating'], [1000, 'worth repeating'],
    ]);
  });

  test('names no best dose where another one is not told apart from it', () => {
    const ladder = judgeLadder(batch(40, 6), [
      { dose: 250, batches: batch(40, 27) }, { dose: 500, batches: batch(40, 30) },
    ]);
    expect(ladder.best).toEqual({ undefined: '500 ppm has the most sound seedlings, but cannot be told apart from 250 ppm' });
  });

  test('names all that are not told apart from it, the weakest first, and no others', () => {
    const ladder = judgeLadder(batch(40, 4), [
      { dose: 1000, batches: batch(40, 29) }, { dose: 500, batches: batch(40, 31) },
      { dose: 250, batches: batch(40, 30) }, { dose: 100, batches: batch(40, 6) },
    ]);
    expect(ladder.best).toEqual({ undefined: '500 ppm has the most sound seedlings, but cannot be told apart from 250 ppm and 1000 ppm' });
  });

  test('takes the greatest share, not the greatest number, of sound seedlings', () => {
    const ladder = judgeLadder(batch(60, 4), [
      { dose: 250, batches: batch(40, 38) }, { dose: 500, batches: batch(90, 45) },
    ]);
    expect(ladder.best).toEqual({ value: 250 });
  });

  test('takes the weaker one of two doses that did equally well', () => {
    const ladder = judgeLadder(batch(40, 6), [1000, 500].map(dose => ({ dose, batches: batch(40, 30) })));
    expect(ladder.best).toEqual({ undefined: '500 ppm has the most sound seedlings, but cannot be told apart from 1000 ppm' });
  });

  test('names no best dose where none is worth repeating, or none can be compared', () => {
    const none = { undefined: 'no dose is shown to be worth repeating' };
    expect(judgeLadder(batch(40, 6), [{ dose: 250, batches: batch(40, 8) }]).best).toEqual(none);
    const uncounted = judgeLadder(batch(40, 6), [{ dose: 250, batches: [{ sown: 40, checks: [] }] }]);
    expect(uncounted.best).toEqual(none);
    expect(uncounted.trend).toEqual({ undefined: 'no dose can be compared' });
  });

  test('takes the dose with the most sound seedlings, not the most germinated', () => {
    const ladder = judgeLadder(batch(60, 6), [
      { dose: 250, batches: batch(60, 48) }, { dose: 1000, batches: batch(60, 58, { leggy: 50 }) },
    ]);
    expect(ladder.best).toEqual({ value: 250 });
  });

  test('shares the error among the doses: what passes alone need not pass among four', () => {
    const alone = judgeLadder(batch(40, 6), [{ dose: 250, batches: batch(40, 16) }]);
    expect(alone.doses[0]!.verdict.verdict).toBe('worth repeating');
    const doses = [100, 250, 500, 1000].map(dose => ({ dose, batches: batch(40, dose === 250 ? 16 : 7) }));
    const among = judgeLadder(batch(40, 6), doses).doses[1]!.verdict;
    expect(among.verdict).toBe('cannot tell');
    expect(among.evidence!.room).toMatchObject({ better: 4, treatments: 4 });
    expect(among.evidence!.betterP).toBeCloseTo(4 * alone.doses[0]!.verdict.evidence!.betterP, 10);
  });

  test('has a trend over the ranks of the doses, untreated seed included', () => {
    const { trend } = judgeLadder(batch(10, 2), [
      { dose: 250, batches: batch(10, 5) },
      { dose: 1000, batches: batch(10, 8) },
    ]);
    // R 4.2.2, prop.trend.test(c(2, 5, 8), c(10, 10, 10)).
    expect(known(trend).chiSquare).toBeCloseTo(7.2, 10);
    expect(known(trend).slope).toBeCloseTo(0.3, 10);
  });

  test('has a trend that replicates weaken as far as they differ more than chance allows', () => {
    const replicates = (...counts: readonly number[]) => counts.flatMap(x => batch(10, x));
    const ladder = judgeLadder(replicates(1, 3), [
      { dose: 250, batches: replicates(2, 8) }, { dose: 1000, batches: replicates(6, 10) },
    ]);
    // By hand: 4, 10 and 16 of 20, so 7.2 x 2 without replicates (R 4.2.2, prop.trend.test). Heterogeneity 1.25, 7.2
    // and 5 with 1 df each; 13.45 / 3 is the overdispersion.
    expect(known(ladder.trend).chiSquare).toBeCloseTo(14.4 * 3 / 13.45, 10);
  });
});
