import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { germinatedOf } from '../../server/src/words/germination.ts';
import { shareLimits, shareText, wilsonLimits } from '../../server/src/words/shares.ts';
import { rangeOf } from '../../server/src/journal/estimates.ts';
import { isUndefined } from '../../server/src/measures/measured.ts';
import { wilson } from '../../server/src/measures/proportion.ts';
import { aboutRange, halfRange, type SeedRange } from '../../server/src/model/estimate.ts';
import { expectMarked, problemsIn } from '../checks/marked.ts';
import { lotOf } from './helpers.ts';

function rangesIn(source: string, path: string) {
  const batch = lotOf(source).batches.get(path)!;
  return { seeds: rangeOf(batch, 'seeds'), kept: rangeOf(batch, 'kept'), sown: rangeOf(batch, 'sown'), tested: rangeOf(batch, 'tested') };
}

const between = (least: number, most: number): SeedRange => ({ least, most });

describe('an estimate of seeds', () => {
  test('allows a tenth either way, rounded outwards', () => {
    expect([40, 5, 1, 33].map(aboutRange)).toEqual([between(36, 44), between(4, 6), between(0, 2), between(29, 37)]);
    expect([40, 7].map(halfRange)).toEqual([between(18, 22), between(3, 4)]);
  });

  test('is no number: what hangs on it is a range', () => {
    const source = `
      lot VER-24 Veratrum nigrum, about 40 seeds
      split VER-24, A 10 seeds
      sow VER-24/A 2026-01-11
      sow VER-24 2026-01-11
    `;
    expect(lotOf(source).root).toMatchObject({ seeds: undefined, kept: undefined, sown: undefined, tested: undefined });
    expect(rangesIn(source, 'VER-24')).toEqual({
      seeds: between(36, 44), kept: between(26, 34), sown: between(26, 34), tested: between(26, 34),
    });
    expect(rangesIn(source, 'VER-24/A').tested).toEqual(between(10, 10));
  });

  test('of parts leaves the rest with what they can have left', () => {
    const source = `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A about 20 seeds, B 10 to 15 seeds
    `;
    expect(rangesIn(source, 'VER-24').kept).toEqual(between(60 - 22 - 15, 60 - 18 - 10));
    expect(rangesIn(source, 'VER-24/B').kept).toEqual(between(10, 15));
  });

  test('of seed that leaves stays with what can be left, at both ends', () => {
    const source = (lot: string) => `
      lot VER-24 Veratrum nigrum, ${lot}
      give VER-24 2026-01-01, about 10 seeds
      sow VER-24 2026-01-11
    `;
    expect(rangesIn(source('20 to 30 seeds'), 'VER-24').sown).toEqual(between(20 - 11, 30 - 9));
    expect(rangesIn(source('40 seeds'), 'VER-24').sown).toEqual(between(40 - 11, 40 - 9));
  });

  test('in two halves leaves nothing, whatever there was', () => {
    for (const seeds of ['40 seeds', 'about 40 seeds']) {
      const lot = lotOf(`lot VER-24 Veratrum nigrum, ${seeds}\nsplit VER-24, A half, B half`);
      expect(lot.root.kept).toBe(0);
    }
    expect(rangesIn('lot VER-24 Veratrum nigrum, 40 seeds\nsplit VER-24, A half, B half', 'VER-24/A').seeds).toEqual(between(18, 22));
    expect(rangesIn('lot VER-24 Veratrum nigrum, about 40 seeds\nsplit VER-24, A half, B half', 'VER-24/A').seeds)
      .toEqual(between(16, 25));
  });

  test('leaves what was sown out of the bag the same seed', () => {
    const source = `
      regime cold, chill 4 C 60 days
      lot VER-24 Veratrum nigrum, about 40 seeds
      sow VER-24 2026-01-11, regime cold
      sow VER-24 2026-03-20, in loam
    `;
    expect(rangesIn(source, 'VER-24').sown).toEqual(between(36, 44));
  });
});

describe('a share of estimated seeds', () => {
  const source = (counts: string) => `
    lot VER-24 Veratrum nigrum, 30 to 40 seeds
    sow VER-24 2026-01-11
    count VER-24 2026-02-01, ${counts}
  `;

  test('is a range, and its interval takes in those of both ends', () => {
    const share = germinatedOf(lotOf(source('12')).root);
    if (isUndefined(share)) throw new Error(share.undefined);
    expect(shareText(share.x, share.n)).toBe('12 of 30 to 40 = 30 to 40 %');
    expect(share.of).toBe('30 to 40 sown, estimated');
    expect(wilsonLimits(share.x, share.n)).toEqual({ low: wilson(12, 40).low, high: wilson(12, 30).high });
  });

  test('knows that there were at least the seeds that were counted', () => {
    const share = germinatedOf(lotOf(source('33, 2 rotted')).root);
    expect(share).toMatchObject({ x: 33, n: between(35, 40) });
    expect(germinatedOf(lotOf(source('41')).root)).toEqual({ undefined: 'more are counted (41) than there can be seeds (30 to 40)' });
  });
});

