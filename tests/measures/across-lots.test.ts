import { describe, expect, test } from 'vitest';
import { acrossLots } from '../../server/src/measures/across-lots.ts';
import { ACROSS_RULES } from '../../server/src/measures/across-rules.ts';
import { jointP } from '../../server/src/measures/joint.ts';
import { course, expectClose, known } from './helpers.ts';

let lots = 0;
const pair = (a: number, n1: number, c: number, n2: number) => ({
  lot: String(++lots), treated: [[course(n1, `10:${a}`, [30])]], untreated: [course(n2, `10:${c}`, [30])],
});

describe('across lots', () => {
  test('every lot is compared with itself: odds ratio, homogeneity and verdict', () => {
    const found = acrossLots([pair(8, 10, 2, 10), pair(5, 6, 2, 6)]);
    // statsmodels 0.13.5, StratifiedTable.
    expectClose(known(found.homogeneity).chiSquare, 0.06899950555074288);
    expect(found).toMatchObject({
      verdict: 'worth repeating',
      rule: 'more-in-lots',
      sentence: 'Worth repeating: in 2 lots 56 points more of the treated seeds germinated (95 % interval 22 to 73).',
    });
  });

  test('a lot that germinates little and one that germinates well do not make an effect by themselves', () => {
    // Pooled: 46 of 110 treated, 76 of 110 untreated; within each lot the shares are the same.
    const found = acrossLots([pair(10, 50, 2, 10), pair(54, 60, 90, 100)]);
    expect(found).toMatchObject({ verdict: 'cannot tell', rule: 'not-shown', sentence: expect.not.stringContaining('chance') });
    expect(acrossLots([pair(11, 20, 8, 20), pair(11, 20, 9, 20)])).toMatchObject({
      rule: 'not-shown', sentence: expect.stringMatching(/: in 2 lots 13 points more of the treated seeds germinated \(.*\), which may be chance\.$/),
    });
    expect(known(found.mantelHaenszel).excess).toBeCloseTo(0, 10);
  });

  test('lots that answer in opposite ways are not summed up', () => {
    expect(acrossLots([pair(18, 20, 4, 20), pair(3, 20, 17, 20)])).toMatchObject({
      verdict: 'cannot tell',
      rule: 'lots-differ',
      sentence: 'Cannot tell: the 2 lots did not respond alike: more of the treated seeds germinated in some, '
        + 'fewer in others.',
    });
  });

  test('speed counts where as many germinated', () => {
    const [soon, late] = [course(20, '5:14', [35, 50]), course(20, '35:14', [5, 50])];
    const quick = (lot: string) => ({ lot, treated: [[soon]], untreated: [late] });
    expect(acrossLots([quick('A'), quick('B')])).toMatchObject({
      rule: 'ahead-in-lots',
      sentence: 'Worth repeating: in 2 lots treated seed was ahead over the days; as many treated seeds germinated as untreated '
        + 'ones (95 % interval -19 to 19 points).',
    });
    const slow = (lot: string) => ({ lot, treated: [[late]], untreated: [soon] });
    expect(acrossLots([slow('A'), slow('B')])).toMatchObject({ rule: 'behind-in-lots', verdict: 'harmful' });
  });

  test('seed that comes up readily in every lot needs no treatment', () => {
    const found = acrossLots([pair(18, 20, 17, 20), pair(27, 30, 28, 30)]);
    expect(found).toMatchObject({
      verdict: 'germinates well without it',
      sentence: 'Germinates well without it: in 2 lots untreated seed germinated well and soon; as many treated seeds '
        + 'germinated as untreated ones (95 % interval -13 to 13 points).',
    });
    expect(acrossLots([pair(18, 20, 17, 20), pair(27, 30, 12, 30)]).rule).not.toBe('ready-in-lots');
  });

  test('sound seedlings are judged where the treatment costs seedlings', () => {
    const forced = (germinated: number, leggy: number, plain: number) => (
      { ...pair(0, 20, plain, 20), treated: [[course(20, `10:${germinated}`, [30], { leggy })]] });
    expect(acrossLots([forced(18, 18, 8), forced(16, 16, 9)])).toMatchObject({
      rule: 'fewer-sound-in-lots', verdict: 'harmful', sentence: expect.stringMatching(
        /: in 2 lots fewer of the treated seeds gave sound seedlings\. 34 of 34 treated seedlings are weak \(.*\) and 0 of 17 untreated\.$/),
    });
    expect(acrossLots([forced(18, 10, 8), forced(18, 10, 8)])).toMatchObject({
      rule: 'at-a-price-in-lots', verdict: 'cannot tell', sentence: expect.stringContaining(
        'treated seed was ahead, but 20 of 36 treated seedlings are weak (leggy, abnormal or dead) and 0 of 16 untreated; '),
    });
    // More weak ones, but not fewer sound ones: no harm is shown.
    expect(acrossLots([forced(10, 4, 9), forced(11, 4, 8)]).verdict).toBe('cannot tell');
  });

  test('weak seedlings of the untreated side alone do not speak for leaving seed untreated', () => {
    const sturdy = (lot: string) => ({
      lot, treated: [[course(40, '10:30', [30])]], untreated: [course(40, '10:30', [30], { leggy: 15 })],
    });
    expect(acrossLots([sturdy('A'), sturdy('B')])).toMatchObject({ verdict: 'cannot tell', rule: 'fewer-but-sound-in-lots' });
  });

  test('more seed that comes later is still more', () => {
    const late = (lot: string) => ({
      lot, treated: [[course(40, '30:20 40:18', [10, 20, 60])]], untreated: [course(40, '10:7 20:7', [30, 40, 60])],
    });
    const found = acrossLots([late('A'), late('B')]);
    expect(found.rule).toBe('more-in-lots');
  });

  test('fewer in all lots is harmful', () => {
    expect(acrossLots([pair(2, 10, 8, 10), pair(2, 6, 5, 6)])).toMatchObject({
      verdict: 'harmful', rule: 'fewer-in-lots', sentence: expect.stringContaining('56 points fewer of the treated seeds germinated'),
    });
  });

  test('several strata of one lot are one lot, and lots that are open are named', () => {
    const [cool, warm] = [{ ...pair(8, 10, 2, 10), lot: 'A' }, { ...pair(5, 6, 2, 6), lot: 'A' }];
    const open = { ...pair(4, 6, 2, 6), untreated: [{ ...course(6, '10:2', [28]), closed: false }] };
    expect(acrossLots([cool, warm])).toMatchObject({ lots: 1, open: 0, sentence: expect.stringContaining(': in 1 lot 56 points more') });
    expect(acrossLots([cool, warm, open])).toMatchObject({
      lots: 2, open: 1,
      sentence: expect.stringMatching(/^Worth repeating so far: in 2 lots \(1 of them still open\) \d+ points more of the treated seeds/),
    });
  });

  test('doses that work unlike each other are no overdispersion, replicates that do are', () => {
    const [weak, strong] = [course(20, '10:6', [30]), course(20, '10:18', [30])];
    const untreated = [course(20, '10:2', [30])];
    const [doses] = acrossLots([{ lot: 'A', treated: [[weak], [strong]], untreated }]).comparisons;
    const [replicates] = acrossLots([{ lot: 'A', treated: [[weak, strong]], untreated }]).comparisons;
    expect(known(doses!).better.germinated.spread).toMatchObject({ factor: 1, df: 0 });
    // R 4.2.2: prop.test(c(6, 18), c(20, 20), correct = FALSE), X-squared 15 with 1 degree of freedom.
    expectClose(known(replicates!).better.germinated.spread.factor, 15);
    expect(known(doses!).germinated.treated).toEqual({ x: 24, n: 40 });
  });

  test('tests make room for each other as in the lot in which they have least in common', () => {
    const lot = (name: string, treated: string, untreated: string) => (
      { lot: name, treated: [[course(20, treated, [10, 30])]], untreated: [course(20, untreated, [10, 30])] });
    const found = acrossLots([lot('A', '10:9 20:3', '10:2 20:4 30:3'), lot('B', '10:2 20:14', '10:1 20:3 30:9')]);
    const { germinated, sooner } = known(found.better);
    const own = found.comparisons.map(comparison => known(comparison).better.correlations.ahead!);
    expect(Math.abs(own[0]! - own[1]!)).toBeGreaterThan(0.02);
    expect(sooner).not.toHaveProperty('undefined');
    // The seed that germinated has a tenth of the error for itself.
    expect(germinated.joint).toBeCloseTo(jointP(germinated.p, [Math.min(...own)]) / 0.9, 12);
  });

  test('dishes of several lots lie apart as those of each do, by their degrees of freedom', () => {
    const dishes = (...germinated: number[]) => germinated.map(x => course(20, `10:${x}`, [30]));
    const found = acrossLots([
      { lot: 'A', treated: [dishes(6, 18)], untreated: dishes(2) }, { lot: 'B', treated: [dishes(8, 9, 8)], untreated: dishes(2, 2) },
    ]);
    // A: chi-square 15 with 1 degree of freedom, as above; B: below 1 for each of its 3, which counts as 1.
    expect(known(found.better).germinated.spread).toMatchObject({ df: 4, size: 20 });
    expectClose(known(found.better).germinated.spread.factor, (15 + 3) / 4);
  });

  test('nothing is claimed of all doses together that no single dose shows', () => {
    const lot = (name: string, treated: number, untreated: number) => (
      { lot: name, treated: [[course(14, `10:${treated}`, [30])]], untreated: [course(14, `10:${untreated}`, [30])] });
    const [low, high] = [lot('A', 9, 5), lot('B', 9, 5)];
    const together = [low, high, lot('C', 9, 5), lot('D', 9, 5)];
    expect(acrossLots(together).verdict).toBe('worth repeating');
    const found = acrossLots(together, together.map(one => [one]));
    expect(found).toMatchObject({ rule: 'at-a-price-in-lots', sentence: expect.stringContaining('but no single dose shows it') });
  });

  test('lots that were not counted are left out', () => {
    const counted = acrossLots([pair(8, 10, 2, 10)]);
    const more = acrossLots([{ lot: 'A', treated: [[{ sown: 9, checks: [] }]], untreated: [course(9, '8:2')] }, pair(8, 10, 2, 10)]);
    expect(more.comparisons[0]).toEqual({ undefined: 'no counts yet' });
    expect(more.mantelHaenszel).toEqual(counted.mantelHaenszel);
    expect(more.better).toEqual(counted.better);
    expect(acrossLots([])).toMatchObject({
      rule: 'not-shown', sentence: 'Cannot tell: no lot has treated and untreated seed that was counted.',
    });
  });

  test('never claims the absence of an effect', () => {
    expect(ACROSS_RULES.map(rule => rule.verdict)).not.toContain('no sign of a benefit');
    for (const rule of ACROSS_RULES) expect(rule.says).toMatch(/^[A-Z].*\.$/);
  });
});
