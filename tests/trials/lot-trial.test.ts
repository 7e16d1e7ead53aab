import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Lot } from '../../server/src/journal/life.ts';
import { measureBatch } from '../../server/src/measures/batch.ts';
import { known } from '../measures/helpers.ts';
import { trialOf, type LotTrial } from '../../server/src/trials/lot-trial.ts';
import { courseOf } from '../../server/src/trials/course.ts';
import { lotOf, trial, twoBatches } from './helpers.ts';

/** Counts of both batches on the same days: new germinated seed. */
const counts = fc.array(fc.record({
  gap: fc.integer({ min: 1, max: 6 }), rots: fc.integer({ min: 0, max: 1 }),
  a: fc.integer({ min: 0, max: 4 }), b: fc.integer({ min: 0, max: 4 }),
}), { minLength: 1, maxLength: 5 });

function records(all: readonly { gap: number; a: number; b: number; rots: number }[]): string[] {
  let day = 0;
  return all.flatMap(({ gap, a, b, rots }) => {
    day += gap;
    const date = `2026-03-${String(day).padStart(2, '0')}`;
    return [`count L/A ${date} 09:00, ${a}`, `count L/B ${date} 09:00, ${b}, ${rots} rotted`];
  });
}

const BEGIN = twoBatches().replace(/ *(?:count|discard).*\n/g, '').replace(/^ +/gm, '').trim();

const journal = (lines: readonly string[]) => [BEGIN, ...lines].join('\n');
const measures = (lot: Lot) => [...lot.batches.values()].slice(1).map(batch => measureBatch(known(courseOf(batch))));

/** All that a trial says, without the lines that it is read from. */
function said({ contests, ladders, leftOut }: LotTrial): unknown {
  return {
    contests: contests.map(({ comparison, verdict, alsoDiffers, remarks }) => (
      { comparison, verdict, alsoDiffers, remarks })),
    ladders: ladders.map(({ ladder }) => ladder), leftOut: leftOut.map(({ why }) => why),
  };
}

describe('the trial of a lot', () => {
  test('says the same in whatever order its lines stand', () => {
    fc.assert(fc.property(counts.chain(all => fc.tuple(fc.constant(records(all)), fc.shuffledSubarray(records(all), {
      minLength: 2 * all.length, maxLength: 2 * all.length,
    }))), ([lines, shuffled]) => {
      expect(said(trial(journal(shuffled)))).toEqual(said(trial(journal(lines))));
    }), { numRuns: 50 });
  });

  test('does not change when a count is split in two on one day', () => {
    fc.assert(fc.property(counts, all => {
      const split = records(all).flatMap(line => {
        const found = /^(count L\/A \S+) 09:00, ([1-9])$/.exec(line);
        return found ? [`${found[1]!} 08:00, 1`, `${found[1]!} 09:00, ${Number(found[2]) - 1}`] : [line];
      });
      expect(measures(lotOf(journal(split)))).toEqual(measures(lotOf(journal(records(all)))));
      expect(said(trial(journal(split)))).toEqual(said(trial(journal(records(all)))));
    }), { numRuns: 50 });
  });

  test('gains from a day on which nothing was found narrower bounds, and no other seed', () => {
    const lines = ['count L/A 2026-02-10, 6', 'count L/A 2026-02-20, 4', 'count L/B 2026-02-20, 2'];
    const [before] = measures(lotOf(journal(lines)));
    const [after] = measures(lotOf(journal([...lines, 'count L/A 2026-02-16, 0'])));
    const same = (found: typeof before) => {
      const { germination, span, meanTime, speed, uniformity, kaplanMeier } = found!;
      return [germination, span, meanTime.mean, speed.maguire, uniformity, known(kaplanMeier).steps];
    };
    expect(same(after)).toEqual(same(before));
    expect(before!.meanTime.earliest).toEqual({ value: (6 * 0 + 4 * 30) / 10 });
    expect(after!.meanTime.earliest).toEqual({ value: (6 * 0 + 4 * 36) / 10 });
    expect(after!.ofSown.t50).toMatchObject({ after: { value: 36 }, by: 40 });
  });

  test('is kept as long as the lot is', () => {
    const lot = lotOf(twoBatches());
    expect(trialOf(lot, Infinity)).toBe(trialOf(lot, Infinity));
  });
});
