/** Did the drops help? By hand where the numbers are small, beside Fisher's test where they are not. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dropsTexts, dropsTitle } from '../../server/src/words/drops.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { boschloo } from '../../server/src/measures/boschloo.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';
import { share } from './helpers.ts';

interface Side {
  readonly stuck: number;
  readonly freed: number;
  readonly died?: number;
  readonly drops?: string;
}

/** One batch a side, of 20 seeds that all germinated. */
function dropsOf(...sides: readonly Side[]) {
  const lines = sides.flatMap(({ stuck, freed, died = 0, drops }, i) => {
    const batch = `L/${i + 1}`;
    return [
      `sow ${batch} 2026-01-01, 20 seeds, 18 C`, `count ${batch} 2026-01-20, 20, ${stuck} stuck`,
      ...(drops === undefined ? [] : [`apply ${batch} 2026-01-21, ${drops}`]),
      `count ${batch} 2026-02-01, ${freed} freed, ${died} died`,
    ];
  });
  const journal = new Journal();
  const parts = sides.map((_, i) => `${i + 1} 20 seeds`);
  journal.set('j.germ', [`lot L Iris, ${20 * sides.length} seeds`, `split L, ${parts.join(', ')}`, ...lines, ''].join('\n'));
  return trialOf(journal.lot('L')!, Infinity).drops;
}

