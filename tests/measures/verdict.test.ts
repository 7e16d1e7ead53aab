import { describe, expect, test } from 'vitest';
import { compare } from '../../server/src/measures/comparison.ts';
import type { Course } from '../../server/src/measures/course.ts';
import { newcombe } from '../../server/src/measures/difference.ts';
import { binomialProbabilities } from '../../server/src/measures/discrete.ts';
import { readiness } from '../../server/src/measures/readiness.ts';
import { RULES } from '../../server/src/measures/verdict-rules.ts';
import { limitsText } from '../../server/src/measures/verdict-words.ts';
import { judge } from '../../server/src/measures/verdict.ts';
import { course, known, randomNumbers } from './helpers.ts';

const verdictOf = (treated: Course, untreated: Course) => judge(compare([treated], [untreated]));

// Invented trials, one for each rule.
const TREATED = course(20, '4:3 6:6 8:5 10:3 14:1', [28]);
const UNTREATED = course(20, '10:2 14:3 21:2', [28]);
const SLOW = course(20, '35:4 42:6 49:6', [5, 10, 20, 60]);
const QUICK = course(20, '5:6 10:10', [20, 35, 42, 49, 60]);

describe('the verdict', () => {
  test('is "worth repeating" where more germinated', () => {
    expect(verdictOf(TREATED, UNTREATED)).toMatchObject({
      verdict: 'worth repeating',
      rule: 'more',
      seedsASide: undefined,
      sentence: 'Worth repeating: by day 28, 18 of 20 treated seeds germinated (90 %), 7 of 20 untreated (35 %), '
        + '55 points more (95 % interval 25 to 73).',
    });
  });

  test('says so where Fisher disagrees with the interval', () => {
    // R 4.2.2: 22/25 against 15/25 has p 0.0507, its Newcombe interval begins at 3.5 points.
    expect(verdictOf(course(25, '9:22', [40]), course(25, '9:15', [40]))).toMatchObject({
      rule: 'more',
      sentence: expect.stringContaining("interval 4 to 49); Fisher's exact test by itself leaves room for chance (p 0.051)."),
    });
  });

  test('shows on which side of no difference a limit lies, however near it is', () => {
    expect(limitsText({ low: 0.2541, high: 0.7336 })).toBe('25 to 73');
    expect(limitsText({ low: -0.0026, high: 0.0226 })).toBe('-0.3 to 2');
    expect(limitsText({ low: 0.0014, high: 0.3 })).toBe('0.1 to 30');
    expect(limitsText({ low: -0.3, high: -0.004 })).toBe('-30 to -0.4');
    expect(limitsText({ low: 0, high: 0 })).toBe('0 to 0');
  });

  test('is "harmful" where fewer germinated', () => {
    expect(verdictOf(UNTREATED, TREATED)).toMatchObject({
      verdict: 'harmful', rule: 'fewer', sentence: expect.stringContaining('55 points fewer (95 % interval -73 to -25)'),
    });
  });

  test('is "worth repeating" where as many germinated, but faster', () => {
    expect(verdictOf(QUICK, SLOW)).toMatchObject({
      verdict: 'worth repeating',
      rule: 'faster',
      evidence: { faster: true, more: false, tolerable: true },
      sentence: expect.stringMatching(/^Worth repeating: treated seed germinated faster \(log-rank tests, p below 0\.001\), T50 \d+\.\d days earlier; by day 60/),
    });
  });

  test('is "harmful" where as many germinated, but slower', () => {
    const late = course(20, '40:6 50:6', [5, 10, 60]);
    const early = course(20, '5:6 10:6', [40, 50, 60]);
    expect(verdictOf(late, early)).toMatchObject({
      verdict: 'harmful', rule: 'slower', sentence: expect.stringContaining('days later; by day 60, 12 of 20'),
    });
  });

  test('is "harmful" where weak seedlings are all that the treatment brought', () => {
    const same = (more: object) => course(20, '14:8 35:4', [28, 50], more);
    expect(verdictOf(same({ leggy: 6, died: 1 }), same({}))).toMatchObject({ verdict: 'harmful' });
    const mild = verdictOf(same({ leggy: 5 }), same({}));
    expect(mild).toMatchObject({
      verdict: 'harmful',
      rule: 'weaker',
      evidence: { outcome: 'sound', cost: true },
      sentence: expect.stringContaining(
        'weak seedlings (leggy, abnormal or dead) are 5 of 12 treated ones, 0 of 12 untreated; by day 50, 7 of 20 treated '
        + 'seeds gave sound seedlings (35 %), 12 of 20 untreated (60 %)'),
    });
    // R 4.2.2: fisher.test(matrix(c(4, 8, 0, 12), 2, byrow = TRUE)) has p 0.0932.
    expect(verdictOf(same({ leggy: 4 }), same({}))).toMatchObject({
      rule: 'weaker',
      sentence: expect.stringContaining("0 of 12 untreated; Fisher's exact test by itself leaves room for chance (p 0.093); by day 50"),
    });
  });

  test('judges sound seedlings where the treatment costs seedlings: more germinated, fewer are sound', () => {
    const forced = course(20, '4:18', [28], { leggy: 10, died: 6 });
    const natural = course(20, '14:6 21:5', [28]);
    expect(verdictOf(forced, natural)).toMatchObject({
      verdict: 'harmful', rule: 'fewer', evidence: { outcome: 'sound', contrast: { treated: { x: 2, n: 20 } } },
    });
  });

  test('is still "worth repeating" where more are sound in spite of the cost', () => {
    const forced = course(40, '4:38', [28], { leggy: 8 });
    expect(verdictOf(forced, course(40, '14:8', [28]))).toMatchObject({ verdict: 'worth repeating', rule: 'more' });
  });

  test('does not praise speed that is bought with weak seedlings, nor with seed', () => {
    const forced = { ...QUICK, checks: QUICK.checks.map(check => (check.day === 60 ? { ...check, leggy: 5 } : check)) };
    expect(verdictOf(forced, SLOW)).toMatchObject({
      verdict: 'cannot tell',
      rule: 'bought',
      sentence: expect.stringMatching(/^Cannot tell: treated seed germinated faster .* but at a price; weak seedlings .* 5 of 16 /),
    });
    const quickButFew = course(40, '5:22', [10, 35, 42, 49, 60]);
    const slowButMany = course(40, '35:6 42:12 49:10', [5, 10, 60]);
    expect(verdictOf(quickButFew, slowButMany)).toMatchObject({
      verdict: 'cannot tell', rule: 'bought', evidence: { tolerable: false, cost: false },
    });
  });

  test('praises speed that cost 10 points and no more', () => {
    const quick = (n: number) => course(40, `5:${n}`, [10, 35, 42, 60]);
    const slow = course(40, '35:8 42:8', [5, 10, 60]);
    // 12 / 40 - 16 / 40 is a little below -0.1 in binary numbers.
    expect(verdictOf(quick(12), slow)).toMatchObject({ rule: 'faster', evidence: { tolerable: true } });
    expect(verdictOf(quick(11), slow)).toMatchObject({ rule: 'bought', evidence: { tolerable: false } });
  });

  test('is "germinates well without it" where untreated seed came up readily', () => {
    const plain = course(20, '8:6 12:12', [28]);
    const soaked = course(20, '6:10 8:9', [12, 28]);
    expect(verdictOf(soaked, plain)).toMatchObject({
      verdict: 'germinates well without it',
      rule: 'ready',
      sentence: 'Germinates well without it: by day 28, 19 of 20 treated seeds germinated (95 %), 18 of 20 untreated (90 %), '
        + '5 points more (95 % interval -15 to 26); half of the untreated seed was up by day 12.',
    });
  });

  test('is "no sign of a benefit" only where 30 points would have been seen and are excluded', () => {
    const many = course(60, '14:14 21:10', [28, 40]);
    expect(verdictOf(many, many)).toMatchObject({
      verdict: 'no sign of a benefit',
      rule: 'nothing-seen',
      sentence: expect.stringMatching(/no difference \(95 % interval -17 to 17\); 40 % and 70 % would have been told apart with a probability of 8\d %\.$/),
    });
    const large = course(200, '14:60 21:20', [28, 40]);
    expect(verdictOf(large, large).sentence).toContain('with a probability of more than 99 %.');
    const few = course(20, '14:5 21:3', [28, 40]);
    expect(verdictOf(few, few)).toMatchObject({ verdict: 'cannot tell', rule: 'too-few' });
  });

  test('is "cannot tell", with the seeds that it takes, where the seeds are too few', () => {
    // Exact power of Fisher's test (R 4.2.2): 30 against 60 % with 30 seeds a side is 0.56 only.
    expect(verdictOf(course(30, '14:12', [40]), course(30, '14:9', [40]))).toMatchObject({
      verdict: 'cannot tell',
      rule: 'too-few',
      seedsASide: { value: expect.any(Number) as number },
      sentence: expect.stringMatching(/; to tell 30 % and 60 % apart takes \d+ seeds a side\.$/),
    });
    expect(verdictOf(course(15, '6:3', [40]), course(15, '', [40]))).toMatchObject({ rule: 'too-few', seedsASide: { value: 21 } });
  });

  test('asks for enough seeds to see what was found, where those for 30 points were there', () => {
    const found = verdictOf(course(60, '14:33', [40]), course(60, '14:24', [40]));
    expect(found).toMatchObject({ rule: 'too-few', evidence: { visible: true, excluded: false } });
    expect(found.sentence).toMatch(/; to tell 40 % and 55 % apart takes 18\d seeds a side\.$/);
  });

  test('is "cannot tell" where more differs than the treatment, and names it', () => {
    expect(judge(compare([TREATED], [UNTREATED]), { alsoDiffers: ['temperature', 'sowing date'] })).toMatchObject({
      verdict: 'cannot tell',
      rule: 'more-differs',
      sentence: expect.stringMatching(/, but the sides also differ in temperature, sowing date\.$/),
    });
  });

  test('is "cannot tell" with the reason where a side was not counted', () => {
    expect(judge(compare([TREATED], [{ sown: 20, checks: [] }]))).toEqual({
      verdict: 'cannot tell', rule: 'not-measured', evidence: undefined, seedsASide: undefined,
      sentence: 'Cannot tell: no counts yet.',
    });
  });

  test('is one so far while seed may still germinate, and claims no absence', () => {
    const open = (batch: Course) => ({ ...batch, closed: false });
    expect(verdictOf(open(TREATED), open(UNTREATED))).toMatchObject({
      rule: 'more', sentence: expect.stringMatching(/^Worth repeating so far: by day 28, 18 of 20/),
    });
    const many = course(60, '14:14 21:10', [28, 40]);
    expect(verdictOf(open(many), open(many))).toMatchObject({
      verdict: 'cannot tell',
      rule: 'still-open',
      sentence: 'Cannot tell yet: by day 40, 24 of 60 treated seeds germinated (40 %), 24 of 60 untreated (40 %), '
        + 'no difference (95 % interval -17 to 17); 36 treated and 36 untreated seeds may still germinate.',
    });
    expect(verdictOf(course(4, '35:4'), open(course(4, '35:3', [40]))).sentence).toMatch(/; 1 untreated seed may still germinate\.$/);
  });

  test('on a ladder follows the corrected p-values', () => {
    const comparison = compare([TREATED], [UNTREATED]);
    expect(judge(comparison, { corrected: { fisher: 0.06, speed: 0.2 } })).toMatchObject({ rule: 'too-few' });
    expect(judge(comparison, { corrected: { fisher: 0.06, speed: 0.01 } })).toMatchObject({ rule: 'faster' });
    expect(judge(comparison, { corrected: { fisher: 0.04, speed: undefined } })).toMatchObject({ rule: 'more' });
  });
});

