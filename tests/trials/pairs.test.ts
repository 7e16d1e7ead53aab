import { describe, expect, test } from 'vitest';
import { replicatesText } from '../../server/src/words/replicates.ts';
import { known } from '../measures/helpers.ts';
import { contest, groupText, trial, twoBatches } from './helpers.ts';

describe('treated seed', () => {
  test('is compared with the untreated seed of its lot', () => {
    expect(contest(twoBatches())).toMatchObject({
      alsoDiffers: [], remarks: [],
      verdict: {
        verdict: 'worth repeating',
        sentence: 'Worth repeating: by day 30, 15 of 20 treated seeds had germinated (75 %) and 5 of 20 untreated (25 %): '
          + '50 points more (95 % interval 19 to 70). With one dish a side, a difference between the two dishes themselves '
          + 'would look the same.',
      },
    });
  });

  test('without untreated seed beside it cannot be told of', () => {
    expect(trial(twoBatches({ soakB: 'GA3 500 ppm, 24 h' })).contests).toMatchObject([{
      untreated: undefined, verdict: { verdict: 'cannot tell', rule: 'not-measured', sentence: expect.stringContaining('no untreated seed') },
    }]);
  });

  test('in a damp towel of unknown strength takes part', () => {
    expect(contest(twoBatches({ soakA: 'GA3 unmeasured' }))).toMatchObject({ verdict: { rule: 'more' } });
  });

  test('is not seed that was only washed', () => {
    expect(trial(twoBatches({ soakA: 'bleach 1 %, 20 min' })).contests).toEqual([]);
    const both = contest(twoBatches({ soakA: 'bleach 1 %, GA3 500 ppm, 24 h', soakB: 'bleach 1 %, 24 h' }));
    expect(both).toMatchObject({ alsoDiffers: [], verdict: { rule: 'more' } });
    expect(contest(twoBatches({ soakA: 'bleach 1 %, GA3 500 ppm, 24 h' })).alsoDiffers).toEqual(['disinfection']);
  });

  test.each([
    ['temperature', { a: ', 20 C', b: ', 15 C' }],
    ['medium', { a: ', in grit', b: ', in moss' }],
  ])('is not judged where the %s differs too', (what, batches) => {
    expect(contest(twoBatches(batches))).toMatchObject({
      alsoDiffers: [what],
      verdict: {
        verdict: 'cannot tell', rule: 'more-differs', sentence: expect.stringMatching(new RegExp(`, but the sides also differ in ${what}\\.$`)),
      },
    });
  });

  test('is judged where a condition is written for one side only, and that is said', () => {
    expect(contest(twoBatches({ a: ', 20 C' }))).toMatchObject({
      alsoDiffers: [], remarks: ['the temperature is recorded for one side only'], verdict: { rule: 'more' },
    });
    for (const sides of [{ a: ', in grit' }, { b: ', in grit' }]) {
      expect(contest(twoBatches(sides))).toMatchObject({ alsoDiffers: [], remarks: ['the medium is recorded for one side only'] });
    }
  });

  test('sown much later or earlier is not judged', () => {
    const late = twoBatches().replace('sow L/B 2026-01-11', 'sow L/B 2026-01-20');
    expect(contest(late)).toMatchObject({ alsoDiffers: ['sowing date'], verdict: { rule: 'more-differs' } });
    expect(contest(twoBatches().replace('sow L/B 2026-01-11', 'sow L/B 2026-01-09'))).toMatchObject({ alsoDiffers: [] });
  });

  test('sown in portions is not judged beside seed that was sown at once', () => {
    const portions = (batch: string, day: string) => (source: string) => (
      source.replace(`sow L/${batch} 2026-01-11 19:00`, `sow L/${batch} 2026-01-11, 10 seeds\n    sow L/${batch} ${day}, 10 seeds`));
    const late = portions('A', '2026-01-18')(twoBatches());
    expect(contest(late)).toMatchObject({ alsoDiffers: ['sowing date'], verdict: { rule: 'more-differs' } });
    expect(contest(portions('B', '2026-01-19')(late))).toMatchObject({ alsoDiffers: [], verdict: { rule: 'more' } });
    expect(contest(portions('A', '2026-01-13')(twoBatches()))).toMatchObject({ alsoDiffers: [] });
    // The second portion went into the same medium, whether or not that is written again.
    const inGrit = portions('A', '2026-01-13')(twoBatches({ b: ', in grit' })).replace('2026-01-11, 10 seeds', '2026-01-11, 10 seeds, in grit');
    expect(contest(inGrit)).toMatchObject({ alsoDiffers: [], remarks: [] });
    const planted = twoBatches().replace('discard L/A 2026-02-11', 'plant L/A 2026-02-11, 9 seedlings, in the border');
    expect(contest(planted)).toMatchObject({ alsoDiffers: [], remarks: [] });
  });

  test('that was sown, beside seed that never was, is not judged', () => {
    const source = twoBatches().replace('sow L/B 2026-01-11 19:00', 'chill L/B 2026-01-11 19:00, 4 C');
    expect(contest(source).alsoDiffers).toEqual(['warm and cold stages', 'sowing (one side was never sown)']);
  });

  test('lay in the same medium, whether or not it is said to be damp', () => {
    const media = (a: string, b: string) => contest(twoBatches({ a: `, in ${a}`, b: `, in ${b}` })).alsoDiffers;
    expect([media('damp towel', 'Towel'), media('moist sterile sand', 'wet sterile sand')]).toEqual([[], []]);
    expect([media('damp towel', 'sand'), media('dry sand', 'sand')]).toEqual([['medium'], ['medium']]);
    expect(contest(twoBatches({ a: ', in damp towel' })).remarks).toEqual(['the medium is recorded for one side only']);
  });

  test('that was scarified or chilled otherwise is not judged', () => {
    expect(contest(twoBatches().replace('sow L/A', 'scarify L/A 2026-01-11 18:00\n    sow L/A')).alsoDiffers).toEqual(['scarification']);
    const chilled = twoBatches().replace('count L/A', 'chill L/A 2026-01-21, 4 C\n    count L/A');
    expect(contest(chilled).alsoDiffers).toEqual(['warm and cold stages']);
    const both = chilled.replace('count L/B', 'chill L/B 2026-01-22, 41 F\n    count L/B');
    expect(contest(both).alsoDiffers).toEqual([]);
    expect(contest(both.replace('41 F', '8 C')).alsoDiffers).toEqual(['warm and cold stages']);
    expect(contest(both.replace('2026-01-22', '2026-01-31')).alsoDiffers).toEqual(['warm and cold stages']);
    const outside = twoBatches({ a: ', at bench 1', b: ', at bench 2' }).replace('count L/A', 'move L/A 2026-01-21, at bench, outdoors\n    count L/A');
    expect(contest(outside).alsoDiffers).toEqual(['standing outdoors']);
    const bothOutside = outside.replace('count L/B', 'move L/B 2026-01-24, at bench, outdoors\n    count L/B');
    expect(contest(bothOutside).alsoDiffers).toEqual([]);
    expect(contest(bothOutside.replace('2026-01-24', '2026-01-26')).alsoDiffers).toEqual(['standing outdoors']);
  });

  test('that stood in a regime is not judged beside seed that did not: its stages are stages, written down or not', () => {
    const source = (regimeB: string) => `
      regime berries, warm 20 C 60 days, chill 4 C 90 days
      lot L Iris alba, 100 seeds
      split L, A 24 seeds, B 24 seeds
      soak L/A 2026-01-09 19:00, GA3 500 ppm, 24 h
      soak L/B 2026-01-09 19:00, water, 24 h
      sow L/A 2026-01-10, regime berries
      sow L/B 2026-01-10${regimeB}
      count L/A 2026-07-01, 20
      count L/B 2026-07-01, 1
    `;
    expect(trial(source('')).contests).toMatchObject([{
      alsoDiffers: ['warm and cold stages'], verdict: { verdict: 'cannot tell' },
    }]);
    expect(trial(source(', regime berries')).contests).toMatchObject([{ alsoDiffers: [], verdict: { rule: 'more' } }]);
    const asWritten = '\n      warm L/B 2026-01-10, 20 C, 60 days\n      chill L/B 2026-03-11, 4 C, 90 days';
    expect(trial(source(asWritten)).contests).toMatchObject([{ alsoDiffers: [], verdict: { rule: 'more' } }]);
  });

  test('is judged by what was counted before the sides began to differ', () => {
    const { alsoDiffers, comparison } = contest(`
      lot L Iris alba, 60 seeds
      split L, A 20 seeds, B 20 seeds
      soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak L/B 2026-01-10 19:00, water, 24 h
      sow L/A 2026-01-11 19:00
      sow L/B 2026-01-11 19:00
      count L/A 2026-02-10, 15
      count L/B 2026-02-10, 5
      cut L/A 2026-02-11, 5 fresh
      chill L/B 2026-02-11, 4 C, 90 days
      count L/B 2026-05-20, 12
    `);
    expect(alsoDiffers).toEqual([]);
    expect(known(comparison)).toMatchObject({
      byDay: 30, germinated: { untreated: { x: 5, n: 20 } }, open: { treated: 0, untreated: 0 },
    });
  });

  test('is compared with watered seed rather than with dry, under the same conditions rather than others', () => {
    const { contests } = trial(`
      lot L Iris alba, 100 seeds
      split L, A 20 seeds, B 20 seeds, C 20 seeds, D 20 seeds
      soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak L/C 2026-01-10 19:00, water, 24 h
      soak L/D 2026-01-10 19:00, water, 24 h
      sow L/A 2026-01-11 19:00, 20 C
      sow L/B 2026-01-11 19:00, 20 C
      sow L/C 2026-01-11 19:00, 10 C
      sow L/D 2026-01-11 19:00, 20 C
      count L/A 2026-02-10, 15
      count L/B 2026-02-10, 5
      count L/C 2026-02-10, 5
      count L/D 2026-02-10, 5
    `);
    expect(contests.map(({ untreated, remarks }) => [groupText(untreated!), remarks])).toEqual([['untreated: D', []]]);
  });

  test('is compared with seed of which more was written down, and in the same place rather than in another', () => {
    const beside = (b: string, c: string) => trial(`
      lot L Iris alba, 100 seeds
      split L, A 20 seeds, B 22 seeds, C 20 seeds
      soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
      sow L/A 2026-01-11 19:00, 20 C, in grit, at mat
      sow L/B 2026-01-11 19:00${b}
      sow L/C 2026-01-11 19:00${c}
      count L/A 2026-02-10, 15
      count L/B 2026-02-10, 5
      count L/C 2026-02-10, 5
    `).contests.map(({ untreated }) => groupText(untreated!));
    expect(beside(', in moss, at mat', ', 20 C, in loam, at mat')).toEqual(['untreated: C']);
    expect(beside(', 20 C, in loam, at mat', ', in moss, at mat').join()).toBe('untreated: B');
    expect(beside(', 20 C, in moss, at frame', ', 20 C, in loam, at mat')).toEqual(['untreated: C']);
    expect(beside(', 20 C, in moss, at mat', ', 20 C, in loam, at frame')).toEqual(['untreated: B']);
  });

  test('is compared with the larger of two groups that differ as much', () => {
    const { contests } = trial(`
      lot L Iris alba, 100 seeds
      split L, A 20 seeds, B 10 seeds, C 20 seeds
      soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
      sow L/A 2026-01-11 19:00, 20 C
      sow L/B 2026-01-11 19:00, 10 C
      sow L/C 2026-01-11 19:00, 15 C
      count L/A 2026-02-10, 15
      count L/B 2026-02-10, 5
      count L/C 2026-02-10, 5
    `);
    expect(contests.map(({ untreated }) => groupText(untreated!))).toEqual(['untreated: C']);
  });

  test('beside dry seed alone is judged, as the soak as a whole', () => {
    expect(contest(twoBatches({ soakB: '' }))).toMatchObject({
      remarks: ['the untreated seed was not soaked in water, so this shows the soaking and the treatment together'], verdict: { rule: 'more' },
    });
  });

  test('is not blamed for weak seedlings where drops were given on one side', () => {
    const leggy = twoBatches({ up: [15, 15] }).replace('count L/A 2026-02-10, 15', 'count L/A 2026-02-10, 15, 12 leggy');
    expect(contest(leggy)).toMatchObject({ verdict: { verdict: 'harmful' } });
    const drops = leggy.replace('discard L/A', 'apply L/A 2026-02-01, GA3 100 ppm, 2 drops, 12 seedlings\n    discard L/A');
    const found = contest(drops);
    expect(found.remarks).toEqual(['seedlings of one side were given drops, so weak seedlings are not compared']);
    expect(found.verdict.verdict).not.toBe('harmful');
    expect(known(found.comparison).weak.treated).toMatchObject({ leggy: 0, of: 15 });
    const onBoth = drops.replace('discard L/B', 'apply L/B 2026-02-01, GA3 100 ppm, 2 drops, 12 seedlings\n    discard L/B');
    expect(contest(onBoth)).toMatchObject({ remarks: [], verdict: { verdict: 'harmful' } });
  });

  test('is compared with seed that was treated after all up to then, and that is said', () => {
    const source = `
      lot L Iris alba, 60 seeds
      split L, A 20 seeds, B 20 seeds
      soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak L/B 2026-01-10 19:00, water, 24 h
      sow L/A 2026-01-11 19:00
      sow L/B 2026-01-11 19:00
      count L/A 2026-02-10, 15
      count L/B 2026-02-10, 1
      soak L/B 2026-02-11 19:00, GA3 500 ppm, 24 h
      count L/B 2026-03-10, 14
    `;
    const { contests, groups } = trial(source);
    expect(groups).toHaveLength(2);
    expect(contests[0]).toMatchObject({ remarks: ['L/B is compared up to the day on which it was soaked itself'], verdict: { rule: 'more' } });
    expect(known(contests[0]!.comparison).germinated.untreated).toEqual({ x: 1, n: 20 });
  });

  test.each([
    ['split L/B 2026-02-11, C 8 seeds', 'seed was split off it'],
    ['send L/B 2026-02-11, 8 seeds, to a friend', 'seed of it left'],
  ])('is compared with seed of which some was taken away up to then, and that is said: %s', (record, how) => {
    const more = 'count L/B 2026-03-10, 4\n    discard L/A 2026-03-11';
    const { remarks, comparison } = contest(twoBatches({ up: [15, 1] }).replace('discard L/A 2026-02-11', `${record}\n    ${more}`)
      .replace('discard L/B 2026-02-11', ''));
    expect(remarks).toEqual([`L/B is compared up to the day on which ${how}`]);
    expect(known(comparison).germinated.untreated).toEqual({ x: 1, n: 20 });
  });

  test('that is the rest of an earlier sowing is compared with the other part of that rest', () => {
    const { contests } = trial(`
      lot L Iris alba, 60 seeds
      sow L 2026-01-11
      count L 2026-03-01, 20
      split L 2026-03-02, A 20 seeds, B 20 seeds
      soak L/A 2026-03-02 19:00, GA3 500 ppm, 24 h
      soak L/B 2026-03-02 19:00, water, 24 h
      count L/A 2026-04-01, 15
      count L/B 2026-04-01, 3
    `);
    expect(contests).toMatchObject([{ alsoDiffers: [], verdict: { rule: 'more' } }]);
    expect(contests[0]!.untreated!.batches.map(({ batch }) => batch.path)).toEqual(['L/B']);
  });

  test('on open batches is judged so far', () => {
    const open = twoBatches({ up: [2, 2] }).replace(/ *discard.*\n/g, '');
    expect(contest(open).verdict).toMatchObject({ rule: 'still-open', verdict: 'cannot tell', sentence: expect.stringMatching(/^Cannot tell yet: /) });
    const more = twoBatches().replace(/ *discard.*\n/g, '');
    expect(contest(more).verdict.sentence).toMatch(/^Worth repeating so far: by day 30, /);
  });

  test('is compared by seed that was not lost', () => {
    const lossy = twoBatches().replace('count L/B 2026-02-10, 5', 'count L/B 2026-02-10, 5, 8 lost');
    expect(known(contest(lossy).comparison).germinated.untreated).toEqual({ x: 5, n: 12 });
  });
});