describe('a cut test of estimated seed', () => {
  const source = (fresh: number) => `
    lot VER-24 Veratrum nigrum, about 20 seeds
    sow VER-24 2026-01-11
    count VER-24 2026-02-01, 12
    cut VER-24 2026-03-01, ${fresh} fresh, 1 dead
  `;

  test('says how many there were', () => {
    // 12 germinated, 6 fresh and 1 dead are 19, within 18 to 22.
    expect(lotOf(source(6)).root).toMatchObject({ tested: 19, sown: 19 });
    expect(germinatedOf(lotOf(source(6)).root)).toMatchObject({ x: 12, n: 19 });
    expect(problemsIn('cut-does-not-add-up', source(6))).toEqual([]);
  });

  test('and contradicts an estimate that it does not lie within', () => {
    expect(lotOf(source(1)).root.tested).toBeUndefined();
    expect(problemsIn('cut-does-not-add-up', source(1)).map(({ message }) => message)).toEqual([
      'The cut test of VER-24 counts 2 seeds, but 6 to 10 had not germinated (18 to 22 sown, 12 germinated, 0 rotted, 0 lost). '
      + 'Count again, or correct the wrong number.',
    ]);
  });
});

test('more than an estimate allows is given out or counted', () => {
  expectMarked(['split-exceeds-seeds', 'count-exceeds-sown'], `
    lot VER-24 Veratrum nigrum, about 20 seeds
    split VER-24, A 10 seeds, B about 11 seeds
    lot GEN-24 Gentiana lutea, about 20 seeds
    split GEN-24, A 12 seeds, B about 13 seeds
                  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ split-exceeds-seeds
    lot IRI-24 Iris sibirica, 10 to 12 seeds
    sow IRI-24 2026-01-11
    count IRI-24 2026-02-01, 12
    count IRI-24 2026-02-08, 1
                             ^ count-exceeds-sown
  `);
});

/** A number of seeds as it may be written, with all that it can mean. */
interface Written {
  readonly text: string;
  readonly values: readonly number[];
}

const valuesOf = ({ least, most }: SeedRange) => Array.from({ length: most - least + 1 }, (_, n) => least + n);

const writtenSeeds = (min: number, max: number): fc.Arbitrary<Written> => fc.oneof(
  fc.integer({ min, max }).map(n => ({ text: `${n} seeds`, values: [n] })),
  fc.integer({ min, max }).map(n => ({ text: `about ${n} seeds`, values: valuesOf(aboutRange(n)) })),
  fc.tuple(fc.integer({ min, max }), fc.integer({ min: 0, max: 3 }))
    .map(([n, more]) => ({ text: `${n} to ${n + more} seeds`, values: valuesOf({ least: n, most: n + more }) })),
);

test('every number that its unknowns allow lies within the range of each batch, and every share within its limits', () => {
  fc.assert(fc.property(
    writtenSeeds(14, 24), writtenSeeds(3, 8), fc.option(writtenSeeds(2, 5)), fc.boolean(),
    fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 2 }),
    (lot, part, sown, isBagged, germinated, lost) => {
      const journal = (seeds: string, a: string, taken: string | undefined) => `
        lot VER-24 Veratrum nigrum, ${seeds}
        split VER-24, A ${a}
        sow VER-24/A 2026-01-10${taken === undefined ? '' : `, ${taken}`}
        ${isBagged ? 'chill VER-24/A 2026-01-12, 4 C\n        sow VER-24/A 2026-01-20' : ''}
        sow VER-24 2026-01-10
        count VER-24 2026-02-01, ${germinated}, ${lost} lost
        count VER-24/A 2026-02-01, ${Math.min(germinated, 1)}
      `;
      const estimated = lotOf(journal(lot.text, part.text, sown?.text));
      for (const seeds of lot.values) {
        for (const a of part.values) {
          for (const taken of sown?.values ?? [undefined]) {
            const exact = lotOf(journal(`${seeds} seeds`, `${a} seeds`, taken === undefined ? undefined : `${taken} seeds`));
            for (const path of ['VER-24', 'VER-24/A']) {
              const [batch, own] = [estimated.batches.get(path)!, exact.batches.get(path)!];
              for (const what of ['seeds', 'kept', 'sown', 'tested'] as const) {
                const [range, value] = [rangeOf(batch, what), own[what]];
                if (range && value !== undefined) expect(value >= range.least && value <= range.most, `${path} ${what}`).toBe(true);
              }
              const [share, ownShare] = [germinatedOf(batch), germinatedOf(own)];
              if (isUndefined(share) || isUndefined(ownShare)) continue;
              const { low, high } = shareLimits(share.x, share.n);
              const exactly = shareLimits(ownShare.x, ownShare.n).low;
              expect(exactly >= low - 1e-12 && exactly <= high + 1e-12, `${path} share`).toBe(true);
              const [wide, narrow] = [wilsonLimits(share.x, share.n), wilsonLimits(ownShare.x, ownShare.n)];
              expect(narrow.low >= wide.low - 1e-12 && narrow.high <= wide.high + 1e-12, `${path} interval`).toBe(true);
            }
          }
        }
      }
    },
  ), { numRuns: 60 });
});
