import { describe, expect, test } from 'vitest';
import { plantTrial } from '../../server/src/trials/plant-trial.ts';
import { contest, journalOf, trial } from './helpers.ts';

/** Two batches of 40 sown on one day, the first of them treated, with what was counted later. */
const lot = (...later: readonly string[]) => lotNamed('L', ...later);

const lotNamed = (id: string, ...later: readonly string[]) => `
  lot L Iris alba, 80 seeds
  split L, A 40 seeds, B 40 seeds
  soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
  soak L/B 2026-01-10 19:00, water, 24 h
  sow L/A 2026-01-11 19:00
  sow L/B 2026-01-11 19:00
  ${later.join('\n  ')}
`.replaceAll('L/', `${id}/`).replaceAll(/ L\b/g, ` ${id}`);

const verdictOf = (...later: readonly string[]) => contest(lot(...later)).verdict;

describe('weak seedlings that are found after the looks compared', () => {
  const early = ['count L/A 2026-02-10, 30', 'count L/B 2026-02-10, 10'] as const;
  const ended = ['discard L/A 2026-03-11', 'discard L/B 2026-03-11'] as const;

  test('take the praise back', () => {
    expect(verdictOf(...early, ...ended)).toMatchObject({ verdict: 'worth repeating', rule: 'more' });
    expect(verdictOf(...early, 'count L/A 2026-03-10, 28 died', ...ended)).toMatchObject({
      verdict: 'cannot tell', rule: 'more-but-weak',
      sentence: expect.stringContaining(', but by the last looks, 28 of 30 treated seedlings are weak (leggy, abnormal or dead) and 0 of 10 untreated.'),
    });
  });

  test('take none back where a few die', () => {
    expect(verdictOf(...early, 'count L/A 2026-03-10, 3 died', ...ended).verdict).toBe('worth repeating');
  });

  test('take none back where as many of the untreated die', () => {
    expect(verdictOf(...early, 'count L/A 2026-03-10, 12 died', 'count L/B 2026-03-10, 4 died', ...ended).verdict).toBe('worth repeating');
  });

  test('do not make the untreated seed the better one where its own die later', () => {
    const sound = ['count L/A 2026-02-10, 30, 28 leggy', 'count L/B 2026-02-10, 28'];
    expect(verdictOf(...sound, ...ended)).toMatchObject({ verdict: 'harmful', rule: 'fewer-sound' });
    const later = verdictOf(...sound, 'count L/B 2026-03-10, 27 died', ...ended);
    expect(later.verdict).not.toBe('harmful');
  });
});

describe('weak seedlings of which the words may overlap', () => {
  test('are told by both readings, and praise needs both', () => {
    const counts = (a: string, b: string) => verdictOf(`count L/A 2026-02-10, 30, ${a}`, `count L/B 2026-02-10, 10${b}`,
      'discard L/A 2026-03-11', 'discard L/B 2026-03-11');
    expect(counts('9 leggy, 9 died', '')).toMatchObject({
      rule: 'more-but-weak', sentence: expect.stringContaining('but 9 to 18 of 30 treated seedlings are weak'),
    });
    expect(counts('9 leggy, 9 died', ', 3 leggy, 3 died').verdict).toBe('worth repeating');
  });
});