describe('an odd dish', () => {
  const dishes = (last: number) => {
    const names = ['A1', 'A2', 'A3', 'A4', 'B1', 'B2', 'B3', 'B4'];
    const each = (line: (name: string) => string) => names.map(line).join('\n');
    const up: Record<string, number> = { A1: 18, A2: 18, A3: 18, A4: last };
    return `
lot L Iris alba, 220 seeds
split L, ${names.map(name => `${name} 25 seeds`).join(', ')}
${each(name => `soak L/${name} 2026-01-10 19:00, ${name.startsWith('A') ? 'GA3 500 ppm' : 'water'}, 24 h`)}
${each(name => `sow L/${name} 2026-01-11 19:00`)}
${each(name => `count L/${name} 2026-02-10, ${up[name] ?? 10}`)}
`;
  };

  test('is none that was only looked at on another day', () => {
    const source = dishes(8).replace('count L/A4 2026-02-10, 8', 'count L/A4 2026-01-20, 8\ncount L/A4 2026-02-20, 10');
    expect(contest(source).remarks).toEqual([]);
    expect(replicatesText(contest(source).treated)).toMatch(/; how far they differ is unknown \(they were not looked at on the same day\)$/);
    // The evening before is the same look.
    expect(contest(dishes(8).replace('count L/A4 2026-02-10', 'count L/A4 2026-02-09')).remarks).toHaveLength(1);
  });

  test('is named beside the verdict, and stays in the comparison', () => {
    const found = contest(dishes(8));
    expect(found.remarks).toEqual(['L/A4 does not go with the other dishes of its side (8 of 25, the others 54 of 75): look for what was different there']);
    expect(known(found.comparison).germinated.treated).toEqual({ x: 62, n: 100 });
    expect(contest(dishes(14)).remarks).toEqual([]);
  });
});
