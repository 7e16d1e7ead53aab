import { describe, expect, test } from 'vitest';
import { compare } from '../../server/src/measures/comparison.ts';
import type { Course } from '../../server/src/measures/course.ts';
import { binomialProbabilities } from '../../server/src/measures/discrete.ts';
import { readiness } from '../../server/src/measures/readiness.ts';
import { RULES } from '../../server/src/measures/verdict-rules.ts';
import { limitsText } from '../../server/src/measures/verdict-words.ts';
import { judge } from '../../server/src/measures/verdict.ts';
import { course, known } from './helpers.ts';

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
      sentence: 'Worth repeating: by day 28, 18 of 20 treated seeds had germinated (90 %) and 7 of 20 untreated (35 %): '
        + '55 points more (95 % interval 25 to 73). With one dish a side, a difference between the two dishes themselves would '
        + 'look the same.',
    });
  });

  test('names the days of the looks, never a day on which nobody looked', () => {
    const sundays = course(50, '7:2 21:30 35:10', [49]);
    const wednesdays = course(50, '14:2 28:4 42:4', [56]);
    expect(verdictOf(sundays, wednesdays).sentence).toMatch(
      /^Worth repeating: 42 of 50 treated seeds had germinated by day 49 \(84 %\) and 10 of 50 untreated by day 56 \(20 %\): 64 points more/);
    expect(verdictOf(wednesdays, sundays).sentence).toMatch(
      /^Harmful: 10 of 50 treated seeds had germinated by day 56 \(20 %\) and 42 of 50 untreated by day 49 \(84 %\): 64 points fewer/);
  });

  test('tells the counts of the claim that is shown, though the looks of the other lie closer together', () => {
    // By day 40 beside the untreated on day 60; untreated on day 38 beside the treated on day 40 are closer.
    expect(verdictOf(course(50, '7:30 20:5 40:5'), course(50, '14:2 29:3 38:8 60:1')).sentence).toMatch(
      /^Worth repeating: 40 of 50 treated seeds had germinated by day 40 \(80 %\) and 14 of 50 untreated by day 60 \(28 %\)/);
  });

  test('does not call a side ahead that was looked at later', () => {
    const early = course(50, '7:5 21:20 35:10', [49]);
    const late = course(50, '14:15 28:15 42:5', [56]);
    for (const sides of [[early, late], [late, early]] as const) {
      expect(['worth repeating', 'harmful']).not.toContain(verdictOf(...sides).verdict);
    }
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

  const quick = (n: number, more: object = {}) => course(100, `5:${n}`, [10, 35, 42, 49, 60], more);
  const slow = course(100, '35:16 42:20 49:10', [5, 10, 60]);

  test('is "worth repeating" where as many germinated, but sooner, and a great loss is excluded', () => {
    expect(verdictOf(quick(45), slow)).toMatchObject({
      verdict: 'worth repeating',
      rule: 'ahead',
      evidence: { ahead: true, more: false, noGreatLoss: true },
      sentence: expect.stringMatching(
        /^Worth repeating: the treated seed was ahead: by day 5, 45 of 100 treated seeds had germinated and 0 of 100 untreated; by day 60, /),
    });
  });

  test('does not praise speed where a great loss is not excluded, nor where weak seedlings are more frequent', () => {
    expect(verdictOf(QUICK, SLOW)).toMatchObject({
      verdict: 'cannot tell',
      rule: 'ahead-at-a-price',
      sentence: expect.stringContaining('; but a loss of up to 25 points is not excluded; by day 60, 16 of 20'),
    });
    expect(verdictOf(quick(46, { leggy: 9 }), slow)).toMatchObject({
      verdict: 'cannot tell',
      rule: 'ahead-at-a-price',
      sentence: expect.stringContaining('; but 9 of 46 treated seedlings are weak (leggy, abnormal or dead) and 0 of 46 untreated;'),
    });
  });

  test('is "harmful" where as many germinated, but later, and a great gain is excluded', () => {
    expect(verdictOf(slow, quick(46))).toMatchObject({ verdict: 'harmful', rule: 'behind' });
    expect(verdictOf(SLOW, QUICK)).toMatchObject({
      verdict: 'cannot tell',
      rule: 'behind-perhaps-more',
      sentence: expect.stringContaining('so a gain of up to 25 points is not excluded.'),
    });
  });

  const same = (more: object) => course(20, '14:8 35:4', [28, 50], more);

  test('is "harmful" for weak seedlings only where fewer sound ones are shown', () => {
    expect(verdictOf(same({ leggy: 12 }), same({}))).toMatchObject({
      verdict: 'harmful',
      rule: 'fewer-sound',
      sentence: expect.stringContaining('by day 50, 0 of 20 treated seeds had given sound seedlings (0 %) and 12 of 20 untreated (60 %)'),
    });
    expect(verdictOf(same({ leggy: 5 }), same({})).verdict).not.toBe('harmful');
  });

  test('names weak seedlings beside fewer sound ones only where there are more of them, on whichever side', () => {
    const weak = course(30, '14:20', [40], { leggy: 6 });
    expect(verdictOf(course(30, '14:2', [40]), weak)).toMatchObject({
      rule: 'fewer-sound', sentence: expect.stringMatching(
        /\(95 % interval [^)]*\), though 0 of 2 treated seedlings are weak \(leggy, abnormal or dead\) and 6 of 20 untreated\. With/),
    });
    expect(verdictOf(same({ leggy: 12 }), same({})).sentence).toContain('; 12 of 12 treated seedlings are weak');
  });

  test('counts limits where the words for weak seedlings may be about the same one', () => {
    // 10 leggy and 6 dead of 18: 2 to 8 are sound, beside 11 untreated; only the former would be shown to be fewer.
    const forced = course(20, '4:18', [28], { leggy: 10, died: 6 });
    expect(verdictOf(forced, course(20, '14:6 21:5', [28]))).toMatchObject({
      verdict: 'cannot tell',
      rule: 'more-but-weak',
      sentence: expect.stringContaining('but 10 to 16 of 18 treated seedlings are weak'),
    });
  });

  test('is "worth repeating", at a price, where more are sound in spite of the weak ones', () => {
    const forced = course(40, '4:38', [28], { leggy: 18 });
    expect(verdictOf(forced, course(40, '14:8', [28]))).toMatchObject({
      verdict: 'worth repeating', rule: 'more', sentence: expect.stringContaining('. It comes at a price: 18 of 38 treated seedlings are weak'),
    });
  });

  test('is "germinates well without it" where untreated seed came up readily', () => {
    const plain = course(20, '8:6 12:12', [28]);
    const soaked = course(20, '6:10 8:9', [12, 28]);
    expect(verdictOf(soaked, plain)).toMatchObject({
      verdict: 'germinates well without it',
      rule: 'ready',
      sentence: 'Germinates well without it: by day 28, 19 of 20 treated seeds had germinated (95 %) and 18 of 20 untreated '
        + '(90 %): 5 points more (95 % interval -15 to 26); half of the untreated seed had germinated by day 12.',
    });
  });

  test('is "no sign of a benefit" where the interval excludes 30 points, and says how large a benefit it excludes', () => {
    const many = course(60, '14:14 21:10', [28, 40]);
    expect(verdictOf(many, many)).toMatchObject({
      verdict: 'no sign of a benefit',
      rule: 'nothing-seen',
      sentence: expect.stringMatching(/no difference \(95 % interval -17 to 17\)\. A benefit of 18 points or more is excluded\.$/),
    });
    const few = course(12, '14:3 21:3', [28, 40]);
    expect(verdictOf(few, few)).toMatchObject({ verdict: 'cannot tell', rule: 'too-few' });
  });

  test('says why a difference decides nothing: chance, a limit near to none, or a benefit that is not excluded', () => {
    const side = (up: number, n = 16) => course(n, `14:${up}`, [28]);
    expect(verdictOf(side(11), side(7)).sentence).toMatch(/^Cannot tell: .*: 25 points more \(95 % interval -9 to 52\), which may be chance\.$/);
    expect(verdictOf(side(7), side(7)).sentence)
      .toMatch(/: no difference \(95 % interval -31 to 31\), but a benefit of up to 31 points is not excluded\.$/);
    const room = { better: 4, worse: 4, treatments: 4 };
    const { rule, sentence } = judge(compare([side(14, 30)], [side(5, 30)]), { room });
    expect(rule).toBe('too-few');
    expect(sentence).toMatch(/30 points more \(95 % interval 6 to 50\), which is too near to no difference to rule out chance\./);
    expect(verdictOf(course(3, '4:3'), course(3, '', [4])).sentence).not.toContain('chance');
  });

  test('is "cannot tell" where one side was thrown away before most of the other germinated', () => {
    const knockedOver = { ...course(40, '14:3'), closed: true };
    const watched = { ...course(40, '14:2 45:28'), cut: { fresh: 10, hard: 0, dead: 0, empty: 0 } };
    expect(verdictOf(knockedOver, watched)).toMatchObject({
      verdict: 'cannot tell', rule: 'ended-early',
      sentence: 'Cannot tell: by day 14, 3 of 40 treated seeds had germinated (8 %) and 2 of 40 untreated (5 %): 3 points more (95 % '
        + 'interval -10 to 15), but 28 more untreated seeds germinated after that, and the treated seed was not watched for as long.',
    });
    expect(verdictOf(watched, knockedOver)).toMatchObject({
      rule: 'ended-early', sentence: expect.stringContaining('but 28 more treated seeds germinated after that, and the untreated seed'),
    });
    // With two of forty more a benefit of 30 points stays excluded.
    const later = { ...course(40, '28:3'), closed: true };
    expect(verdictOf(later, course(40, '28:2 45:2'))).toMatchObject({ verdict: 'no sign of a benefit', rule: 'nothing-seen' });
  });

  test('is "cannot tell" of so few seeds, whatever they did', () => {
    for (const n of [1, 2, 3]) {
      expect(verdictOf(course(n, `4:${n}`), course(n, '', [4]))).toMatchObject({
        verdict: 'cannot tell', rule: 'too-few', sentence: expect.stringContaining('Fewer than 4 seeds a side are too few to tell.'),
      });
    }
  });

  test('of too few seeds asks for no look on one day: it would not make them more', () => {
    const few = { ...course(4, '', [30, 179]), cut: { fresh: 2, hard: 0, dead: 0, empty: 2 } };
    expect(verdictOf(course(4, '30:4'), few).sentence).toMatch(/Fewer than 4 full seeds a side are too few to tell\.$/);
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
      verdict: 'cannot tell', rule: 'not-measured', evidence: undefined, sentence: 'Cannot tell: no counts yet.',
    });
  });

  test('needs more evidence while seed may still germinate, and says how many wait', () => {
    const open = (batch: Course) => ({ ...batch, closed: false });
    expect(verdictOf(open(TREATED), open(UNTREATED))).toMatchObject({
      rule: 'more',
      sentence: expect.stringMatching(
        /^Worth repeating so far: by day 28, 18 of 20 .* 2 of 20 treated and 13 of 20 untreated seeds may still germinate\. /),
    });
    // One-sided p 0.016: enough at the end, not before.
    const [more, fewer] = [course(25, '9:22', [40]), course(25, '9:15', [40])];
    expect(verdictOf(more, fewer).verdict).toBe('worth repeating');
    expect(verdictOf(open(more), open(fewer))).toMatchObject({ verdict: 'cannot tell', rule: 'still-open' });
    const many = course(60, '14:14 21:10', [28, 40]);
    expect(verdictOf(open(many), open(many)).sentence).toBe(
      'Cannot tell yet: by day 40, 24 of 60 treated seeds had germinated (40 %) and 24 of 60 untreated (40 %): no difference '
      + '(95 % interval -17 to 17). 36 of 60 treated and 36 of 60 untreated seeds may still germinate.');
  });

  test('allows for other treatments beside the same untreated seed', () => {
    const comparison = compare([course(25, '9:22', [40])], [course(25, '9:15', [40])]);
    expect(judge(comparison)).toMatchObject({ rule: 'more' });
    expect(judge(comparison, { room: { better: 2, worse: 2, treatments: 2 } })).toMatchObject({ rule: 'too-few' });
  });
});

