import { describe, expect, it } from 'vitest';
import { dueOf, itemsOf } from './helpers.ts';

const base = `
regime woodland, warm 20 C 12 weeks, chill 4 C 14 weeks, warm 18 C 12 weeks
lot PAR-26 Paris polyphylla, 16 seeds
`;
const stages = (source: string, now: string) => itemsOf(base + source, now, 'stage').map(({ group, what, action }) => [group, what, action]);

describe('the end of a stage', () => {
  it('is due after its time span', () => {
    const source = `${base}chill PAR-26 2026-01-18, 4 C, 14 weeks`;
    expect(dueOf(source, '2026-02-01')).toEqual(['later: 2026-04-26 stage PAR-26']);
    expect(dueOf(source, '2026-04-20')).toEqual(['this week: 2026-04-26 stage PAR-26']);
    expect(dueOf(source, '2026-04-26')).toEqual(['today: 2026-04-26 stage PAR-26']);
    expect(dueOf(source, '2026-04-27')).toEqual(['overdue: 2026-04-26 stage PAR-26']);
  });

  it('goes by months and leap days of the calendar', () => {
    const end = (date: string, span: string) => dueOf(`${base}chill PAR-26 ${date}, ${span}`, date)[0];
    expect(end('2027-11-30', '3 months')).toBe('later: 2028-02-29 stage PAR-26');
    expect(end('2026-11-30', '3 months')).toBe('later: 2027-02-28 stage PAR-26');
    expect(end('2028-02-29', '1 year')).toBe('later: 2029-02-28 stage PAR-26');
    expect(end('2028-02-01', '30 days')).toBe('later: 2028-03-02 stage PAR-26');
    expect(end('2026-12-31', '36 h')).toBe('this week: 2027-01-02 stage PAR-26');
  });

  it('is not due where no time span is written, and not once another stage, a sowing or the close has come', () => {
    expect(stages('chill PAR-26 2026-01-18, 4 C', '2027-01-01')).toEqual([]);
    for (const next of ['warm PAR-26 2026-03-01', 'sow PAR-26 2026-03-01', 'discard PAR-26 2026-03-01']) {
      expect(stages(`chill PAR-26 2026-01-18, 4 C, 14 weeks\n${next}`, '2026-05-01'), next).toEqual([]);
    }
  });

  it('is that of the seed itself until the day on which it is to be divided', () => {
    const source = `${base}chill PAR-26 2026-01-18, 4 C, 2 weeks\nsplit PAR-26 2026-01-25, A 8 seeds, B 8 seeds`;
    expect(dueOf(source, '2026-01-24', 'stage')).toContain('later: 2026-02-01 stage PAR-26');
    expect(dueOf(source, '2026-01-25', 'stage')).not.toContain('later: 2026-02-01 stage PAR-26');
  });

  it('asks for the sowing of seed that was chilled before it, and for warmth after a chill of sown seed', () => {
    expect(stages('chill PAR-26 2026-01-18, 4 C, 14 weeks', '2026-02-01'))
      .toEqual([['later', 'chill 4 C 14 weeks ends', 'sow PAR-26 2026-04-26']]);
    expect(stages('sow PAR-26 2026-01-10\nchill PAR-26 2026-01-18, 4 C, 14 weeks', '2026-02-01'))
      .toEqual([['later', 'chill 4 C 14 weeks ends', 'warm PAR-26 2026-04-26']]);
  });

  it('asks for warmth where the seed was counted unsown, for a sowing would begin its days after those counts', () => {
    const towel = 'soak PAR-26 2026-01-16 19:00, water, 24 h\nlift PAR-26 2026-01-17 19:00\nchill PAR-26 2026-01-18, 4 C, 14 weeks\n';
    expect(stages(`${towel}count PAR-26 2026-03-01, 0`, '2026-04-26')).toEqual([['today', 'chill 4 C 14 weeks ends', 'warm PAR-26 2026-04-26']]);
    // What was counted of the dry seed says nothing of how it is kept now.
    expect(stages(`count PAR-26 2026-01-05, 1 lost\n${towel}`, '2026-04-26')).toEqual([['today', 'chill 4 C 14 weeks ends', 'sow PAR-26 2026-04-26']]);
  });

  it('asks for a count after a warm stage that nothing follows, until the batch was looked at', () => {
    const source = 'sow PAR-26 2026-01-10\nwarm PAR-26 2026-01-18, 20 C, 4 weeks\n';
    expect(stages(source, '2026-03-01')).toEqual([['overdue', 'warm 20 C 4 weeks ends', 'count PAR-26 2026-03-01, ']]);
    expect(stages(`${source}count PAR-26 2026-02-14, 0`, '2026-03-01')).toHaveLength(1);
    expect(stages(`${source}count PAR-26 2026-02-15, 0`, '2026-03-01')).toEqual([]);
    expect(stages(`${source}pot PAR-26 2026-02-15, 1 seedling`, '2026-03-01')).toEqual([]);
    expect(stages(`${source}note PAR-26 2026-02-15, moss is dry`, '2026-03-01')).toHaveLength(1);
    const cold = 'sow PAR-26 2026-01-10\nchill PAR-26 2026-01-18, 4 C, 4 weeks\n';
    expect(stages(`${cold}pot PAR-26 2026-02-15, 1 seedling`, '2026-03-01')).toEqual([['overdue', 'chill 4 C 4 weeks ends', 'warm PAR-26 2026-03-01']]);
  });

  it('is due on after a count, for a count takes no seed out of the cold', () => {
    const towel = 'chill PAR-26 2026-01-04, 4 C, 4 weeks, at bag 3 slot 1\n';
    const ends = [['overdue', 'chill 4 C 4 weeks ends', 'warm PAR-26 2026-03-01']];
    for (const counts of ['0', '3', '3 rotted', '12, 4 rotted']) {
      expect(stages(`${towel}count PAR-26 2026-02-01, ${counts}`, '2026-03-01'), counts).toEqual(ends);
    }
    const pot = 'sow PAR-26 2026-01-03\nchill PAR-26 2026-01-04, 4 C, 4 weeks\ncount PAR-26 2026-02-08, 0\n';
    expect(stages(pot, '2026-03-01')).toEqual([['overdue', 'chill 4 C 4 weeks ends', 'warm PAR-26 2026-03-01']]);
  });

  it('is answered by what says where the seed went on, by another stretch of it, or when nothing more can come up', () => {
    const towel = 'chill PAR-26 2026-01-04, 4 C, 4 weeks, at bag 3 slot 1\ncount PAR-26 2026-02-08, 4\n';
    const answers = ['sow PAR-26 2026-02-09, in grit', 'warm PAR-26 2026-02-09, 20 C', 'discard PAR-26 2026-02-09, soft', 'chill PAR-26 2026-02-09, 4 C',
      'count PAR-26 2026-02-09, 12 rotted, 4 emerged', 'count PAR-26 2026-02-09, 12 rotted, 4 died', 'plant PAR-26 2026-02-09, in the bog bed'];
    for (const answer of answers) expect(stages(towel + answer, '2026-03-01'), answer).toEqual([]);
    expect(stages(`${towel}chill PAR-26 2026-02-09, 4 C, 4 weeks`, '2026-03-01')).toEqual([['later', 'chill 4 C 4 weeks ends', 'warm PAR-26 2026-03-09']]);
    expect(stages(`${towel}note PAR-26 2026-02-09, still firm`, '2026-03-01')).toHaveLength(1);
  });

  it('is not due where all seed has died', () => {
    expect(stages('sow PAR-26 2026-01-10, regime woodland\ncount PAR-26 2026-02-01, 16 rotted', '2026-03-01')).toEqual([]);
    expect(stages('chill PAR-26 2026-01-10, 4 C, 4 weeks\ncount PAR-26 2026-02-01, 16 rotted', '2026-03-01')).toEqual([]);
    expect(stages('sow PAR-26 2026-01-10, regime woodland\ncount PAR-26 2026-02-01, 15 rotted', '2026-03-01')).toHaveLength(1);
  });

  it('is not due once all that came up has died, or was pricked out', () => {
    const up = 'sow PAR-26 2026-01-10, regime woodland\ncount PAR-26 2026-02-01, 2, 14 rotted\n';
    expect(stages(`${up}count PAR-26 2026-02-10, 1 died`, '2026-03-01')).toHaveLength(1);
    expect(stages(`${up}count PAR-26 2026-02-10, 2 died`, '2026-03-01')).toEqual([]);
    expect(stages(`${up}pot PAR-26 2026-02-10, 1 seedling`, '2026-03-01')).toHaveLength(1);
    expect(stages(`${up}pot PAR-26 2026-02-10, 1 seedling\nmove PAR-26 2026-02-11, at frame`, '2026-03-01')).toHaveLength(1);
    expect(stages(`${up}pot PAR-26 2026-02-10, 1 seedling\npot PAR-26 2026-02-12, 1 seedling`, '2026-03-01')).toEqual([]);
  });
});

