/** Did the drops help? By hand where the numbers are small, beside Fisher's test where they are not. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dropsTexts, dropsTitle } from '../../server/src/words/drops.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { boschloo } from '../../server/src/measures/boschloo.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';
import { trial } from './helpers.ts';

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
  return trialOf(journal.lot('L')!).drops;
}

const share = (x: number, n: number) => ({ x: { least: x, most: x }, n: { least: n, most: n } });

/** The only contest of a lot of two halves that were sown on one day, with what its drops are said to have done. */
function halves(...records: readonly string[]) {
  const { drops: { contests: [contest] } } = trial(`
    lot MEC-26 Meconopsis grandis, 60 seeds
    split MEC-26, A 30 seeds, B 30 seeds
    sow MEC-26/A 2026-08-11, 30 seeds, 15 C
    sow MEC-26/B 2026-08-11, 30 seeds, 15 C
    ${records.map(record => record.replace(/ ([AB])\b/, ' MEC-26/$1')).join('\n    ')}
  `);
  return { contest: contest!, texts: dropsTexts(contest!) };
}

describe('drops on stuck seedlings', () => {
  test('help where more are freed than without, and the sentence says of how many', () => {
    const { contests: [contest] } = dropsOf({ stuck: 10, freed: 9, drops: 'GA3 100 ppm, 2 drops' }, { stuck: 10, freed: 2 });
    expect(contest).toMatchObject({ verdict: 'helped', given: { freed: share(9, 10) }, without: { freed: share(2, 10) } });
    // Fisher, by hand: (C(10,9) C(10,2) + C(10,10) C(10,1)) / C(20,11) = 460 / 167960; Boschloo's p is never greater.
    expect(contest!.freed!.more).toBeLessThanOrEqual(460 / 167_960);
    expect(dropsTitle(contest!)).toBe('Drops of GA3 100 ppm (L/1) against no drops (L/2)');
    expect(dropsTexts(contest!)[0]).toMatch(
      /^The drops helped: 9 of 10 \(90 %\) stuck seedlings were freed, and 2 of 10 \(20 %\) without drops: 70 points more \(95 % interval \d+ to \d+; Boschloo’s exact test, one-sided: p 0\.00\d+ that more\)\.$/);
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
    const { contests, leftOut } = trialOf(journal.lot('L')!).drops;
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
    const { contests, leftOut } = trialOf(journal.lot('L')!).drops;
    expect(contests[0]!.given).toMatchObject({ batches: [{ path: 'L/A' }, { path: 'L/B' }], freed: share(10, 14) });
    expect(leftOut.map(({ why }) => why.undefined)).toEqual([
      '6 of its 7 stuck seedlings were given drops, and the counts do not tell which of them were freed']);
  });

  test('may be given before anybody counted', () => {
    const journal = new Journal();
    journal.set('j.germ', 'lot L Iris, 20 seeds\nsow L 2026-01-01\napply L 2026-01-15, water\ncount L 2026-01-20, 20, 10 stuck, 4 freed');
    expect(trialOf(journal.lot('L')!).drops.contests[0]!.given.freed).toEqual(share(4, 10));
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
    const [contest] = trialOf(journal.lot('L')!).drops.contests;
    expect(contest).toMatchObject({ verdict: 'cannot tell', alsoDiffers: ['temperature'] });
    const differing = (text: string) => {
      const other = new Journal();
      other.set('j.germ', text);
      return trialOf(other.lot('L')!).drops.contests[0]!.alsoDiffers;
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

describe('what became of stuck seedlings', () => {
  test('begins with the drops: seedlings that had died before do not count', () => {
    const { contest, texts } = halves(
      'count A 2026-09-01, 20, 10 stuck, 9 died', 'count B 2026-09-01, 20, 10 stuck',
      'apply A 2026-09-02 18:00, GA3 100 ppm, 2 drops, 10 seedlings',
      'count A 2026-10-28, 3 freed', 'count B 2026-10-28, 3 freed',
    );
    expect(contest).toMatchObject({
      verdict: 'too few to tell', given: { alive: share(11, 11), freed: share(3, 10) }, without: { alive: share(20, 20) },
    });
    expect(texts[1]).toMatch(/^Still alive: 11 of 11 \(100 %\) seedlings, and 20 of 20 \(100 %\) without drops: no difference/);
  });

  test('is as uncertain as the seedlings that died before, where no record says that they were not the stuck ones', () => {
    const lot = (died: number, named: string) => halves(
      `count A 2026-09-01, 20, 10 stuck, ${died} died`, 'count B 2026-09-01, 20, 10 stuck',
      `apply A 2026-09-02 18:00, GA3 100 ppm, 2 drops${named}`,
      'count A 2026-10-28, 1 freed', 'count B 2026-10-28, 9 freed',
    );
    expect(lot(0, '').contest.verdict).toBe('harmed');
    expect(lot(9, '').contest).toMatchObject({ verdict: 'too few to tell', given: { freed: { n: { least: 1, most: 10 } } } });
    const few = lot(3, '');
    expect(few.contest).toMatchObject({ verdict: 'harmed', freed: { difference: undefined } });
    expect(few.texts[0]).toBe('The drops harmed: 1 of 7 to 10 stuck seedlings were freed, and 9 of 10 (90 %) without drops.');
    expect(lot(3, ', 10 seedlings').contest).toMatchObject({ verdict: 'harmed', given: { freed: share(1, 10) } });
  });

  test('counts no more stuck seedlings than were alive', () => {
    const { contest } = halves(
      'count A 2026-09-01, 10, 10 stuck, 6 died', 'count B 2026-09-01, 10, 10 stuck',
      'apply A 2026-09-02 18:00, water, 4 seedlings', 'count A 2026-10-28, 3 freed', 'count B 2026-10-28, 3 freed',
    );
    expect(contest.given.freed).toEqual(share(3, 4));
  });

  test.each([
    ['long after the drops, and the others soon after', ['count A 2026-11-28, 2 freed, 10 died', 'count B 2026-09-04, 0']],
    ['soon after the drops, and the others long after', ['count A 2026-09-04, 0', 'count B 2026-11-28, 10 freed']],
    ['long after the drops, and the others never', ['count A 2026-11-28, 11 freed']],
  ])('is not compared where one side was looked at %s', (_, later) => {
    const { contest, texts } = halves(
      'count A 2026-09-01, 12, 12 stuck', 'count B 2026-09-01, 12, 12 stuck',
      'apply A 2026-09-02 18:00, GA3 100 ppm, 2 drops, 12 seedlings', ...later,
    );
    expect(contest).toMatchObject({ verdict: 'cannot tell', freed: undefined, alive: undefined });
    expect(texts).toEqual(['Cannot tell: the two sides were not looked at on the same day after the drops.']);
  });

  test('is not compared where one side was last looked at long before the drops', () => {
    const { texts } = halves(
      'count A 2026-09-01, 12, 12 stuck', 'count B 2026-08-20, 12, 12 stuck',
      'apply A 2026-09-02 18:00, GA3 100 ppm, 2 drops, 12 seedlings', 'count A 2026-10-01, 1 freed', 'count B 2026-10-01, 9 freed',
    );
    expect(texts).toEqual(['Cannot tell: the two sides were not looked at on the same day before the drops.']);
  });

  test('is compared up to the last day on which both sides were looked at, or looked at a day apart', () => {
    const { contest, texts } = halves(
      'count A 2026-09-01, 12, 12 stuck', 'count B 2026-08-31, 12, 12 stuck',
      'apply A 2026-09-02 18:00, GA3 100 ppm, 2 drops, 12 seedlings',
      'count A 2026-09-20, 11 freed', 'count B 2026-09-21, 1 freed', 'count B 2026-11-28, 10 freed, 1 died',
    );
    expect(contest).toMatchObject({
      verdict: 'helped', given: { freed: share(11, 12) }, without: { freed: share(1, 12), alive: share(12, 12) },
    });
    expect(texts[2]).toBe('This is what the looks up to 2026-09-21 found: on no later day were both sides looked at.');
  });

  test('is not compared where the drops were given on different days', () => {
    const { drops: { contests: [contest] } } = trial(`
      lot L Iris, 60 seeds
      split L, A 20 seeds, B 20 seeds, C 20 seeds
      sow L/A 2026-01-01, 20 seeds
      sow L/B 2026-01-01, 20 seeds
      sow L/C 2026-01-01, 20 seeds
      count L/A 2026-01-20, 20, 10 stuck
      count L/B 2026-01-20, 20, 10 stuck
      count L/C 2026-01-20, 20, 10 stuck
      apply L/A 2026-01-21, water
      apply L/B 2026-01-29, water
      count L/A 2026-02-01, 9 freed
      count L/B 2026-02-01, 9 freed
      count L/C 2026-02-01, 1 freed
    `);
    expect(dropsTexts(contest!)).toEqual(['Cannot tell: the drops were given on different days.']);
  });

  test('is known within limits where seed germinated later and seedlings died', () => {
    const { contest, texts } = halves(
      'count A 2026-09-01, 20, 10 stuck', 'count B 2026-09-01, 20, 10 stuck', 'apply A 2026-09-02, water, 10 seedlings',
      'count A 2026-10-01, 3, 5 died', 'count B 2026-10-01, 0',
    );
    expect(contest.given.alive).toEqual({ x: { least: 15, most: 18 }, n: { least: 20, most: 20 } });
    expect(texts[1]).toBe('Still alive: 15 to 18 of 20 seedlings, and 20 of 20 (100 %) without drops.');
  });

  test('leaves out who was alive where no seedling had been counted before', () => {
    const { texts } = halves(
      'apply A 2026-08-25, water', 'count A 2026-09-01, 20, 10 stuck, 4 freed', 'count B 2026-09-01, 20, 10 stuck, 4 freed',
    );
    expect(texts[1]).toBe('How many stayed alive is unknown, because no living seedling had been counted before the drops.');
  });
});
