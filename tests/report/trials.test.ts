import { describe, expect, it } from 'vitest';
import { reportMarkdown } from '../../server/src/report/markdown.ts';
import { reportText } from '../../server/src/report/text.ts';
import { at, reportFor } from './helpers.ts';

type Told = readonly [id: string, plant: string, treated: number, untreated: number, soak?: string];

/** Lots of treated (A) and watered (B) seed, 24 each, counted once and thrown away. */
function lots(...told: readonly Told[]): string {
  return told.flatMap(([id, plant, a, b, soak = 'GA3 500 ppm']) => [
    `lot ${id} ${plant}, 60 seeds`, `split ${id}, A 24 seeds, B 24 seeds`,
    `soak ${id}/A 2026-01-10 19:00, ${soak}, 24 h`, `soak ${id}/B 2026-01-10 19:00, water, 24 h`,
    `sow ${id}/A 2026-01-11 19:00`, `sow ${id}/B 2026-01-11 19:00`,
    `count ${id}/A 2026-02-10, ${a}`, `count ${id}/B 2026-02-10, ${b}`,
    `discard ${id}/A 2026-02-11`, `discard ${id}/B 2026-02-11`,
  ]).join('\n');
}

const now = at('2026-03-01');

describe('the trials of a lot in a report', () => {
  it('are told with the verdict and what stands behind it', () => {
    expect(reportText([reportFor(lots(['L', 'Iris alba', 18, 7]), now)])).toContain(`
  Treated against untreated
    GA3 500 ppm 24 h (A) against water 24 h (B)
      Worth repeating: by day 30, 18 of 24 treated seeds had germinated (75 %) and 7 of 24 untreated
      (29 %): 46 points more (95 % interval 18 to 65). With one dish a side, a difference between
      the two dishes themselves would look the same.
`);
    expect(reportMarkdown([reportFor(lots(['L', 'Iris alba', 18, 7]), now)])).toContain(`
### Treated against untreated

- **GA3 500 ppm 24 h (A) against water 24 h (B)**  
  Worth repeating: by day 30, 18 of 24`);
  });

  it('have replicates taken together, held against the published tolerance where that applies', () => {
    // 7 CFR 201.55: 4 replicates of 100 seeds with an average of 86 % may differ by 14 points. 88, 80, 84 and 92: 12.
    const counts = [88, 80, 84, 92];
    const journal = [
      'lot L Iris alba, 400 seeds', 'split L, 1 100 seeds, 2 100 seeds, 3 100 seeds, 4 100 seeds',
      ...counts.flatMap((n, i) => [`sow L/${i + 1} 2026-01-11`, `count L/${i + 1} 2026-02-10, ${n}`]),
    ].join('\n');
    // R 4.2.2: prop.test(c(88, 80, 84, 92), rep(100, 4)): X-squared 6.6445, df = 3, p 0.0841.
    expect(reportText([reportFor(journal, now)])).toContain(`
  Replicates
    no soak (1, 2, 3 and 4)
      344 of 400 = 86 %, 95 % interval 80 to 90 %, widened; heterogeneity chi-square 6.64, 3 df, p
      0.084; range 12 points, tolerated 14 points (7 CFR 201.55)
`);
  });

  it('name what was left out of the comparison, with the reason', () => {
    const journal = `${lots(['L', 'Iris alba', 18, 7])}\nsplit L, C 5 seeds\nsow L/C 2026-01-11`;
    expect(reportText([reportFor(journal, now)])).toContain('  Left out of the comparison\n    L/C\n      no counts yet\n');
  });

  it('keep every line within 100 columns, where no single word is wider', () => {
    const journal = lots(['L', 'Iris alba', 18, 7], ['M', 'Iris alba', 20, 9, 'GA3 500 ppm, KNO3 0.2 %, thiourea 1 %']);
    for (const options of [{}, { by: 'species' }] as const) {
      const text = reportText([reportFor(journal, now, options)]);
      expect(text.split('\n').filter(line => line.length > 100)).toEqual([]);
    }
  });
});

