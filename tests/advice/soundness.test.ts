/** Doses by their sound seedlings, lots that show it alone or together, and what untreated seed really did. */
import { describe, expect, test } from 'vitest';
import { adviceOn, answerOn, pageOn } from './helpers.ts';

const packet = 'lot NEW-26 Gentiana lutea, 40 seeds, collected 2026-09';

/** A part of a lot: soaked, sown, counted after a month, and cut open in April. */
function part(
  path: string, soak: string, sown: number, up: number, later: readonly string[] = [], year = 2026,
): string {
  return `
    soak ${path} ${year}-01-10 19:00, ${soak}, 24 h
    sow ${path} ${year}-01-11 19:00, ${sown} seeds, 15 C
    count ${path} ${year}-02-11, ${up}
    ${later.join('\n')}
    cut ${path} ${year}-04-11, ${sown - up} fresh
  `;
}

describe('of several doses', () => {
  const source = `
    lot GEN-25 Gentiana lutea, 90 seeds
    split GEN-25, A 30 seeds, B 30 seeds, C 30 seeds
    ${part('GEN-25/A', 'GA3 100 ppm', 30, 12)}
    ${part('GEN-25/B', 'GA3 1000 ppm', 30, 28, ['count GEN-25/B 2026-03-11, 26 died'])}
    ${part('GEN-25/C', 'water', 30, 1)}
  `;

  test('the one with the most sound seedlings goes first, as in the report, and the words say so', () => {
    expect(answerOn(`${source}\n${packet}`)).toMatch(/^Treat most of it: GA3 100 ppm, 24 h\. It paid in one lot\./);
    const said = pageOn(`${source}\n${packet}`)['What your records say']!;
    expect(said).toContain('Compared with untreated seed, GA3 100 ppm gave the most sound seedlings of these doses so far and GA3 1000 ppm the fewest. '
      + 'The verdicts say what of that is more than chance.');
    expect(said.at(-1)).toContain('Best dose: 100 ppm.');
  });

  test('the one with the most sound seedlings goes first where both paid and neither is shown to be the best', () => {
    const both = source.replace('/A 2026-02-11, 12', '/A 2026-02-11, 20').replace('/A 2026-04-11, 18', '/A 2026-04-11, 10')
      .replace('26 died', '12 died');
    const { choice, species } = adviceOn(`${both}\n${packet}`);
    expect(species[0]!.doses.map(({ ppm, verdict }) => [ppm, verdict])).toEqual([[100, 'worth repeating'], [1000, 'worth repeating']]);
    expect(pageOn(`${both}\n${packet}`)['What your records say']!.at(-1)).toContain('No best dose: ');
    expect(choice).toMatchObject({ kind: 'treat', offer: { text: 'GA3 100 ppm' } });
    const fewerDied = both.replace('12 died', '2 died');
    expect(adviceOn(`${fewerDied}\n${packet}`).choice).toMatchObject({ kind: 'treat', offer: { text: 'GA3 1000 ppm' } });
  });

  test('one that a report names as the best goes before another that was tried in more lots', () => {
    const second = `
      lot GEN-24 Gentiana lutea, 60 seeds
      split GEN-24, B 30 seeds, C 30 seeds
      ${part('GEN-24/B', 'GA3 1000 ppm', 30, 28, [], 2025)}
      ${part('GEN-24/C', 'water', 30, 1, [], 2025)}
    `;
    expect(answerOn(`${source}\n${second}\n${packet}`)).toMatch(/^Treat most of it: GA3 100 ppm/);
    const alone = source.replace('2026-03-11, 26 died', '2026-03-11, 10 died');
    expect(answerOn(`${alone}\n${second}\n${packet}`)).toMatch(/^Treat most of it: GA3 1000 ppm, 24 h\. It paid in 2 lots\./);
  });

  test('one that paid with fewer deaths goes before another that was tried in more lots but paid in no more', () => {
    const trial = (id: string, dose: number, up: number, died: number, year: number) => `
      lot ${id} Gentiana lutea, 60 seeds
      split ${id}, A 30 seeds, B 30 seeds
      ${part(`${id}/A`, `GA3 ${dose} ppm`, 30, up, died > 0 ? [`count ${id}/A ${year}-03-11, ${died} died`] : [], year)}
      ${part(`${id}/B`, 'water', 30, 3, [], year)}
    `;
    const lots = [
      trial('G-1', 500, 27, 0, 2022), trial('G-2', 500, 22, 22, 2023), trial('G-3', 500, 20, 20, 2024),
      trial('G-4', 100, 25, 0, 2025), packet,
    ];
    expect(adviceOn(lots.join('\n')).species[0]!.doses.map(({ ppm, verdict, lots: { length }, paidIn }) => (
      [ppm, verdict, length, paidIn.length]))).toEqual([[500, 'worth repeating', 3, 1], [100, 'worth repeating', 1, 1]]);
    expect(answerOn(lots.join('\n'))).toMatch(/^Treat most of it: GA3 100 ppm, 24 h\. It paid in one lot\./);
  });

  test('none did better than another where they gave as many', () => {
    const same = source.replace(/count GEN-25\/B .*\n.*26 died/, 'count GEN-25/B 2026-02-11, 12').replace('2 fresh', '18 fresh');
    expect(pageOn(`${same}\n${packet}`)['What your records say']).toContain(
      'Compared with untreated seed, these doses gave equally many sound seedlings so far. The verdicts say what of that is more than chance.');
  });
});

