import { describe, expect, test } from 'vitest';
import { trialOf } from '../../server/src/trials/lot-trial.ts';
import { allOf, untreatedShares } from '../../server/src/trials/untreated-shares.ts';
import { contest, groupTexts, lotOf, trial } from './helpers.ts';

/** A is treated, B is not; both are counted in the cold, and each is divided into two dishes when it is sown. */
const chilled = (...later: readonly string[]) => `
  lot PAR-25 Paris quadrifolia, 80 seeds
  split PAR-25, A 30 seeds, B 30 seeds
  soak PAR-25/A 2025-10-10 07:00, GA3 500 ppm, 24 h
  soak PAR-25/B 2025-10-10 07:00, water, 24 h
  chill PAR-25/A 2025-10-11 07:00, 4 C, 12 weeks
  chill PAR-25/B 2025-10-11 07:00, 4 C, 12 weeks
  count PAR-25/A 2025-12-01, 0
  count PAR-25/B 2025-12-01, 0
  split PAR-25/A 2026-01-03, 1 15 seeds, 2 15 seeds
  split PAR-25/B 2026-01-03, 1 15 seeds, 2 15 seeds
  sow PAR-25/A/1 2026-01-03
  sow PAR-25/A/2 2026-01-03
  sow PAR-25/B/1 2026-01-03
  sow PAR-25/B/2 2026-01-03
  ${later.join('\n  ')}
`;

/** Sown on 2026-01-01, the treated half the day after its soak. */
const sown = (...later: readonly string[]) => `
  lot L Iris alba, 60 seeds
  split L, A 30 seeds, B 30 seeds
  soak L/A 2025-12-30 19:00, GA3 500 ppm, 24 h
  soak L/B 2025-12-30 19:00, water, 24 h
  sow L/A 2026-01-01
  sow L/B 2026-01-01
  ${later.join('\n  ')}
`;

/** The checks of each batch: its day and what had germinated by then. */
const checksOf = (source: string) => Object.fromEntries(trial(source).groups.flatMap(({ batches }) => batches)
  .map(({ batch, course: { sown: seeds, checks } }) => (
    [batch.path, [seeds, ...checks.map(({ day, germinated }) => `${day}: ${germinated}`)]])));