describe('a batch that was moved', () => {
  it('is said to be once its stage is over time, since what comes next may have begun with that', () => {
    const source = 'sow PAR-26 2026-09-06, regime woodland\nmove PAR-26 2026-11-27, at fridge\n';
    const said = (now: string, more = '') => stages(source + more, now).map(([, what]) => what);
    expect(said('2026-11-28')).toEqual(['warm 20 C 12 weeks ends, chill 4 C 14 weeks comes next (regime woodland)']);
    expect(said('2026-11-29')).toEqual([
      'warm 20 C 12 weeks ends, chill 4 C 14 weeks comes next (regime woodland); moved on 2026-11-27',
    ]);
    expect(said('2027-03-10', 'chill PAR-26 2026-11-29')).toEqual([
      'chill 4 C 14 weeks ends, warm 18 C 12 weeks comes next (regime woodland)',
    ]);
  });
});

describe('in a regime', () => {
  it('the first stage begins with the sowing, and its end asks for the next one', () => {
    expect(stages('sow PAR-26 2026-09-06, regime woodland', '2026-11-28')).toEqual([[
      'this week', 'warm 20 C 12 weeks ends, chill 4 C 14 weeks comes next (regime woodland)',
      'chill PAR-26 2026-11-29, 4 C, 14 weeks',
    ]]);
  });

  it('a stage that is late is overdue since its planned end', () => {
    const source = `${base}sow PAR-26 2026-09-06, regime woodland`;
    expect(dueOf(source, '2026-12-09', 'stage')).toEqual(['overdue: 2026-11-29 stage PAR-26']);
    expect(itemsOf(source, '2026-12-09', 'stage')[0]).toMatchObject({ overdueDays: 10, action: 'chill PAR-26 2026-12-09, 4 C, 14 weeks' });
  });

  it('a record that says how long goes before the plan', () => {
    const sown = 'sow PAR-26 2026-09-06, regime woodland\n';
    expect(dueOf(`${base}${sown}chill PAR-26 2026-12-06, 4 C`, '2026-12-07', 'stage')).toEqual(['later: 2027-03-14 stage PAR-26']);
    expect(dueOf(`${base}${sown}chill PAR-26 2026-12-06, 5 C, 10 weeks`, '2026-12-07', 'stage'))
      .toEqual(['later: 2027-02-14 stage PAR-26']);
  });

  it('the last stage asks for a count at its end, until the batch was looked at', () => {
    const source = `sow PAR-26 2026-01-04, regime woodland
chill PAR-26 2026-03-29, 4 C
warm PAR-26 2026-07-05, 18 C
`;
    expect(stages(source, '2026-09-27')).toEqual([
      ['today', 'warm 18 C 12 weeks ends (regime woodland)', 'count PAR-26 2026-09-27, '],
    ]);
    expect(stages(source, '2026-10-27')).toEqual([
      ['overdue', 'warm 18 C 12 weeks ends (regime woodland)', 'count PAR-26 2026-10-27, '],
    ]);
    expect(stages(`${source}count PAR-26 2026-09-28, 3`, '2026-10-27')).toEqual([]);
    expect(stages(`${source}chill PAR-26 2026-08-01, 4 C, 2 weeks`, '2026-08-10')).toEqual([
      ['this week', 'chill 4 C 2 weeks ends (regime woodland)', 'warm PAR-26 2026-08-15'],
    ]);
    expect(stages(`${source}warm PAR-26 2026-08-01, 16 C`, '2026-09-27')).toEqual([
      ['today', 'warm 16 C 12 weeks ends (regime woodland)', 'count PAR-26 2026-09-27, '],
    ]);
  });

  it('a stage off plan is due at its own end, and the regime goes on after it', () => {
    const source = `sow PAR-26 2026-01-04, regime short
chill PAR-26 2026-02-01, 4 C, 2 weeks
`;
    const regime = 'regime short, warm 20 C 12 weeks, warm 15 C 4 weeks\n';
    expect(stages(regime + source, '2026-02-10')).toEqual([[
      'this week', 'chill 4 C 2 weeks ends, warm 15 C 4 weeks comes next (regime short)', 'warm PAR-26 2026-02-15, 15 C, 4 weeks',
    ]]);
  });

  it('a stage that is written ahead is listed as it stands, in place of the end before it', () => {
    const source = `${base}sow PAR-26 2026-09-06, regime woodland\nchill PAR-26 2026-12-20, 4 C, 14 weeks`;
    expect(dueOf(source, '2026-12-01', 'stage', 'ahead')).toEqual(['later: 2026-12-20 ahead PAR-26']);
    expect(itemsOf(source, '2026-12-01', 'ahead')[0]).toMatchObject({ what: 'chill: 4 C, 14 weeks', action: undefined });
  });
});