describe('a dose that was tried in several lots', () => {
  /** The treated and the untreated seed that came up, of 30 each, winter by winter. */
  const lots = (...ups: readonly (readonly [number, number])[]) => [...ups.map(([treated, untreated], i) => `
    lot G-${i} Gentiana lutea, 60 seeds
    split G-${i}, A 30 seeds, B 30 seeds
    ${part(`G-${i}/A`, 'GA3 500 ppm', 30, treated, [], 2023 + i)}
    ${part(`G-${i}/B`, 'water', 30, untreated, [], 2023 + i)}
  `), packet].join('\n');

  test.each([
    [[[20, 3], [20, 3]], 'It paid in 2 lots.'],
    [[[20, 3], [0, 0]], 'It was tried in 2 lots and paid in one of them, and together they show that it pays.'],
    [[[20, 3], [20, 3], [0, 0]], 'It was tried in 3 lots and paid in 2 of them, and together they show that it pays.'],
    [[[14, 8], [14, 8], [14, 8]], 'It was tried in 3 lots, and together they show that it pays, though none does alone.'],
  ] as const)('is said to have paid in those that show it: %j', (ups, told) => {
    expect(answerOn(lots(...ups))).toContain(told);
  });

  test('is said to have weak seedlings where they died more often than untreated ones', () => {
    const died = (n: number) => lots([27, 3], [24, 3])
      .replace('count G-1/A 2024-02-11, 24', `count G-1/A 2024-02-11, 24, ${n} died`);
    expect(answerOn(died(22))).toBe('Treat most of it: GA3 500 ppm, 24 h. It was tried in 2 lots and paid in one of them, and '
      + 'together they show that it pays, but 22 of 51 treated seedlings are weak (leggy, abnormal or dead). '
      + 'Treat 30 seeds and leave 10 untreated.');
    expect(pageOn(died(22))['What your records say']![1]).toMatch(
      /^Worth repeating: in 2 lots [^.]*\. It comes at a price: 22 of 51 treated seedlings are weak \(leggy, abnormal or dead\) and 0 of 6 untreated\.$/);
    expect(answerOn(died(2))).not.toContain('weak');
  });

  test('says of all doses together what it says of each where seedlings died', () => {
    const thin = lots([27, 20], [24, 20], [30, 20]).replace('soak G-2/A 2025-01-10 19:00, GA3 500', 'soak G-2/A 2025-01-10 19:00, GA3 100')
      .replaceAll(/count (G-[01])\/A (\d+)-02-11, (\d+)/g, 'count $1/A $2-02-11, $3, 22 died');
    const [, each, , , , , , together] = pageOn(thin)['What your records say']!;
    expect(each).toMatch(/^Harmful: in 2 lots .* 44 of 51 treated seedlings are weak \(leggy, abnormal or dead\) and 0 of 40 untreated\.$/);
    expect(together).toMatch(/^[^:]*: in 3 lots .*\b44 of 81 treated seedlings are weak \(leggy, abnormal or dead\) and 0 of 60 untreated/);
  });

  test('has no word of a table of plans, which is not on the page, where a trial is advised', () => {
    const divided = pageOn(lots([9, 6]))['How to divide it']!.join(' ');
    expect(divided).toMatch(/the verdict is “worth repeating” 4 times in 5 if .* It is assumed that you count both sides on the same days/);
    expect(divided).toMatch(/Sown in \d dishes a side, it also shows whether dishes differ; then \d+ % of the treated seed must germinate\./);
    expect(divided).not.toMatch(/In several dishes|So much must germinate/);
  });

  test('names those that show it', () => {
    const { choice } = adviceOn(lots([20, 3], [0, 0]));
    expect(choice).toMatchObject({ kind: 'treat', tried: { lots: [{ id: 'G-0' }, { id: 'G-1' }], paidIn: [{ id: 'G-0' }] } });
  });

  test('may still change where seed may germinate', () => {
    const open = lots([20, 3], [0, 0]).replaceAll(/cut G-1.*/g, '');
    expect(answerOn(open)).toContain('and together they show that it pays so far.');
  });
});