describe('the trials of a plant in a report', () => {
  const journal = lots(
    ['L1', 'Iris alba', 18, 7], ['L2', 'Iris alba', 15, 9, 'GA3 250 ppm'], ['L3', 'Iris nigra', 12, 10],
    ['L4', 'Primula rosea', 12, 12, 'GA3 100 ppm, KNO3 0.2 %']);

  it('are stratified by lot, with the tests for who asks for details, and name the lots that have none', () => {
    const text = reportText([reportFor(journal, now, { by: 'species' })]);
    // R 4.2.2: mantelhaen.test(array(c(18, 7, 6, 17, 15, 9, 9, 15), c(2, 2, 2))): odds ratio 4.317 (1.843 to 10.110),
    // X-squared 10.4535, p 0.00122. statsmodels 0.13.5, StratifiedTable.test_equal_odds(adjust=True): 1.1968, p 0.274.
    expect(text).toContain(`
Iris alba
2 lots: L1, L2

  GA3 (250 to 500 ppm)
    Lot  Dose      Treated  Untreated         Points  By day
    L1   500 ppm  18 of 24    7 of 24  46 (18 to 65)      30
    L2   250 ppm  15 of 24    9 of 24  25 (-3 to 48)      30
    Worth repeating: in 2 lots 35 points more of the treated seeds germinated (95 % interval 16 to
    50).
`);
    const fewer = reportText([reportFor(lots(['K', 'Iris alba', 5, 14], ['L', 'Iris alba', 5, 14]), now, { by: 'species' })]);
    expect(fewer).toContain('5 of 24   14 of 24  -38 (-58 to -10)');
    expect(reportText([reportFor(journal, now, { by: 'species', details: true })])).toContain(`
    Of germinated seed, stratified by lot: odds ratio 4.3 (95 % interval 1.8 to 10), chi-square
    10.45, p 0.0012 (with continuity correction); homogeneity (Breslow-Day) chi-square 1.20, p 0.27.
`);
    expect(text).toContain(`
Primula rosea
1 lot: L4

  Untreated seed by winter
    Winter   Lot  Seed        Germinated     %  95 % interval  By day  Open
    2025/26  L4   water 24 h    12 of 24  50.0   31.4 to 68.6      30     –

  Left out here: L4 (no agent was tried alone).
`);
    expect(text).not.toContain('Treated against untreated');
  });

  it('name a trial of estimated seed as what it is, and take no part of it', () => {
    const guessed = journal.replaceAll('L4', 'L6').replace(/split L6, A (\d+) seeds/, 'split L6, A about $1 seeds');
    const text = reportText([reportFor(guessed, now, { by: 'species' })]);
    expect(text).toContain('\n  Left out here, because seeds were estimated, not counted: L6.\n');
    expect(text).not.toContain('No trial to compare');
  });

  it('of one lot repeat its verdict and no numbers over lots, and give the untreated share of each winter', () => {
    const older = 'lot L5 Iris nigra, 40 seeds\nsow L5 2024-11-02\ncount L5 2025-03-01, 10';
    const text = reportText([reportFor(`${journal}\n${older}`, now, { by: 'species' })]);
    // R 4.2.2, prop.test(10, 40, correct = FALSE): 0.1419 to 0.4019; of 10 and 24: 0.2447 to 0.6117.
    expect(text).toContain(`
Iris nigra
2 lots: L3, L5

  GA3 (500 ppm)
    L3: GA3 500 ppm 24 h (A) against water 24 h (B)
      Cannot tell: by day 30, 12 of 24 treated seeds had germinated (50 %) and 10 of 24 untreated
      (42 %): 8 points more (95 % interval -19 to 34), which may be chance.

  Untreated seed by winter
    Winter   Lot  Seed        Germinated     %  95 % interval  By day  Open
    2024/25  L5   untreated     10 of 40  25.0   14.2 to 40.2     119    30
    2025/26  L3   water 24 h    10 of 24  41.7   24.5 to 61.2      30     –

  No trial to compare: L5.
`);
  });

  it('tell untreated seed apart by what was done to it, and say why a trial is left out', () => {
    const text = reportText([reportFor(`
      lot B1 Baptisia australis, 40 seeds
      split B1, A 20 seeds, B 20 seeds
      scarify B1/A 2026-01-10, filed
      chill B1/A 2026-01-11, 4 C, 12 weeks
      warm B1/A 2026-02-01, 18 C, 12 weeks
      sow B1/B 2026-01-11
      count B1/A 2026-02-10, 17
      count B1/B 2026-02-10, 2
      lot B2 Baptisia australis, 40 seeds
      split B2, A 20 seeds, B 20 seeds
      soak B2/A 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak B2/B 2026-01-10 19:00, water, 24 h
      sow B2/A 2026-01-11, 18 C
      sow B2/B 2026-01-11, 5 C
      count B2/A 2026-02-10, 17
      count B2/B 2026-02-10, 2
      lot B3 Baptisia australis, 20 seeds
      soak B3 2026-01-10 19:00, GA3 500 ppm, 24 h
      sow B3 2026-01-11
    `, now, { by: 'species' })]);
    // All in one table: the winter alone would not tell two rows apart in a second one.
    expect(text).toMatch(/ Winter +Lot +Seed +Germinated +% +95 % interval +By day +Open\n/);
    expect(text).toMatch(/ B1 +scarified, then 4 C 12 weeks, +17 of 20 /);
    expect(text).toMatch(/ B1 +untreated +2 of 20 /);
    expect(text.replaceAll(/\s+/g, ' ')).toContain(
      ' Left out here: B2 (the sides also differ in temperature); B3 (no counts yet). No trial to compare: B1.');
  });

  it('are put together by genus where that is asked for', () => {
    const text = reportText([reportFor(journal, now, { by: 'genus' })]);
    expect(text).toContain('\nIris\n3 lots: L1, L2, L3\n');
    expect(reportMarkdown([reportFor(journal, now, { by: 'genus' })])).toContain('\n## Iris\n\n3 lots: L1, L2, L3\n\n### GA3 (250 to 500 ppm)\n\n| Lot |');
  });
});