describe('a bag that was counted and then divided whole, before anything germinated or rotted', () => {
  test('is no part of the trial: its dishes are not compared before they are counted', () => {
    const { contests, leftOut } = trial(chilled());
    expect(contests).toEqual([]);
    expect(leftOut.map(({ batch: { path }, why }) => `${path}: ${why.undefined}`)).toEqual(
      ['A/1', 'A/2', 'B/1', 'B/2'].map(name => `PAR-25/${name}: no counts yet`));
  });

  test('gives its dishes its looks, and its seeds once', () => {
    const counts = ['count PAR-25/A/1 2026-02-20, 14', 'count PAR-25/A/2 2026-02-20, 13',
      'count PAR-25/B/1 2026-02-20, 1', 'count PAR-25/B/2 2026-02-20, 2'];
    expect(groupTexts(trial(chilled(...counts)))).toEqual(['untreated: B/1 B/2', 'GA3 500: A/1 A/2']);
    expect(checksOf(chilled(...counts))).toMatchObject({ 'PAR-25/A/1': [15, '-33: 0', '48: 14'], 'PAR-25/B/2': [15, '-33: 0', '48: 2'] });
    expect(contest(chilled(...counts)).verdict.sentence).toContain('by day 48, 27 of 30 treated seeds had germinated (90 %) and 3 of 30 untreated (10 %): 80 points more');
  });

  test.each([
    ['treated', 'A', 'B', '25 of 30 treated seeds had germinated (83 %) and 2 of 30 untreated (7 %)'],
    ['untreated', 'B', 'A', '2 of 30 treated seeds had germinated (7 %) and 25 of 30 untreated (83 %)'],
  ])('counts once where it is the %s one, and the other was not divided', (_, divided, whole, text) => {
    const source = sown('count L/A 2026-01-15, 0', 'count L/B 2026-01-15, 0', `split L/${divided} 2026-01-16, 1 15 seeds, 2 15 seeds`,
      `count L/${divided}/1 2026-02-20, 12`, `count L/${divided}/2 2026-02-20, 13`, `count L/${whole} 2026-02-20, 2`);
    expect(contest(source).verdict.sentence).toContain(`by day 50, ${text}`);
    expect(checksOf(source)).toMatchObject({ [`L/${divided}/1`]: [15, '14: 0', '50: 12'] });
  });

  test('leaves seed out that was lost before', () => {
    expect(checksOf(sown('count L/A 2026-01-15, 0, 2 lost', 'split L/A 2026-01-16, 1 14 seeds, 2 14 seeds',
      'count L/A/1 2026-02-20, 12', 'count L/A/2 2026-02-20, 13'))).toEqual({ 'L/A/1': [14, '14: 0', '50: 12'], 'L/A/2': [14, '14: 0', '50: 13'] });
  });

  test('says nothing of seed that was soaked since: it is other seed now', () => {
    const source = `
      lot L Iris alba, 30 seeds
      chill L 2025-10-11, 4 C
      count L 2025-12-01, 0
      split L 2026-01-01, A 15 seeds, B 15 seeds
      soak L/A 2026-01-01 19:00, GA3 500 ppm, 24 h
      sow L/A 2026-01-02 19:00
      sow L/B 2026-01-02 19:00
      count L/A 2026-02-01, 9
      count L/B 2026-02-01, 2
    `;
    expect(checksOf(source)).toEqual({ 'L/A': [15, '30: 9'], 'L/B': [15, '-32: 0', '30: 2'] });
  });

  test('stays in it, as far as it was watched, with seed that was given away', () => {
    expect(checksOf(sown('count L/A 2026-01-15, 0', 'split L/A 2026-01-16, 1 10 seeds', 'give L/A 2026-01-17', 'count L/A/1 2026-02-20, 7')))
      .toEqual({ 'L/A': [20, '14: 0'], 'L/A/1': [10, '14: 0', '50: 7'] });
  });
});

describe('a bag of which seed had only rotted before it was divided whole', () => {
  const counted = ['count PAR-25/A/1 2026-02-20, 13', 'count PAR-25/A/2 2026-02-20, 12', 'count PAR-25/B/1 2026-02-20, 2', 'count PAR-25/B/2 2026-02-20, 1'];
  const rotted = (a: number, b: number) => chilled(...counted)
    .replace('A 2025-12-01, 0', `A 2025-12-01, 0, ${a} rotted`).replace('B 2025-12-01, 0', `B 2025-12-01, 0, ${b} rotted`)
    .replace('split PAR-25/A 2026-01-03, 1 15 seeds, 2 15', `split PAR-25/A 2026-01-03, 1 15 seeds, 2 ${15 - a}`)
    .replace('split PAR-25/B 2026-01-03, 1 15 seeds, 2 15', `split PAR-25/B 2026-01-03, 1 15 seeds, 2 ${15 - b}`);

  test.each([[1, 0], [0, 1], [1, 2], [3, 0]])('is compared by its dishes, of all its seed, with %i rotted and %i', (a, b) => {
    expect(contest(rotted(a, b))).toMatchObject({ alsoDiffers: [], verdict: { verdict: 'worth repeating' } });
    expect(contest(rotted(a, b)).verdict.sentence).toContain('25 of 30 treated seeds had germinated (83 %) and 3 of 30 untreated (10 %): 73 points more');
  });

  test('gives each dish its share of them, and a look on the day of the division', () => {
    expect(checksOf(rotted(3, 0))).toMatchObject({ 'PAR-25/A/1': [17, '0: 0', '48: 13'], 'PAR-25/A/2': [13, '0: 0', '48: 12'] });
  });

  test('gives none to parts that were treated apart since', () => {
    expect(checksOf(`
      lot L Iris alba, 30 seeds
      chill L 2025-10-11, 4 C
      count L 2025-12-01, 0, 2 rotted
      split L 2026-01-01, A 14 seeds, B 14 seeds
      soak L/A 2026-01-01 19:00, GA3 500 ppm, 24 h
      sow L/A 2026-01-02 19:00
      sow L/B 2026-01-02 19:00
      count L/A 2026-02-01, 9
      count L/B 2026-02-01, 2
    `)).toMatchObject({ 'L/A': [14, '-1: 0', '30: 9'], 'L/B': [14, '-1: 0', '30: 2'] });
  });

  test('is no longer alike once seed has germinated in both: each is a rest', () => {
    const source = chilled(...counted).replaceAll('2025-12-01, 0', '2025-12-01, 1').replaceAll('2 15 seeds', '2 14 seeds');
    expect(trial(source).contests.flatMap(({ alsoDiffers }) => alsoDiffers)).toContain('the seed (both sides are rests of seed that had started to germinate or rot)');
  });
});