describe('untreated seed in the cold that was never sown', () => {
  const source = (later: string) => `
    lot NEW-26 Paris quadrifolia, 60 seeds, collected 2026-07
    lot PAR-25 Paris quadrifolia, 40 seeds, collected 2025-07
    lot PAR-26 Paris quadrifolia, 60 seeds, collected 2026-07
    split PAR-25, A 20 seeds, B 20 seeds
    soak PAR-25/A 2026-01-03 07:00, GA3 500 ppm, 24 h
    soak PAR-25/B 2026-01-03 07:00, water, 24 h
    sow PAR-25/A 2026-01-04
    sow PAR-25/B 2026-01-04
    count PAR-25/A 2026-01-25, 18
    count PAR-25/B 2026-01-25, 18
    discard PAR-25/A 2026-04-01
    discard PAR-25/B 2026-04-01
    chill PAR-26 2026-09-15, 4 C, 12 weeks
    count PAR-26 2026-10-20, 0
    ${later}
  `;

  test('may still germinate, so it does not count as seed that did not', () => {
    expect(answerOn(source(''))).toBe(
      'Leave it untreated: untreated seed of Paris quadrifolia germinated well and soon in your own records.');
    expect(pageOn(source(''))['Untreated seed']!.join()).not.toContain('Of all your untreated seed');
  });

  test.each(['cut PAR-26 2026-10-21, 60 empty', 'warm PAR-26 2026-10-21, 20 C', 'sow PAR-26 2026-09-16, 20 C'])(
    'counts once it was cut, warmed or sown: %s', later => {
      const counted = `${source(later)}\n${later.startsWith('cut') ? '' : 'count PAR-26 2026-11-20, 0'}`;
      expect(answerOn(counted)).toMatch(/^Try GA3 500 ppm/);
      expect(pageOn(counted)['Untreated seed']).toContain(
        'Of all your untreated seed together 18 of 80 germinated, so that lot alone does not decide.');
    });

  test('is left out of the sum that the page tells, and of the plan, and said to be', () => {
    const other = `
      lot PAR-24 Paris quadrifolia, 40 seeds
      sow PAR-24 2025-01-04
      count PAR-24 2025-03-04, 0
    `;
    const page = pageOn(source(other));
    expect(page['Untreated seed']).toContain('Of all your untreated seed together, without seed that still waits in the cold, '
      + '18 of 60 germinated, so that lot alone does not decide.');
    expect(page['How to divide it']!.join()).toContain(
      '30 % is how much of your untreated seed has germinated so far, without seed that still waits in the cold.');
  });
});

