import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  faultOf, finalTotal, germinatedSteps, seedsCounted, stepsAfterOrigin, stepsOf,
} from '../../server/src/measures/course.ts';
import { measureBatch } from '../../server/src/measures/batch.ts';
import { course } from './helpers.ts';

describe('a course', () => {
  test('has one step for each check day, with the check before it', () => {
    expect(stepsOf(course(9, '6:5', [4], { rotted: 1, lost: 1 }))).toEqual([
      { day: 4, since: { value: 0 }, fresh: 0, germinated: 0, gone: 0 },
      { day: 6, since: { value: 4 }, fresh: 5, germinated: 5, gone: 2 },
    ]);
  });

  test('does not know since when, if seed was up at a first check that was not after day 0', () => {
    const [first, second] = stepsOf(course(9, '-3:1 5:2'));
    expect(first!.since).toEqual({ undefined: 'no check before the first germination' });
    expect(second!.since).toEqual({ value: -3 });
  });

  test('counts the seeds sown less lost', () => {
    expect(seedsCounted(course(20, '5:3', [], { lost: 2 }))).toBe(18);
    expect(finalTotal(course(20, ''), 'germinated')).toBe(0);
  });

  test.each([
    [{ sown: Number.NaN, checks: [] }, 'the number of seeds sown is unknown'],
    [{ sown: 5, checks: [] }, 'no counts yet'],
    [{ sown: 5, checks: [{ day: 8, germinated: 6 }] }, 'more seeds are accounted for on day 8 than were sown'],
    [{ sown: 5, checks: [{ day: 8, germinated: 3, rotted: 3 }] }, 'more seeds are accounted for on day 8 than were sown'],
    [{ sown: 5, checks: [{ day: 8, germinated: 3 }, { day: 9, germinated: 2 }] }, 'the total of germinated goes down on day 9'],
    [{ sown: 5, checks: [{ day: 8, germinated: 1, leaf: -1 }] }, 'the total of leaf on day 8 is not a count'],
    [{ sown: 5, checks: [{ day: 8, germinated: 1 }, { day: 7, germinated: 2 }] }, 'day 7 comes after day 8'],
    [{ sown: 2, checks: [{ day: 8, germinated: 0, lost: 2 }] }, 'no seeds are left in the count'],
  ])('with a slip gives the reason and no number: %j', (faulty, reason) => {
    expect(faultOf(faulty)).toEqual({ undefined: reason });
    const text = JSON.stringify(measureBatch(faulty));
    expect(text).not.toContain('"value"');
    expect(text).toContain(reason);
  });

  test.each([
    [{ fresh: 1, hard: 0, dead: 1, empty: 1 }, 3], [{ fresh: 1, hard: 0, dead: 0, empty: 0 }, 1],
  ])('keeps its germination, and loses what the cut test said, where that does not add up: %j', (cut, sorted) => {
    const { germination } = measureBatch({ sown: 5, checks: [{ day: 8, germinated: 3 }], cut });
    expect(germination.sown).toMatchObject({ x: 3, n: 5 });
    const reason = { undefined: `the cut test sorts ${sorted}, but 2 had not germinated` };
    expect(germination).toMatchObject({ full: reason, viable: reason });
  });

  test('of seed sown in portions has its share and no days', () => {
    const portions = { ...course(10, '8:3 12:4', [20]), untimed: 'it was sown in portions' };
    const found = measureBatch(portions);
    expect(found.germination.sown).toMatchObject({ x: 7, n: 10 });
    const { span, t50Coolbear, ofSown, meanTime, speed, germinationValue, kaplanMeier } = found;
    for (const number of [span, t50Coolbear, ofSown.t50, meanTime.mean, speed.maguire, germinationValue, kaplanMeier]) {
      expect(number).toEqual({ undefined: 'it was sown in portions' });
    }
  });

  test('without germination gives the reason', () => {
    expect(germinatedSteps(course(5, '', [8]))).toEqual({ undefined: 'nothing germinated' });
  });

  test('with seed up by day 0 has no indices that divide by the day', () => {
    expect(stepsAfterOrigin(course(5, '0:1 8:2'))).toEqual({ undefined: 'seed had germinated by day 0' });
    expect(stepsAfterOrigin(course(5, '8:2', [-4, 0]))).toHaveLength(3);
  });
});

/** Random courses, some with seed that rots. */
const courses = fc.array(fc.record({
  gap: fc.integer({ min: 1, max: 12 }), fresh: fc.integer({ min: 0, max: 6 }), rots: fc.integer({ min: 0, max: 2 }),
}), { minLength: 1, maxLength: 10 }).chain(parts => fc.integer({ min: 1, max: 15 }).map(more => {
  let [day, germinated, rotted] = [0, 0, 0];
  const checks = parts.map(({ gap, fresh, rots }) => {
    day += gap;
    germinated += fresh;
    rotted += rots;
    return { day, germinated, rotted };
  });
  return { sown: germinated + rotted + more, checks };
}));