describe('the rules', () => {
  test('have ids of their own, words for the reader, and one that always holds at the end', () => {
    expect(new Set(RULES.map(rule => rule.id)).size).toBe(RULES.length);
    for (const rule of RULES) expect(rule.says).toMatch(/^[A-Z].*\.$/);
    expect(RULES.at(-1)!.id).toBe('too-few');
  });

  test('find an effect where there is none at most 1 time in 20: interval above 0, 3 to 30 seeds a side', () => {
    for (let n = 3; n <= 30; n++) {
      const above = Array.from({ length: n + 1 }, (_, a) => Array.from({ length: n + 1 }, (__, b) => (
        newcombe({ x: a, n }, { x: b, n }).low > 0)));
      for (let percent = 2; percent < 100; percent += 2) {
        const chances = binomialProbabilities(n, percent / 100);
        let wrong = 0;
        for (let a = 0; a <= n; a++) for (let b = 0; b < a; b++) if (above[a]![b]) wrong += chances[a]! * chances[b]!;
        expect(wrong, `${n} seeds at ${percent} %`).toBeLessThanOrEqual(0.05);
      }
    }
  });

  test('call a treatment without effect worth repeating or harmful seldom, in simulated trials', () => {
    const random = randomNumbers(2024);
    const trial = (n: number, share: number) => {
      const days = Array.from({ length: n }, () => (random() < share ? 4 + 30 * random() * random() : Infinity));
      const found = (day: number) => days.filter(own => own <= day).length;
      return { sown: n, checks: [7, 11, 15, 20, 27, 35].map(day => ({ day, germinated: found(day) })) };
    };
    const tally = { 'worth repeating': 0, 'harmful': 0 };
    for (let i = 0; i < 300; i++) {
      const { verdict } = verdictOf(trial(12, 0.5), trial(12, 0.5));
      if (verdict === 'worth repeating' || verdict === 'harmful') tally[verdict]++;
    }
    expect(tally['worth repeating'] / 300).toBeLessThan(0.06);
    expect(tally.harmful / 300).toBeLessThan(0.06);
  });
});

describe('readiness of untreated seed', () => {
  test('is shown by its share, the lower limit of that, and the day half of it was up', () => {
    const found = known(readiness([course(20, '8:2 12:16', [28])]));
    expect(found).toMatchObject({ x: 18, n: 20, halfBy: 12, ready: true });
    expect(found.interval.low).toBeCloseTo(0.6990, 4);
  });

  test.each([
    ['too few came up', course(40, '8:25', [28])],
    ['the seeds are too few to say', course(4, '8:3', [28])],
    ['they took too long', course(20, '40:18', [33, 60])],
    ['nobody looked in time', course(20, '40:20', [60])],
  ])('is not shown where %s', (_, batch) => {
    expect(known(readiness([batch])).ready).toBe(false);
  });

  test('is undefined where half never came up, or nothing was counted', () => {
    expect(readiness([course(20, '8:4', [28])])).toEqual({ undefined: 'fewer than 50 % of the seed sown germinated' });
    expect(readiness([])).toEqual({ undefined: 'there is no untreated batch' });
    expect(readiness([{ sown: 9, checks: [] }])).toEqual({ undefined: 'no counts yet' });
  });
});