describe('untreated seed that germinated well and soon', () => {
  const lot = (first: string, later: string) => `
    lot OLD-24 Gentiana lutea, 90 seeds, collected 2024
    split OLD-24, A 30 seeds, B 30 seeds
    soak OLD-24/A 2024-10-10 19:00, GA3 500 ppm, 24 h
    soak OLD-24/B 2024-10-10 19:00, water, 24 h
    ${['A', 'B'].map(name => first.replaceAll('PART', `OLD-24/${name}`)).join('\n')}
    sow OLD-24/A 2025-01-04, 30 seeds, 15 C
    sow OLD-24/B 2025-01-04, 30 seeds, 15 C
    count OLD-24/A 2025-01-20, 26
    count OLD-24/B 2025-01-20, 27
    ${later}
    cut OLD-24/A 2025-04-20, 4 fresh
    cut OLD-24/B 2025-04-20, 3 fresh
  `;
  const chilled = lot('chill PART 2024-10-11, 4 C, 12 weeks', '');

  test('after a cold stage is told with that stage, in the answer and below it', () => {
    expect(answerOn(chilled, 'OLD-24')).toBe(
      'Leave it untreated: untreated seed of Gentiana lutea germinated well and soon in your own records, after 4 C 12 weeks, '
      + 'though none of it was as old as this seed.');
    expect(pageOn(chilled, 'OLD-24')['Untreated seed']).toEqual([
      'Well and soon after 4 C 12 weeks: 27 of 30 untreated seeds germinated (90 %, 95 % interval 74 to 97) in B, half of the seed by day 16. From OLD-24 (journal.germ:1).',
      expect.stringMatching(/^None of it was as old/),
    ]);
    expect(answerOn(lot('scarify PART 2024-10-11, sandpaper\nchill PART 2024-10-12, 4 C, 12 weeks', ''), 'OLD-24'))
      .toContain('records, after scarification, then 4 C 12 weeks, though none');
  });

  test('by itself is told without, whatever else was chilled', () => {
    const plain = `
      lot OLD-23 Gentiana lutea, 40 seeds
      sow OLD-23 2024-01-11, 40 seeds, 15 C
      count OLD-23 2024-01-25, 36
      ${chilled}
    `;
    expect(answerOn(plain, 'OLD-24')).toMatch(/germinated well and soon in your own records\.$/);
    expect(pageOn(plain, 'OLD-24')['Untreated seed']?.[0]).toMatch(/^Fast enough by itself: 36 of 40/);
  });

  test('as the rest of seed that had begun to germinate is told as that', () => {
    const rest = `
      lot OLD-25 Gentiana lutea, 60 seeds
      sow OLD-25 2025-01-04, 60 seeds, 15 C
      count OLD-25 2025-01-10, 10
      split OLD-25 2025-01-11, B 40 seeds
      count OLD-25/B 2025-01-25, 36
      cut OLD-25/B 2025-05-20, 4 fresh
      ${packet}
    `;
    expect(pageOn(rest)['Untreated seed']?.[0]).toMatch(/^Well and soon, as the rest of seed that had begun to germinate: 36 of 40 .* From OLD-25/);
  });

  test('counted from the soak of the other part is told so, and nothing below denies it', () => {
    const late = `
      lot OLD-25 Gentiana lutea, 60 seeds
      split OLD-25, A 30 seeds, B 30 seeds
      sow OLD-25/A 2025-06-10, 30 seeds, 15 C
      sow OLD-25/B 2025-06-10, 30 seeds, 15 C
      count OLD-25/A 2025-09-10, 0
      count OLD-25/B 2025-09-10, 0
      soak OLD-25/A 2025-09-10 20:00, GA3 500 ppm, 24 h
      count OLD-25/A 2025-09-25, 26
      count OLD-25/B 2025-09-25, 27
      discard OLD-25/A 2026-03-01
      discard OLD-25/B 2026-03-01
      lot SLOW-24 Gentiana lutea, 200 seeds
      sow SLOW-24 2024-01-10, 200 seeds, 15 C
      count SLOW-24 2024-03-20, 200
      ${packet}
    `;
    expect(answerOn(late)).toBe('Leave it untreated: untreated seed of Gentiana lutea germinated well and soon in your own records, '
      + 'counted from the day on which the treated part was soaked.');
    expect(pageOn(late)['Untreated seed']?.join()).not.toContain('None of it has germinated');
  });

  test('is told with the seedlings that died', () => {
    const died = lot('chill PART 2024-10-11, 4 C, 12 weeks', 'count OLD-24/B 2025-03-20, 5 died');
    expect(answerOn(died, 'OLD-24')).toMatch(/, after 4 C 12 weeks, though none of it was as old as this seed\. Of 27 untreated seedlings in your records, 5 died\.$/);
    expect(answerOn(chilled, 'OLD-24')).not.toContain('died');
  });

  test('was not as old as seed that has lain two years more, though the year of the harvest leaves room for both', () => {
    const aged = (collected: string, now: string) => pageOn(`${chilled.replace('collected 2024', `collected ${collected}`)}
      lot NEW-26 Gentiana lutea, 40 seeds, collected ${now}`)['Untreated seed']!.at(-1);
    const rule = 'Ages within half a year count as the same (common practice, no source).';
    expect(pageOn(chilled, 'OLD-24')['Untreated seed']!.at(-1)).toBe(`None of it was as old as this seed, which is 1 to 2 years old. ${rule}`);
    expect(aged('2024-09-01', '2026-09-01')).toBe(`All of it was as old as this seed, which is less than 1 year old. ${rule}`);
    expect(aged('2024-09-01', '2025-09-01')).toBe(`None of it was as old as this seed, which is 1 year old. ${rule}`);
    expect(aged('2024-09-01', '2026')).toBe(`All of it may have been as old as this seed, which is less than 1 year old. ${rule}`);
    const two = `${chilled.replace('collected 2024', 'collected 2024-09-01')}
      lot OLD-23 Gentiana lutea, 40 seeds, collected 2022
      sow OLD-23 2023-01-11, 40 seeds, 15 C
      count OLD-23 2023-05-25, 3
      lot OLD-22 Gentiana lutea, 40 seeds, collected 2020-09-01
      sow OLD-22 2023-01-11, 40 seeds, 15 C
      count OLD-22 2023-05-25, 2
      lot NEW-26 Gentiana lutea, 40 seeds, collected 2026-09-01`;
    expect(pageOn(two)['Untreated seed']!.at(-1)).toBe(
      `As old as this seed, which is less than 1 year old: 27 of 30 in OLD-24; perhaps also 3 of 40 in OLD-23. ${rule}`);
    expect(aged('2024', '2026')).toBe(`All of it may have been as old as this seed, which is less than 1 year old. ${rule}`);
  });
});