describe('drops on stuck seedlings', () => {
  test('help where more are freed than without, and the sentence says of how many', () => {
    const { contests: [contest] } = dropsOf({ stuck: 10, freed: 9, drops: 'GA3 100 ppm, 2 drops' }, { stuck: 10, freed: 2 });
    expect(contest).toMatchObject({ verdict: 'helped', given: { freed: share(9, 10) }, without: { freed: share(2, 10) } });
    // Fisher, by hand: (C(10,9) C(10,2) + C(10,10) C(10,1)) / C(20,11) = 460 / 167960; Boschloo's p is never greater.
    expect(contest!.freed!.more).toBeLessThanOrEqual(460 / 167_960);
    expect(dropsTitle(contest!)).toBe('Drops of GA3 100 ppm (L/1) against no drops (L/2)');
    expect(dropsTexts(contest!)[0]).toMatch(
      /^The drops helped: 9 of 10 \(90 %\) stuck seedlings were freed, and 2 of 10 \(20 %\) without drops: 70 points more \(95 % interval \d+ to \d+; one-sided p 0\.00\d+ by Boschloo’s exact test\)\.$/);
  });

  test('harm where fewer stay alive, whatever is freed', () => {
    const { contests: [contest] } = dropsOf({ stuck: 10, freed: 9, died: 15, drops: 'GA3 1000 ppm' }, { stuck: 10, freed: 9 });
    expect(contest!.verdict).toBe('harmed');
    expect(contest!.given.alive).toEqual(share(5, 20));
  });

  test('are too few to tell with a few seedlings, and nothing is told without a side to compare', () => {
    expect(dropsOf({ stuck: 3, freed: 3, drops: 'water' }, { stuck: 9, freed: 1 }).contests[0]!.verdict).toBe('too few to tell');
    expect(dropsOf({ stuck: 5, freed: 3, drops: 'water' }, { stuck: 5, freed: 2 }).contests[0]!.verdict).toBe('too few to tell');
    const told = (given: number, without: number) => dropsOf({ stuck: given, freed: 1, drops: 'water' }, { stuck: without, freed: 1 }).contests[0]!.freed !== undefined;
    expect([told(3, 4), told(4, 3), told(4, 4)]).toEqual([false, false, true]);
    const alone = dropsOf({ stuck: 10, freed: 9, drops: 'water' }).contests[0]!;
    expect(dropsTexts(alone)).toEqual(['Cannot tell: 9 of 10 (90 %) stuck seedlings were freed, and no stuck seedling of this lot was left without drops.']);
  });

  test('are of no benefit where not even the interval reaches so far, and help where more stay alive', () => {
    expect(dropsOf({ stuck: 20, freed: 12, drops: 'water' }, { stuck: 20, freed: 17 }).contests[0]!.verdict).toBe('no sign of a benefit');
    expect(dropsOf({ stuck: 10, freed: 5, drops: 'water' }, { stuck: 10, freed: 5, died: 12 }).contests[0]!.verdict).toBe('helped');
  });

  test('of different liquids are told apart, and a batch of which some were given drops is left out', () => {
    const { contests, leftOut } = dropsOf(
      { stuck: 10, freed: 9, drops: 'GA3 100 ppm' }, { stuck: 10, freed: 3, drops: 'water' }, { stuck: 10, freed: 2 },
      { stuck: 10, freed: 5, drops: 'GA3 100 ppm, 4 seedlings' },
    );
    expect(contests.map(contest => dropsTitle(contest).replace(/ \(.*/, ''))).toEqual(['Drops of GA3 100 ppm', 'Drops of water']);
    expect(leftOut.map(({ batch, why }) => [batch.path, why.undefined])).toEqual([
      ['L/4', '4 of its 10 stuck seedlings were given drops, and the counts do not tell which of them were freed'],
    ]);
  });

  test('count for nothing that had come free before them, and need a count after them', () => {
    const journal = new Journal();
    journal.set('j.germ', `lot L Iris, 40 seeds
split L, A 20 seeds, B 20 seeds
sow L/A 2026-01-01, 20 seeds, 18 C
sow L/B 2026-01-01, 20 seeds, 18 C
count L/A 2026-01-20, 20, 10 stuck, 3 freed
apply L/A 2026-01-21, water
count L/A 2026-02-01, 5 freed
count L/B 2026-01-20, 20, 6 stuck
apply L/B 2026-01-21, water
count L/B 2026-01-21, 1 freed
`);
    const { contests, leftOut } = trialOf(journal.lot('L')!, Infinity).drops;
    expect(contests[0]!.given.freed).toEqual(share(5, 7));
    expect(leftOut.map(({ why }) => why.undefined)).toEqual(['its seedlings were not counted after the drops']);
  });

  test('were given to all that were stuck then, be it in two rounds, or to too few of them', () => {
    const journal = new Journal();
    const batch = (name: string, ...records: string[]) => [
      `sow L/${name} 2026-01-01, 20 seeds, 18 C`, `count L/${name} 2026-01-20, 20, 10 stuck, 3 freed`,
      ...records.map(record => `apply L/${name} 2026-01-20, water, ${record}`), `count L/${name} 2026-02-01, 5 freed`,
    ].join('\n');
    journal.set('j.germ', ['lot L Iris, 100 seeds', 'split L, A 20 seeds, B 20 seeds, C 20 seeds', batch('A', '7 seedlings'),
      batch('B', '3 seedlings', '7 seedlings'), batch('C', '6 seedlings'), ''].join('\n'));
    const { contests, leftOut } = trialOf(journal.lot('L')!, Infinity).drops;
    expect(contests[0]!.given).toMatchObject({ batches: [{ path: 'L/A' }, { path: 'L/B' }], freed: share(10, 14) });
    expect(leftOut.map(({ why }) => why.undefined)).toEqual([
      '6 of its 7 stuck seedlings were given drops, and the counts do not tell which of them were freed']);
  });

  test('may be given before anybody counted', () => {
    const journal = new Journal();
    journal.set('j.germ', 'lot L Iris, 20 seeds\nsow L 2026-01-01\napply L 2026-01-15, water\ncount L 2026-01-20, 20, 10 stuck, 4 freed');
    expect(trialOf(journal.lot('L')!, Infinity).drops.contests[0]!.given.freed).toEqual(share(4, 10));
  });

  test('that differ in more than the drops are not judged', () => {
    const journal = new Journal();
    const source = `lot L Iris, 40 seeds
split L, A 20 seeds, B 20 seeds
sow L/A 2026-01-01, 20 seeds, 18 C
sow L/B 2026-01-01, 20 seeds, 8 C
count L/A 2026-01-20, 20, 10 stuck
count L/B 2026-01-20, 20, 10 stuck
apply L/A 2026-01-21, water
count L/A 2026-02-01, 10 freed
count L/B 2026-02-01, 0
`;
    journal.set('j.germ', source);
    const [contest] = trialOf(journal.lot('L')!, Infinity).drops.contests;
    expect(contest).toMatchObject({ verdict: 'cannot tell', alsoDiffers: ['temperature'] });
    const differing = (text: string) => {
      const other = new Journal();
      other.set('j.germ', text);
      return trialOf(other.lot('L')!, Infinity).drops.contests[0]!.alsoDiffers;
    };
    const alike = source.replace('8 C\ncount', '18 C\ncount');
    expect(differing(alike)).toEqual([]);
    expect(differing(alike.replace('sow L/A', 'soak L/A 2025-12-31 08:00, GA3 500 ppm, 24 h\nsow L/A'))).toContain('soak');
    expect(differing(`${alike}chill L/A 2026-03-01, 4 C\n`)).toEqual([]);
    expect(differing(`${alike}chill L/A 2026-01-10, 4 C\n`)).toEqual(['warm and cold stages']);
    const unknown = alike.replace('lot L Iris, 40 seeds', 'lot L Iris').replace(', B 20 seeds', '').replace('01-01, 20 seeds, 18 C\ncount', '01-01, 18 C\ncount');
    expect(differing(unknown.replaceAll('L/B', 'L'))).toEqual(['how far they are alike']);
  });

  test('are claimed to help or harm at the level of the engine, halved for the two outcomes', () => {
    const side = fc.record({ stuck: fc.integer({ min: 4, max: 20 }), part: fc.integer({ min: 0, max: 20 }) })
      .map(({ stuck, part }) => ({ stuck, freed: Math.min(stuck, part) }));
    fc.assert(fc.property(side, side, (given, without) => {
      const { contests: [contest] } = dropsOf({ ...given, drops: 'GA3 100 ppm' }, without);
      const [a, b] = [{ x: given.freed, n: given.stuck }, { x: without.freed, n: without.stuck }];
      expect(contest!.verdict === 'helped').toBe(boschloo(a, b) <= 0.0125);
      expect(contest!.verdict === 'harmed').toBe(boschloo(b, a) <= 0.0125);
    }), { numRuns: 40 });
  });
});