describe('the rules', () => {
  test('have ids of their own, words for the reader, and one that always holds at the end', () => {
    expect(new Set(RULES.map(rule => rule.id)).size).toBe(RULES.length);
    for (const rule of RULES) expect(rule.says).toMatch(/^[A-Z].*\.$/);
    expect(RULES.at(-1)!.id).toBe('too-few');
  });

  test('find more where there is nothing at most 1 time in 40: one look, 4 to 16 seeds a side, by enumeration', () => {
    for (let n = 4; n <= 16; n += 3) {
      const more = Array.from({ length: n + 1 }, (_, a) => Array.from({ length: n + 1 }, (__, b) => (
        a > b && verdictOf(course(n, `9:${a}`, [40]), course(n, `9:${b}`, [40])).evidence!.more)));
      for (let percent = 5; percent < 100; percent += 5) {
        const chances = binomialProbabilities(n, percent / 100);
        let wrong = 0;
        for (let a = 0; a <= n; a++) for (let b = 0; b < a; b++) if (more[a]![b]) wrong += chances[a]! * chances[b]!;
        expect(wrong, `${n} seeds at ${percent} %`).toBeLessThanOrEqual(0.025);
      }
    }
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
    ['the seeds are too few, though all came up', course(4, '8:4', [28])],
    ['there is one seed too few', course(9, '8:9', [28])],
    ['they took too long', course(20, '40:18', [33, 60])],
    ['nobody looked in time', course(20, '40:20', [60])],
  ])('is not shown where %s', (_, batch) => {
    expect(known(readiness([batch])).ready).toBe(false);
  });

  test('is shown by ten seeds', () => {
    expect(known(readiness([course(10, '8:9', [28])])).ready).toBe(true);
  });

  test('is undefined where half never came up, or nothing was counted', () => {
    expect(readiness([course(20, '8:4', [28])])).toEqual({ undefined: 'less than half of it germinated' });
    expect(readiness([])).toEqual({ undefined: 'there is no untreated batch' });
    expect(readiness([{ sown: 9, checks: [] }])).toEqual({ undefined: 'no counts yet' });
  });
});
