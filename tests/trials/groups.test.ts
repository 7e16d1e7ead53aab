import { describe, expect, test } from 'vitest';
import { groupTexts, trial } from './helpers.ts';

describe('the batches of a lot', () => {
  test('are put together by what was done to their seed, untreated ones first', () => {
    expect(groupTexts(trial(`
      lot L Iris alba, 100 seeds
      split L, A 10 seeds, B 10 seeds, C 10 seeds, D 10 seeds, E 10 seeds, F 10 seeds, G 10 seeds, H 10 seeds, I 10 seeds, J 10 seeds
      day 2026-01-10
      soak L/A 19:00, GA3 500 ppm, 24 h
      soak L/B 19:00, GA3 250 ppm, 24 h
      soak L/C 19:00, GA3 0.05 %, 24 h
      soak L/D 19:00, water, 24 h
      soak L/E 19:00, GA3 500 ppm, KNO3 0.2 %, 24 h
      soak L/F 19:00, KNO3 0.2 %, GA3 500 ppm, 24 h
      soak L/G 19:00, GA3 500 ppm, KNO3 0.1 %, 24 h
      soak L/H 19:00, KNO3 500 ppm, 24 h
      soak L/I 19:00, GA3 unmeasured, 24 h
      soak L/J 19:00, water, GA3 500 ppm, 24 h
      day 2026-01-11
      ${'ABCDEFGHIJ'.split('').map(part => `sow L/${part} 19:00`).join('\n')}
      day 2026-02-01
      ${'ABCDEFGHIJ'.split('').map(part => `count L/${part}, 1`).join('\n')}
    `))).toEqual(['untreated: D', 'GA3 500: A C J', 'GA3 250: B', 'GA3 500, KNO3 2000: E F', 'GA3 500, KNO3 1000: G', 'KNO3 500: H', 'GA3 unmeasured: I']);
  });

  test('that were divided after the soak are replicates, and so are doses from two stocks that nobody could tell apart', () => {
    expect(groupTexts(trial(`
      lot L Iris alba, 100 seeds
      stock G1 2026-01-01, GA3 50 mg, 100 mL
      stock G2 2026-01-01, GA3 51 mg, 100 mL
      split L, A 40 seeds, B 20 seeds
      soak L/A 2026-01-10 19:00, G1 10 mL, 24 h
      soak L/B 2026-01-10 19:00, G2 10 mL, 24 h
      split L/A 2026-01-11 19:00, 1 20 seeds, 2 20 seeds
      sow L/A/1 2026-01-11 19:10
      sow L/A/2 2026-01-11 19:10
      sow L/B 2026-01-11 19:10
      count L/A/1 2026-02-01, 3
      count L/A/2 2026-02-01, 4
      count L/B 2026-02-01, 4
    `))).toEqual(['GA3 500: A/1 A/2 B']);
  });

  test('whose strength is written twice, each time another, are of no dose, and replicates only of the same words', () => {
    const texts = groupTexts(trial(`
      lot L Iris alba, 100 seeds
      stock G1 2026-01-01, GA3 180 mg, 100 mL
      split L, A 20 seeds, B 20 seeds, C 20 seeds, D 20 seeds
      soak L/A 2026-01-10 19:00, G1 400 ppm, 24 h
      soak L/B 2026-01-10 19:00, G1 800 ppm, 24 h
      soak L/C 2026-01-10 19:00, G1 400 ppm, 24 h
      soak L/D 2026-01-10 19:00, G1 5 mL, GA3 400 ppm, 20 mL, 24 h
      sow L/A 2026-01-11 19:10
      sow L/B 2026-01-11 19:10
      sow L/C 2026-01-11 19:10
      sow L/D 2026-01-11 19:10
      count L/A 2026-02-01, 3
      count L/B 2026-02-01, 4
      count L/C 2026-02-01, 4
      count L/D 2026-02-01, 4
    `));
    expect(texts).toEqual(['GA3 unmeasured: A C', 'GA3 unmeasured: B', 'GA3 unmeasured: D']);
  });

  test('are told apart by how long they lay in the soak, where that is known', () => {
    expect(groupTexts(trial(`
      lot L Iris alba, 100 seeds
      split L, A 10 seeds, B 10 seeds, C 10 seeds, D 10 seeds
      soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak L/B 2026-01-10 19:00, GA3 500 ppm
      lift L/B 2026-01-11 18:45
      soak L/C 2026-01-10 19:00, GA3 500 ppm, 12 h
      soak L/D 2026-01-10, GA3 500 ppm
      sow L/A 2026-01-11 19:00
      sow L/B 2026-01-11 19:00
      sow L/C 2026-01-11 07:00
      sow L/D 2026-01-11
      count L/A 2026-02-01, 1
      count L/B 2026-02-01, 1
      count L/C 2026-02-01, 1
      count L/D 2026-02-01, 1
    `))).toEqual(['GA3 500: A B D', 'GA3 500: C']);
  });

  test('are told apart by whether the soak came before the cold or after it', () => {
    expect(groupTexts(trial(`
      lot L Iris alba, 100 seeds
      split L, A 10 seeds, B 10 seeds
      soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
      chill L/A 2026-01-11, 4 C, 60 days
      chill L/B 2026-01-10, 4 C, 60 days
      soak L/B 2026-03-11 19:00, GA3 500 ppm, 24 h
      sow L/A 2026-03-12
      sow L/B 2026-03-12
      count L/A 2026-04-01, 1
      count L/B 2026-04-01, 1
    `))).toEqual(['GA3 500: A', 'GA3 500: B']);
  });

  test('are told apart by whether their seedlings were given drops', () => {
    expect(groupTexts(trial(`
      lot L Iris alba, 100 seeds
      split L, A 10 seeds, B 10 seeds
      sow L/A 2026-01-11
      sow L/B 2026-01-11
      count L/A 2026-02-01, 5
      count L/B 2026-02-01, 5
      apply L/B 2026-02-02, GA3 100 ppm, 2 drops
      count L/A 2026-03-01, 1
      count L/B 2026-03-01, 1
    `))).toEqual(['untreated: A', 'untreated: B']);
  });

  test('are taken together where nobody wrote when the seed was lifted, however late it went on', () => {
    expect(groupTexts(trial(`
      lot L Iris alba, 100 seeds
      split L, A 10 seeds, B 10 seeds
      soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak L/B 2026-01-10 19:00, GA3 500 ppm
      sow L/A 2026-01-11 19:00
      sow L/B 2026-01-10 23:00
      count L/A 2026-02-01, 5
      count L/B 2026-02-01, 5
    `))).toEqual(['GA3 500: A B']);
  });

  test('of untreated seed are told apart by whether it lay in water', () => {
    expect(groupTexts(trial(`
      lot L Iris alba, 100 seeds
      split L, A 10 seeds, B 10 seeds, C 10 seeds
      soak L/A 2026-01-10 19:00, water, 24 h
      soak L/B 2026-01-10 19:00, water, 24 h
      sow L/A 2026-01-11
      sow L/B 2026-01-11
      sow L/C 2026-01-11
      count L/A 2026-02-01, 1
      count L/B 2026-02-01, 1
      count L/C 2026-02-01, 1
    `))).toEqual(['untreated: A B', 'untreated: C']);
  });

  test('are untreated where they were only washed, but no replicates of those that were not', () => {
    const { groups } = trial(`
      lot L Iris alba, 100 seeds
      split L, A 10 seeds, B 10 seeds
      soak L/A 2026-01-10 19:00, peroxide 1 %, 30 min
      soak L/B 2026-01-10 19:00, water, 30 min
      sow L/A 2026-01-10
      sow L/B 2026-01-10
      count L/A 2026-02-01, 1
      count L/B 2026-02-01, 1
    `);
    expect(groups.map(({ treatment, batches }) => [treatment.length, batches.length])).toEqual([[0, 1], [0, 1]]);
  });

  test.each([
    ['temperature', ', 15 C', ', 20 C'],
    ['warmth of the night', ', 20/10 C', ', 20 C'],
    ['medium', ', in grit', ', in loam'],
    ['regime', ', regime berries', ''],
    ['name of a regime that nobody described', ', regime meadow', ', regime bog'],
    ['regime, described or not,', ', regime meadow', ''],
  ])('are no replicates where the %s differs', (_, a, b) => {
    const source = (c: string, d: string) => `
      regime berries, warm 20 C 60 days, chill 4 C 90 days
      lot L Iris alba, 100 seeds
      split L, A 10 seeds, B 10 seeds
      sow L/A 2026-01-10${c}
      sow L/B 2026-01-11${d}
      count L/A 2026-02-01, 1
      count L/B 2026-02-01, 1
    `;
    expect(groupTexts(trial(source(a, b)))).toEqual(['untreated: A', 'untreated: B']);
    expect(groupTexts(trial(source(b, b)))).toEqual(['untreated: A B']);
  });

  test('are replicates at temperatures that no thermometer of a bench tells apart, and in media spelt alike', () => {
    expect(groupTexts(trial(`
      lot L Iris alba, 100 seeds
      split L, A 10 seeds, B 10 seeds
      sow L/A 2026-01-10, 18 C, in Loam and  grit
      sow L/B 2026-01-10, 65 F, in loam and grit
      count L/A 2026-02-01, 1
      count L/B 2026-02-01, 1
    `))).toEqual(['untreated: A B']);
  });

  test('are no replicates when they were sown more than 3 days apart', () => {
    expect(groupTexts(trial(`
      lot L Iris alba, 100 seeds
      split L, A 10 seeds, B 10 seeds, C 10 seeds
      sow L/A 2026-01-10
      sow L/B 2026-01-13
      sow L/C 2026-01-15
      count L/A 2026-02-01, 1
      count L/B 2026-02-01, 1
      count L/C 2026-02-01, 1
    `))).toEqual(['untreated: A B', 'untreated: C']);
  });

  test('are replicates up to the age that both reached: what one of them got later does not part them', () => {
    expect(groupTexts(trial(`
      lot L Iris alba, 100 seeds
      split L, A 10 seeds, B 10 seeds
      sow L/A 2026-01-10
      sow L/B 2026-01-10
      count L/A 2026-03-01, 4
      count L/B 2026-03-01, 3
      cut L/A 2026-03-02, 6 fresh
      chill L/B 2026-03-02, 4 C, 90 days
      count L/B 2026-06-10, 5
    `))).toEqual(['untreated: A B']);
  });

  test('that are the rest of seed which had begun to germinate are no replicates of fresh seed', () => {
    const { groups } = trial(`
      lot L Iris alba, 100 seeds
      split L, A 40 seeds, B 20 seeds
      sow L/A 2026-01-10
      sow L/B 2026-01-10
      count L/A 2026-03-01, 10
      count L/B 2026-03-01, 5
      move L/A 2026-03-01, at frame
      split L/A 2026-03-02, 1 15 seeds, 2 15 seeds
      count L/A/1 2026-04-01, 2
      count L/A/2 2026-04-01, 3
      count L/B 2026-04-01, 3
    `);
    expect(groups.map(({ batches }) => batches.map(({ batch }) => batch.path))).toEqual([['L/A', 'L/B'], ['L/A/1', 'L/A/2']]);
  });

  test('count as untreated up to the day on which seed that had been watched was treated after all', () => {
    const { groups } = trial(`
      lot L Iris alba, 100 seeds
      split L, A 20 seeds, B 20 seeds
      soak L/A 2026-01-09 19:00, GA3 500 ppm, 24 h
      sow L/A 2026-01-10 20:00
      sow L/B 2026-01-10 20:00
      count L/A 2026-03-01, 12
      count L/B 2026-03-01, 2
      soak L/B 2026-03-02 19:00, GA3 500 ppm, 24 h
      count L/B 2026-04-01, 13
    `);
    const [first, second] = groups.map(({ batches: [one] }) => one!);
    expect([first!.batch.path, first!.treatment.length, first!.course.checks.at(-1)]).toMatchObject(['L/B', 0, { germinated: 2 }]);
    expect([second!.batch.path, second!.treatment.length, second!.course.checks.at(-1)]).toMatchObject(['L/A', 1, { germinated: 12 }]);
    expect(groups[0]!.batches[0]).toMatchObject({ endedBy: { type: 'soak' }, course: { closed: true, sown: 20 } });
  });

  test('are treated where only the cold was watched before the soak', () => {
    expect(groupTexts(trial(`
      lot L Iris alba, 100 seeds
      split L, A 20 seeds
      chill L/A 2026-01-09, 4 C, 60 days
      count L/A 2026-03-01, 0
      soak L/A 2026-03-10 19:00, GA3 500 ppm, 24 h
      sow L/A 2026-03-11 19:00
      count L/A 2026-04-01, 12
    `))).toEqual(['GA3 500: A']);
  });

  test.each([
    ['was not counted', 'sow L/A 2026-01-10', 'no counts yet'],
    ['has no number', 'sow L 2026-01-10\ncount L 2026-02-01, 3', 'the number of seeds is unknown'],
    ['has no day 0', 'count L/A 2026-02-01, 3', 'it has no day 0, because it was not sown, lifted from a soak or put into a stage'],
    ['has an error', 'sow L/A 2026-01-10\ncount L/A 2026-02-01, 3\ncount L/A 2026-02-08, 3 x', 'a record of it, or of the seed it was split from, has an error'],
    ['lay in nobody knows what', 'soak L/A 2026-01-09, XYZ 5 mL\nsow L/A 2026-01-10\ncount L/A 2026-02-01, 3', 'what it was soaked in is unknown (XYZ)'],
    ['potted more than came up', 'sow L/A 2026-01-10\npot L/A 2026-01-30, 9 seedlings\ncount L/A 2026-02-01, 3', '9 potted seedlings are more than its counts have (3)'],
    ['counts too many', 'sow L/A 2026-01-10\ncount L/A 2026-02-01, 30', 'more seeds are accounted for on day 22 than were sown'],
  ])('are left out with the reason where one %s', (_, records, reason) => {
    const { leftOut, groups } = trial(['lot L Iris alba', 'split L, A 20 seeds', ...records.split('\n')].join('\n'));
    expect(leftOut.map(({ why }) => why.undefined)).toEqual([reason]);
    expect(groups).toEqual([]);
  });

  test('without a hand laid on them are no part of the trial', () => {
    expect(trial(`
      lot L Iris alba, 100 seeds, at tin 1
      split L, A 20 seeds
      note L/A 2026-01-10, to be sown in spring
      soak L/A 2026-02-10 19:00, GA3 500 ppm, 24 h
    `)).toMatchObject({ groups: [], leftOut: [], contests: [] });
  });
});
