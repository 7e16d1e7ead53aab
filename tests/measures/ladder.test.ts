import { describe, expect, test } from 'vitest';
import { judgeLadder } from '../../server/src/measures/ladder.ts';
import { course, known } from './helpers.ts';

const batch = (n: number, x: number, more: object = {}) => [course(n, `10:${x}`, [28, 40], more)];

describe('a ladder of doses', () => {
  test('names the best dose where it is shown to be better than every other', () => {
    const ladder = judgeLadder(batch(40, 6), [
      { dose: 250, batches: batch(40, 10) },
      { dose: 500, batches: batch(40, 32) },
      { dose: 1000, batches: batch(40, 17) },
    ]);
    expect(ladder.best).toEqual({ value: 500 });
    expect(ladder.doses.map(({ dose, verdict }) => [dose, verdict.verdict])).toEqual([
      [250, 'cannot tell'], [500, 'worth repeating'], [1000, 'worth repeating'],
    ]);
  });

  test('names no best dose where another one is not told apart from it', () => {
    const ladder = judgeLadder(batch(40, 6), [
      { dose: 250, batches: batch(40, 27) }, { dose: 500, batches: batch(40, 30) },
    ]);
    expect(ladder.best).toEqual({ undefined: '500 has the most sound seedlings, but is not told apart from 250' });
  });

  test('takes the weaker one of two doses that did equally well', () => {
    const ladder = judgeLadder(batch(40, 6), [1000, 500].map(dose => ({ dose, batches: batch(40, 30) })));
    expect(ladder.best).toEqual({ undefined: '500 has the most sound seedlings, but is not told apart from 1000' });
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

  test('corrects its p-values: what passes alone need not pass among four', () => {
    const alone = judgeLadder(batch(40, 6), [{ dose: 250, batches: batch(40, 15) }]);
    expect(alone.doses[0]!.verdict.verdict).toBe('worth repeating');
    const doses = [100, 250, 500, 1000].map(dose => ({ dose, batches: batch(40, dose === 250 ? 15 : 7) }));
    const among = judgeLadder(batch(40, 6), doses);
    // R 4.2.2: fisher.test(matrix(c(15, 25, 6, 34), 2, byrow = TRUE)) has p 0.0406; four times that is 0.162.
    expect(among.doses[1]!.verdict).toMatchObject({
      verdict: 'cannot tell',
      sentence: expect.stringContaining("; among so many doses that may be chance (Fisher's exact test after Holm, p 0.16); "),
    });
    expect(among.doses[0]!.verdict.sentence).not.toContain('Holm');
  });

  test('claims no absence of a benefit where a dose by itself would show one', () => {
    const doses = [100, 250, 500].map(dose => ({ dose, batches: batch(160, dose === 250 ? 80 : 61) }));
    const [, middle] = judgeLadder(batch(160, 60), doses).doses;
    expect(middle!.verdict.evidence).toMatchObject({ visible: true, more: false });
    expect(middle!.verdict.evidence!.contrast.difference.low).toBeGreaterThan(0);
    expect(middle!.verdict.verdict).toBe('cannot tell');
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

  test('does not judge a dose in which more differs', () => {
    const { doses } = judgeLadder(batch(40, 6), [{ dose: 250, batches: batch(40, 30), alsoDiffers: ['medium'] }]);
    expect(doses[0]!.verdict.rule).toBe('more-differs');
  });
});