describe('the measures of a batch', () => {
  test('do not change when a count is split in two on the same day', () => {
    fc.assert(fc.property(courses, fc.nat(), (whole, pick) => {
      const i = pick % whole.checks.length;
      const at = whole.checks[i]!;
      const before = whole.checks[i - 1] ?? { germinated: 0, rotted: 0 };
      const germinated = Math.floor((at.germinated + before.germinated) / 2);
      const half = { day: at.day, germinated, rotted: before.rotted };
      const split = { ...whole, checks: [...whole.checks.slice(0, i), half, ...whole.checks.slice(i)] };
      expect(measureBatch(split)).toEqual(measureBatch(whole));
    }));
  });

  test('change with an empty check only where the day before, or the number of checks, takes part', () => {
    fc.assert(fc.property(courses, whole => {
      const [first] = whole.checks;
      const empty = { day: first!.day / 2, germinated: 0, rotted: 0 };
      const a = measureBatch(whole);
      const b = measureBatch({ ...whole, checks: [empty, ...whole.checks] });
      const unmoved = [
        'germination', 'seedlings', 'rotted', 'germinationValue', 'uniformity', 'kaplanMeier',
      ] as const;
      for (const same of unmoved) {
        expect(b[same]).toEqual(a[same]);
      }
      const lasting = ({ span }: typeof a) => ('first' in span ? { first: span.first, last: span.last } : span);
      expect(lasting(b)).toEqual(lasting(a));
      const { earliest: earliestA, ...meansA } = a.meanTime;
      const { earliest: earliestB, ...meansB } = b.meanTime;
      expect(meansB).toEqual(meansA);
      // Seed of the first check is now known to have germinated later.
      if ('value' in earliestA && 'value' in earliestB) expect(earliestB.value).toBeGreaterThanOrEqual(earliestA.value);
      expect(b.speed.maguire).toEqual(a.speed.maguire);
      expect(b.speed.dayWeighted).toEqual(a.speed.dayWeighted);
      // A later half-way point on the way to the first check's count.
      if ('value' in a.t50Coolbear && 'value' in b.t50Coolbear) {
        expect(b.t50Coolbear.value).toBeGreaterThanOrEqual(a.t50Coolbear.value - 1e-9);
      }
    }));
  });

  test('of time scale with the days', () => {
    fc.assert(fc.property(courses, whole => {
      const slow = { ...whole, checks: whole.checks.map(check => ({ ...check, day: 3 * check.day })) };
      const [a, b] = [measureBatch(whole), measureBatch(slow)];
      const times = ({ meanTime, t50Coolbear, ofGerminated, ofSown, speed }: typeof a) => [
        meanTime.mean, meanTime.earliest, meanTime.standardDeviation, t50Coolbear, ofGerminated.t10, ofSown.t50,
        speed.area,
      ];
      for (const [i, time] of times(a).entries()) {
        const other = times(b)[i]!;
        if ('value' in time && 'value' in other) expect(other.value).toBeCloseTo(3 * time.value, 6);
        else expect(other).toEqual(time);
      }
      if ('value' in a.speed.maguire && 'value' in b.speed.maguire) {
        expect(b.speed.maguire.value).toBeCloseTo(a.speed.maguire.value / 3, 9);
      }
      expect(b.uniformity).toEqual(a.uniformity);
      expect(b.germination).toEqual(a.germination);
    }));
  });

  test('lie where they must: T10 before T50 before T90, the mean within its bounds, uncertainty below log2 of the checks', () => {
    fc.assert(fc.property(courses, whole => {
      const { ofGerminated: { t10, t50, t90 }, meanTime, uniformity, span } = measureBatch(whole);
      if (!('value' in t10) || !('value' in t50) || !('value' in t90) || 'undefined' in span) return;
      expect(t10.value).toBeLessThanOrEqual(t50.value);
      expect(t50.value).toBeLessThanOrEqual(t90.value);
      expect(t90.value).toBeLessThanOrEqual(span.last);
      for (const time of [t10, t50, t90]) {
        expect(time.value).toBeLessThanOrEqual(time.by);
        if ('value' in time.after) expect(time.value).toBeGreaterThanOrEqual(time.after.value);
      }
      if (!('value' in meanTime.mean) || !('value' in meanTime.earliest)) throw new Error('the mean is missing');
      expect(meanTime.earliest.value).toBeLessThan(meanTime.mean.value);
      expect(meanTime.mean.value).toBeGreaterThanOrEqual(span.first);
      expect(meanTime.mean.value).toBeLessThanOrEqual(span.last);
      const { uncertainty, synchrony } = uniformity;
      if ('value' in uncertainty) expect(uncertainty.value).toBeLessThanOrEqual(Math.log2(whole.checks.length) + 1e-9);
      if ('value' in synchrony) {
        expect(synchrony.value).toBeGreaterThanOrEqual(0);
        expect(synchrony.value).toBeLessThanOrEqual(1);
      }
    }));
  });
});