describe('the side that was watched for longer', () => {
  const early = ['count L/A 2026-02-10, 30', 'count L/B 2026-02-10, 10', 'discard L/A 2026-02-11'] as const;

  test.each([[2, 'worth repeating'], [12, 'cannot tell'], [26, 'cannot tell']])(
    'takes the praise back where it catches up: %i more', (n, verdict) => {
      expect(verdictOf(...early, `count L/B 2026-04-10, ${n}`, 'discard L/B 2026-04-11').verdict).toBe(verdict);
    });

  test('is told with the last looks', () => {
    expect(verdictOf(...early, 'count L/B 2026-04-10, 26', 'discard L/B 2026-04-11')).toMatchObject({
      rule: 'overtaken',
      evidence: { more: false, overtaken: { by: 'untreated', what: 'germinated' } },
      sentence: 'Cannot tell: by day 30, 30 of 40 treated seeds had germinated (75 %) and 10 of 40 untreated (25 %), but that '
        + 'does not show by the last looks any more: 30 of 40 treated seeds had germinated (75 %) and 36 of 40 untreated (90 %).',
    });
  });

  test('was not ahead for good where the other side needed more time', () => {
    const slow = ['count L/A 2026-03-10, 24', 'count L/B 2026-03-10, 1', 'discard L/A 2026-03-11', 'count L/B 2026-06-10, 34', 'discard L/B 2026-06-11'];
    expect(verdictOf(...slow)).toMatchObject({ verdict: 'cannot tell', rule: 'overtaken' });
  });

  test('takes harm back in the same way', () => {
    const counts = (n: number) => verdictOf('count L/A 2026-02-20, 4', 'count L/B 2026-02-20, 20', 'discard L/B 2026-02-21',
      `count L/A 2026-04-10, ${n}`, 'discard L/A 2026-04-11');
    expect(counts(2)).toMatchObject({ verdict: 'harmful', rule: 'fewer' });
    expect(counts(26)).toMatchObject({
      verdict: 'cannot tell', rule: 'overtaken', evidence: { overtaken: { by: 'treated', what: 'germinated' } },
    });
  });

  test('counts over several lots, too', () => {
    const named = (id: string, n: number) => lotNamed(id, ...early, `count L/B 2026-04-10, ${n}`, 'discard L/B 2026-04-11');
    const lots = (n: number) => plantTrial('Iris alba', [...journalOf(named('K', n) + named('M', n)).lots()], Infinity).agents[0]!.across;
    expect(lots(2)).toMatchObject({ lots: 2, rule: 'more-in-lots', verdict: 'worth repeating' });
    expect(lots(26)).toMatchObject({
      lots: 2, rule: 'overtaken-in-lots', verdict: 'cannot tell',
      sentence: expect.stringContaining('at the looks compared, but the last looks do not bear out that one side was ahead'),
    });
  });
});

describe('seed that was taken out between two counts', () => {
  const counts = (out: string, [a, b]: readonly [number, number]) => contest(lot(
    `count L/A 2026-02-10, ${a}`, `count L/B 2026-02-10, ${b}`, out, 'count L/A 2026-03-10, 2', 'count L/B 2026-03-10, 9',
    'discard L/A 2026-03-11', 'discard L/B 2026-03-11'));

  test.each(['give L/A 2026-02-11, 1 seed', 'split L/A 2026-02-11, one 1 seed'])(
    'ends the comparison, which is not final there: %s', out => {
      expect(counts(out, [20, 10]).verdict).toMatchObject({
        verdict: 'cannot tell',
        sentence: expect.stringContaining('The counts compared end where seed that had not germinated was taken out, so the stricter level applies.'),
      });
      expect(counts(out, [30, 10]).verdict.verdict).toBe('worth repeating');
    });

  test('leaves it open whether there is a benefit', () => {
    expect(counts('give L/B 2026-02-11, 1 seed', [10, 10]).verdict).toMatchObject({
      verdict: 'cannot tell', rule: 'ended-early',
      sentence: expect.stringContaining(', but seed that had not germinated was taken out then, and what was counted since cannot be compared.'),
    });
  });
});

describe('the best dose', () => {
  const ladder = (later: string) => trial(`
    lot L Iris alba, 120 seeds
    split L, A 40 seeds, B 40 seeds, C 40 seeds
    soak L/A 2026-01-10 19:00, water, 24 h
    soak L/B 2026-01-10 19:00, GA3 250 ppm, 24 h
    soak L/C 2026-01-10 19:00, GA3 500 ppm, 24 h
    sow L/* 2026-01-11 19:00
    count L/A 2026-02-10, 2
    count L/B 2026-02-10, 22
    count L/C 2026-02-10, 38
    ${later}
    discard L/* 2026-03-11
  `).ladders[0]!.ladder.best;

  test('is none whose seedlings die later', () => {
    expect(ladder('')).toEqual({ value: 500 });
    expect(ladder('count L/C 2026-03-10, 16 died')).toHaveProperty('undefined');
  });
});
