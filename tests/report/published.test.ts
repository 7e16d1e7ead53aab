// Published data sets written as journals: from the text to the JSON report, the published numbers come out.
import { describe, expect, it } from 'vitest';
import { reportData } from '../../server/src/report/json.ts';
import { CROWDER } from '../measures/helpers.ts';
import { at, reportFor } from './helpers.ts';

interface Told {
  readonly lots: readonly {
    readonly batches: readonly { readonly measures: object }[];
    readonly trial: {
      readonly groups: readonly { readonly pooled: Pooled }[];
      readonly contests: readonly { readonly comparison: { readonly logRank: { readonly sown: LogRank } } }[];
    };
  }[];
}

interface Pooled {
  readonly overdispersion: number;
  readonly heterogeneity: { readonly chiSquare: number };
}

interface LogRank {
  readonly observed: number;
  readonly expected: number;
  readonly chiSquare: number;
}

function told(lines: readonly string[], today: string): Told {
  return JSON.parse(JSON.stringify(reportData(reportFor(lines.join('\n'), at(today))))) as Told;
}

describe('from a journal to its report', () => {
  it('21 plates of Orobanche are four groups of replicates with their heterogeneity (Crowder 1978, Table 3)', () => {
    const lots = Object.entries(CROWDER).map(([cell, plates], i) => [
      `lot L${i} ${cell.replace(',', ' on')}, ${plates.reduce((sum, [, n]) => sum + n, 0)} seeds`,
      `split L${i}, ${plates.map(([, n], k) => `P${k + 1} ${n} seeds`).join(', ')}`,
      ...plates.flatMap(([x], k) => [`sow L${i}/P${k + 1} 2026-01-01`, `count L${i}/P${k + 1} 2026-01-15, ${x}`]),
    ]);
    const groups = told(lots.flat(), '2026-02-01').lots.map(({ trial }) => trial.groups);
    // R 4.2.2: prop.test of each cell, correct = FALSE.
    const expected = [
      [99, 272, 9.759542, 4], [201, 295, 8.028288, 5], [49, 123, 7.736727, 4], [75, 141, 6.126588, 4],
    ] as const;
    for (const [i, [x, n, chiSquare, df]] of expected.entries()) {
      expect(groups[i]).toHaveLength(1);
      const { pooled } = groups[i]![0]!;
      expect(pooled).toMatchObject({ count: x, of: n, heterogeneity: { df } });
      expect(pooled.heterogeneity.chiSquare).toBeCloseTo(chiSquare, 5);
      expect(pooled.overdispersion).toBeCloseTo(chiSquare / df, 5);
    }
  });

  it('remission times written as counts give the published log-rank test (Freireich et al. 1963)', () => {
    // Weeks of remission; a relapse is written as germinated, who left the study as lost, a week as a day.
    const relapses = {
      A: [6, 6, 6, 7, 10, 13, 16, 22, 23],
      B: [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23],
    };
    const left = { A: [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35], B: [] as number[] };
    const day = (week: number) => new Date(Date.UTC(2026, 0, 1 + week)).toISOString().slice(0, 10);
    const counts = (['A', 'B'] as const).flatMap(name => {
      const weeks = [...relapses.A, ...relapses.B, ...left.A];
      const last = Math.max(...relapses[name], ...left[name]);
      return [...new Set(weeks)].filter(week => week <= last).sort((a, b) => a - b).map(week => (
        `count L/${name} ${day(week)}, ${relapses[name].filter(each => each === week).length}, `
        + `${left[name].filter(each => each === week).length} lost`));
    });
    const [lot] = told([
      'lot L Iris alba, 42 seeds', 'split L, A 21 seeds, B 21 seeds', 'soak L/A 2025-12-31 00:00, GA3 500 ppm, 24 h',
      'soak L/B 2025-12-31 00:00, water, 24 h', 'sow L/A 2026-01-01', 'sow L/B 2026-01-01', ...counts,
    ], '2026-06-01').lots;
    // R 4.2.2, survival 3.5-3, survdiff: 9 observed against 19.3 expected, chi-square 16.8 on 1 degree of freedom.
    const { sown } = lot!.trial.contests[0]!.comparison.logRank;
    expect(sown.observed).toBe(9);
    expect(sown.expected).toBeCloseTo(19.25, 2);
    expect(sown.chiSquare).toBeCloseTo(16.79, 2);
    // survfit: the median of the treated is 23 weeks, that of the others 8; seven steps of the treated.
    const [treated, untreated] = lot!.batches;
    const steps = [{ day: 6, atRisk: 21, germinated: 3 }, { day: 7 }, {}, {}, {}, {}, {}];
    expect(treated!.measures).toMatchObject({ kaplanMeier: { median: 23, steps } });
    expect(untreated!.measures).toMatchObject({ kaplanMeier: { median: 8 } });
  });

  it('a seed test of 4 times 100 seeds is held against the table of 7 CFR 201.55', () => {
    const test = (...counts: readonly number[]) => told([
      'lot L Iris alba, 400 seeds', 'split L, A 100 seeds, B 100 seeds, C 100 seeds, D 100 seeds',
      ...counts.flatMap((n, i) => [`sow L/${'ABCD'[i]!} 2026-01-01`, `count L/${'ABCD'[i]!} 2026-01-22, ${n}`]),
    ], '2026-02-01').lots[0]!.trial.groups[0]!.pooled;
    // Average 86: 14 points are tolerated; average 93: 10.
    expect(test(80, 84, 88, 92)).toMatchObject({ count: 344, of: 400, range: { range: 12, tolerated: 14, basis: 'published', passed: true } });
    expect(test(87, 91, 95, 99)).toMatchObject({ range: { range: 12, tolerated: 10, basis: 'published', passed: false } });
  });
});
