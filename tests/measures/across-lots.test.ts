import { describe, expect, test } from 'vitest';
import { acrossLots } from '../../server/src/measures/across-lots.ts';
import { ACROSS_RULES } from '../../server/src/measures/across-rules.ts';
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
      sentence: 'Worth repeating: in 2 lots more of the treated seed germinated: odds ratio 13 (95 % interval 2.4 to 73).',
    });
  });

  test('a lot that germinates little and one that germinates well do not make an effect by themselves', () => {
    // Pooled: 46 of 110 treated, 76 of 110 untreated; within each lot the shares are the same.
    const found = acrossLots([pair(10, 50, 2, 10), pair(54, 60, 90, 100)]);
    expect(found).toMatchObject({ verdict: 'cannot tell', rule: 'not-shown' });
    expect(known(found.mantelHaenszel).excess).toBeCloseTo(0, 10);
  });

  test('lots that answer in opposite ways are not summed up', () => {
    expect(acrossLots([pair(18, 20, 4, 20), pair(3, 20, 17, 20)])).toMatchObject({
      verdict: 'cannot tell',
      rule: 'lots-differ',
      sentence: 'Cannot tell: in 2 lots the seed did not answer alike (Breslow-Day, p below 0.001): more germinated in some, '
        + 'fewer in others.',
    });
  });

  test('speed counts where as many germinated', () => {
    const [soon, late] = [course(20, '5:14', [35, 50]), course(20, '35:14', [5, 50])];
    const quick = (lot: string) => ({ lot, treated: [[soon]], untreated: [late] });
    expect(acrossLots([quick('A'), quick('B')])).toMatchObject({
      rule: 'faster-in-lots',
      sentence: 'Worth repeating: in 2 lots treated seed germinated faster (log-rank tests stratified by lot, p below 0.001).',
    });
    expect(acrossLots([{ lot: 'A', treated: [[late]], untreated: [soon] }])).toMatchObject({ rule: 'slower-in-lots', verdict: 'harmful' });
  });

  test('seed that comes up readily in every lot needs no treatment', () => {
    const found = acrossLots([pair(18, 20, 17, 20), pair(27, 30, 28, 30)]);
    expect(found).toMatchObject({
      verdict: 'germinates well without it',
      sentence: 'Germinates well without it: in 2 lots untreated seed germinated well and soon, and no more germinated after '
        + 'the treatment.',
    });
    expect(acrossLots([pair(18, 20, 17, 20), pair(27, 30, 12, 30)]).rule).not.toBe('ready-in-lots');
  });

  test('sound seedlings are judged where the treatment costs seedlings', () => {
    const forced = (germinated: number, leggy: number, plain: number) => (
      { ...pair(0, 20, plain, 20), treated: [[course(20, `10:${germinated}`, [30], { leggy })]] });
    expect(acrossLots([forced(18, 16, 8), forced(16, 13, 9)])).toMatchObject({
      rule: 'fewer-in-lots', outcome: 'sound', sentence: expect.stringContaining('less of the treated seed gave sound seedlings'),
    });
    const early = {
      ...forced(18, 12, 8), treated: [[course(20, '5:18', [10, 30], { leggy: 12 })]], untreated: [course(20, '10:8', [5, 30])],
    };
    expect(acrossLots([early])).toMatchObject({
      rule: 'bought-in-lots', verdict: 'cannot tell', sentence: expect.stringMatching(/treated seed .* \(log-rank .*, but weak seedlings/),
    });
    expect(acrossLots([forced(10, 4, 9), forced(11, 4, 8)])).toMatchObject({
      rule: 'weaker-in-lots', verdict: 'harmful', sentence: expect.stringContaining('weak seedlings (leggy, abnormal or dead) are more'),
    });
  });

  test('weak seedlings that are rarer after the treatment are no cost', () => {
    const sturdy = (lot: string) => ({
      lot, treated: [[course(40, '10:30', [30])]], untreated: [course(40, '10:30', [30], { leggy: 15 })],
    });
    expect(acrossLots([sturdy('A'), sturdy('B')])).toMatchObject({ outcome: 'germinated', rule: 'ready-in-lots' });
  });

  test('more seed that comes later is still more', () => {
    const late = (lot: string) => ({
      lot, treated: [[course(40, '30:20 40:18', [10, 20, 60])]], untreated: [course(40, '10:7 20:7', [30, 40, 60])],
    });
    const found = acrossLots([late('A'), late('B')]);
    expect(known(found.speed.combined)).toMatchObject({ faster: false, ofGerminated: true });
    expect(found.rule).toBe('more-in-lots');
  });

  test('fewer in all lots is harmful', () => {
    expect(acrossLots([pair(2, 10, 8, 10), pair(2, 6, 5, 6)])).toMatchObject({
      verdict: 'harmful', rule: 'fewer-in-lots', sentence: expect.stringContaining('less of the treated seed germinated: odds ratio 0.075'),
    });
  });

  test('several strata of one lot are one lot, and lots that are open are named', () => {
    const [cool, warm] = [{ ...pair(8, 10, 2, 10), lot: 'A' }, { ...pair(5, 6, 2, 6), lot: 'A' }];
    const open = { ...pair(4, 6, 2, 6), untreated: [{ ...course(6, '10:2', [28]), closed: false }] };
    expect(acrossLots([cool, warm])).toMatchObject({ lots: 1, open: 0, sentence: expect.stringContaining(': in 1 lot more') });
    expect(acrossLots([cool, warm, open])).toMatchObject({
      lots: 2, open: 1,
      sentence: expect.stringMatching(/^Worth repeating so far: in 2 lots \(1 of them still open\) more of the treated seed/),
    });
  });

  test('doses that work unlike each other are no overdispersion, replicates that do are', () => {
    const [weak, strong] = [course(20, '10:6', [30]), course(20, '10:18', [30])];
    const untreated = [course(20, '10:2', [30])];
    const [doses] = acrossLots([{ lot: 'A', treated: [[weak], [strong]], untreated }]).comparisons;
    const [replicates] = acrossLots([{ lot: 'A', treated: [[weak, strong]], untreated }]).comparisons;
    expect(known(doses!).overdispersion).toBe(1);
    // R 4.2.2: prop.test(c(6, 18), c(20, 20), correct = FALSE), X-squared 15 with 1 degree of freedom.
    expectClose(known(replicates!).overdispersion, 15);
    expect(known(doses!).germinated.treated).toEqual({ x: 24, n: 40 });
  });

  test('lots that were not counted are left out', () => {
    const counted = acrossLots([pair(8, 10, 2, 10)]);
    const more = acrossLots([{ lot: 'A', treated: [[{ sown: 9, checks: [] }]], untreated: [course(9, '8:2')] }, pair(8, 10, 2, 10)]);
    expect(more.comparisons[0]).toEqual({ undefined: 'no counts yet' });
    expect(more.mantelHaenszel).toEqual(counted.mantelHaenszel);
    expect(more.speed).toEqual(counted.speed);
    expect(acrossLots([])).toMatchObject({
      rule: 'not-shown', sentence: 'Cannot tell: no lot has treated and untreated seed that was counted.',
    });
  });

  test('never claims the absence of an effect', () => {
    expect(ACROSS_RULES.map(rule => rule.verdict)).not.toContain('no sign of a benefit');
    for (const rule of ACROSS_RULES) expect(rule.says).toMatch(/^[A-Z].*\.$/);
  });
});