describe('a bag of which a part was split off after a count that found nothing', () => {
  test('is counted by what stayed', () => {
    const source = sown('count L/A 2026-01-15, 0', 'split L/A 2026-01-16, 1 10 seeds', 'count L/A/1 2026-02-20, 7');
    expect(checksOf(source)).toEqual({ 'L/A': [20, '14: 0'], 'L/A/1': [10, '14: 0', '50: 7'] });
  });

  test('is counted by what stayed of an estimate, too', () => {
    const source = sown('count L/A 2026-01-15, 0', 'split L/A 2026-01-16, 1 about 10 seeds', 'count L/A/1 2026-02-20, 7', 'count L/B 2026-02-20, 1');
    expect(trial(source).estimated.map(({ verdict: { sentence } }) => sentence)).toEqual([expect.stringContaining('0 of 28 to 32 treated seeds')]);
  });
});

describe('a bag of which seed had germinated before the rest was divided', () => {
  const source = sown('count L/A 2026-01-15, 1', 'count L/B 2026-01-15, 0', 'split L/A 2026-01-16, 1 15 seeds, 2 14 seeds',
    'count L/A/1 2026-02-20, 12', 'count L/A/2 2026-02-20, 13', 'count L/B 2026-02-20, 2',
    'discard L/A/1 2026-02-21', 'discard L/A/2 2026-02-21', 'discard L/B 2026-02-21');

  test('has no seed that may still germinate, and its comparison ends there', () => {
    const whole = trial(source).contests.find(({ treated: { batches } }) => batches[0]!.batch.path === 'L/A')!;
    expect(whole).toMatchObject({ comparison: { open: { treated: 0, untreated: 0 } } });
    expect(whole.verdict.sentence).toBe('Cannot tell: by day 14, 1 of 30 treated seeds had germinated (3 %) and 0 of 30 untreated (0 %): '
      + '3 points more (95 % interval -8 to 17), but seed that had not germinated was taken out then, and what was counted since cannot be compared.');
  });

  test('has none open among the untreated seed of its plant', () => {
    const untreated = lotOf(source.replace('soak L/A 2025-12-30 19:00, GA3 500 ppm, 24 h', 'soak L/A 2025-12-30 19:00, water, 24 h'));
    const shares = untreatedShares([trialOf(untreated, Infinity)]);
    expect(shares.map(({ open }) => open)).toEqual([0, 0]);
    // 1 of 30 in the bag, then 25 of the 29 that were divided; B is counted with the bag.
    expect(shares.map(({ pooled: { x, n } }) => [x, n])).toEqual([[1, 60], [25, 29]]);
    expect(allOf(shares)).toEqual({ x: 26, n: 60 });
  });
});
