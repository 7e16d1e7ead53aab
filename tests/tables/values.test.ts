import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isUndefined } from '../../server/src/measures/measured.ts';
import { filledTables } from '../../server/src/tables/tables.ts';
import { plantTrial } from '../../server/src/trials/plant-trial.ts';
import { anyJournal, rowsOf, sourceOf, tablesFor } from './helpers.ts';

describe('numbers of seeds', () => {
  const filled = tablesFor(`
    lot C Iris alba, 24 seeds
    lot E Iris alba, about 40 seeds
    lot U Iris alba
    split E, A half, B half
    sow E/A 2026-01-02
    count E/A 2026-01-16, 9
  `);

  it('are exact where they were counted, limits where they were estimated, and nothing where they are unknown', () => {
    expect(rowsOf(filled, 'lots', 'lot', 'seeds', 'seeds_least', 'seeds_most')).toEqual([
      { lot: 'C', seeds: 24, seeds_least: 24, seeds_most: 24 },
      { lot: 'E', seeds: null, seeds_least: 36, seeds_most: 44 },
      { lot: 'U', seeds: null, seeds_least: null, seeds_most: null },
    ]);
    const [sown] = rowsOf(filled, 'batches', 'batch', 'sown', 'sown_least', 'sown_most').filter(({ batch }) => batch === 'E/A');
    expect(sown).toEqual({ batch: 'E/A', sown: null, sown_least: 16, sown_most: 25 });
    expect(rowsOf(filled, 'observations', 'batch', 'total', 'tested', 'tested_least', 'tested_most')).toEqual([
      { batch: 'E/A', total: 9, tested: null, tested_least: 16, tested_most: 25 },
    ]);
  });

  it('give a share of an estimate as limits', () => {
    const [share] = rowsOf(filled, 'measures', 'measure', 'value', 'value_least', 'value_most', 'count', 'of_least', 'of_most');
    expect(share).toEqual({
      measure: 'germinated_of_sown', value: null, value_least: 9 / 25, value_most: 9 / 16, count: 9, of_least: 16, of_most: 25,
    });
  });

  it('are never exact for an estimate, whatever the journal', () => {
    fc.assert(fc.property(anyJournal, files => {
      const all = filledTables([sourceOf(files)]);
      for (const [table, column] of [['lots', 'seeds'], ['batches', 'sown'], ['batches', 'tested'], ['observations', 'tested'], ['events', 'seeds']] as const) {
        for (const row of rowsOf(all, table, column, `${column}_least`, `${column}_most`)) {
          const [exact, least, most] = [row[column]!, row[`${column}_least`]!, row[`${column}_most`]!];
          expect(exact).toBe(least === most ? least : null);
        }
      }
    }), { numRuns: 30 });
  });
});

describe('a dose', () => {
  const filled = tablesFor(`
    lot A Iris alba, 24 seeds
    stock G1 2025-12-20, GA3 100 mg halved 2 times, 25 mL
    dilute G2 2025-12-20, from G1 10 mL, to 20 mL
    stock OLD 2019-01-02, GA3 20 mg, 20 mL, keeps 1 year
    soak A 2026-01-02 19:00, GA3 500 ppm, KNO3 0.2 %, 24 h
    soak A 2026-01-04 19:00, G2, until 2026-01-05
    soak A 2026-01-06 19:00, OLD, 24 h
    soak A 2026-01-08 19:00, GA3 unmeasured, 24 h
  `);

  it('has its strength where it is known, limits where powder was halved by eye or is past its time', () => {
    const rows = rowsOf(filled, 'doses', 'line', 'dose', 'name', 'agent', 'stock', 'strength_ppm', 'strength_ppm_least', 'strength_ppm_most', 'is_unmeasured');
    const of = (line: number) => rows.filter(row => row.line === line);
    expect(of(5)).toMatchObject([
      { dose: 1, agent: 'GA3', strength_ppm: 500, strength_ppm_least: 500, strength_ppm_most: 500 },
      { dose: 2, agent: 'KNO3', strength_ppm: 2000 },
    ]);
    const [halved] = of(6);
    expect(halved).toMatchObject({ name: 'G2', agent: 'GA3', stock: 'G2', strength_ppm: null });
    expect(Number(halved!.strength_ppm_least)).toBeLessThan(500);
    expect(Number(halved!.strength_ppm_most)).toBeGreaterThan(500);
    const limits = of(2)[0]!;
    expect(Number(halved!.strength_ppm_least)).toBeCloseTo(Number(limits.strength_ppm_least) / 2, 9);
    expect(of(7)).toMatchObject([{ stock: 'OLD', strength_ppm: null, strength_ppm_least: 0, strength_ppm_most: 1000 }]);
    expect(of(8)).toMatchObject([{ agent: 'GA3', strength_ppm: null, strength_ppm_least: null, strength_ppm_most: null, is_unmeasured: true }]);
  });

  it('has what was weighed and taken, from which bottle or packet, and how pure the powder was', () => {
    const made = tablesFor(`
      lot A Iris alba, 24 seeds
      powder P1 2025-12-01, GA3 1 g, purity 90 %
      powder P2 2025-12-01, GA3 1 g
      stock S1 2025-12-20, from P1 halved 2 times, 100 mL
      stock S2 2025-12-20, from P1 20 mg, purity 80 %, 20 mL
      stock S3 2025-12-20, GA3K 100 mg halved 1 time, purity 75 % acid, 100 mL
      dilute S4 2025-12-21, from S2 5 mL, to 10 mL
      soak A 2026-01-02, S2 5 mL, 10 mL, 24 h
      soak A 2026-01-02, P1 10 mg, 20 mL, 24 h
      soak A 2026-01-02, P2 10 mg, 20 mL, 24 h
      soak A 2026-01-02, S2 400 ppm, 24 h
    `);
    const taken = ['stock', 'taken_ml', 'weighed_mg', 'halved_times', 'purity_percent', 'purity_of'];
    const rows = rowsOf(made, 'doses', 'line', ...taken);
    const nothing = Object.fromEntries(taken.map(name => [name, null]));
    expect(rows).toEqual([
      { ...nothing, line: 4, stock: 'P1', halved_times: 2, purity_percent: 90 },
      { ...nothing, line: 5, stock: 'P1', weighed_mg: 20, purity_percent: 80 },
      { ...nothing, line: 6, weighed_mg: 100, halved_times: 1, purity_percent: 75, purity_of: 'acid' },
      { ...nothing, line: 7, stock: 'S2', taken_ml: 5 },
      { ...nothing, line: 8, stock: 'S2', taken_ml: 5 },
      { ...nothing, line: 9, stock: 'P1', weighed_mg: 10, purity_percent: 90 },
      { ...nothing, line: 10, stock: 'P2', weighed_mg: 10 },
      { ...nothing, line: 11, stock: 'S2' },
    ]);
    const written = rowsOf(made, 'events', 'line', 'purity_percent', 'purity_of')
      .filter(row => row.purity_percent !== null);
    expect(written).toEqual([
      { line: 2, purity_percent: 90, purity_of: null }, { line: 5, purity_percent: 80, purity_of: null },
      { line: 6, purity_percent: 75, purity_of: 'acid' },
    ]);
  });

  it('stands beside how long the soak took, in hours', () => {
    expect(rowsOf(filled, 'events', 'line', 'duration_h_least', 'duration_h_most', 'until_date').filter(({ line }) => Number(line) > 4)).toEqual([
      { line: 5, duration_h_least: 24, duration_h_most: 24, until_date: null },
      { line: 6, duration_h_least: 5, duration_h_most: 29, until_date: '2026-01-05' },
      { line: 7, duration_h_least: 24, duration_h_most: 24, until_date: null },
      { line: 8, duration_h_least: 24, duration_h_most: 24, until_date: null },
    ]);
  });
});

describe('what was seen', () => {
  it('is a row for each kind, with what is new, the total, and what follows from a leaf', () => {
    const filled = tablesFor(`
      lot A Iris alba, 24 seeds
      sow A 2026-01-02
      count A 2026-01-09, 0
      count A 2026-01-16, 3, 1 rotted
      count A 2026-01-23, =5 germinated, 6 leaf
      cut A 2026-03-01, 9 fresh, 0 empty
    `);
    expect(rowsOf(filled, 'observations', 'date', 'day', 'kind', 'new', 'total', 'recorded_as')).toEqual([
      { date: '2026-01-09', day: 7, kind: 'germinated', new: 0, total: 0, recorded_as: 'new' },
      { date: '2026-01-16', day: 14, kind: 'germinated', new: 3, total: 3, recorded_as: 'new' },
      { date: '2026-01-16', day: 14, kind: 'rotted', new: 1, total: 1, recorded_as: 'new' },
      { date: '2026-01-23', day: 21, kind: 'germinated', new: 3, total: 6, recorded_as: 'total' },
      { date: '2026-01-23', day: 21, kind: 'emerged', new: 6, total: 6, recorded_as: 'implied' },
      { date: '2026-01-23', day: 21, kind: 'leaf', new: 6, total: 6, recorded_as: 'new' },
      { date: '2026-03-01', day: 58, kind: 'fresh', new: 9, total: 9, recorded_as: 'new' },
      { date: '2026-03-01', day: 58, kind: 'empty', new: 0, total: 0, recorded_as: 'new' },
    ]);
  });

  it('adds up to the totals of the batch, whatever the journal', () => {
    fc.assert(fc.property(anyJournal, files => {
      const filled = filledTables([sourceOf(files)]);
      const totals = new Map<string, number>();
      for (const { batch, kind, new: fresh } of rowsOf(filled, 'observations', 'batch', 'kind', 'new')) {
        const key = `${String(batch)} ${String(kind)}`;
        totals.set(key, (totals.get(key) ?? 0) + Number(fresh));
      }
      for (const row of rowsOf(filled, 'batches', 'batch', 'germinated', 'emerged', 'rotted', 'lost', 'leaf')) {
        for (const kind of ['germinated', 'emerged', 'rotted', 'lost', 'leaf']) {
          expect(totals.get(`${String(row.batch)} ${kind}`) ?? 0).toBe(row[kind] ?? 0);
        }
      }
    }), { numRuns: 30 });
  });
});

describe('a comparison', () => {
  const filled = tablesFor(`
    lot A Iris alba, 80 seeds
    split A, T 20 seeds, U 20 seeds, V 20 seeds
    soak A/T 2026-01-01 19:00, GA3 500 ppm, 24 h
    soak A/V 2026-01-01 19:00, GA3 250 ppm, 24 h
    soak A/U 2026-01-01 19:00, water, 24 h
    sow A/T 2026-01-02, 20 seeds, 18 C
    sow A/U 2026-01-02, 20 seeds, 18 C
    sow A/V 2026-01-02, 20 seeds, 18 C
    count A/T 2026-01-23, 17
    count A/U 2026-01-23, 2
    count A/V 2026-01-23, 9
  `);

  it('has both sides, the difference and the verdict', () => {
    expect(rowsOf(filled, 'comparisons', 'comparison', 'agent', 'strength_ppm', 'treated_batches', 'untreated_batches', 'is_fair', 'treated_germinated', 'treated_seeds', 'untreated_germinated', 'untreated_seeds', 'verdict')).toMatchObject([
      { comparison: 1, agent: 'GA3', strength_ppm: 500, treated_batches: 'A/T', untreated_batches: 'A/U', is_fair: true, treated_germinated: 17, treated_seeds: 20, untreated_germinated: 2, untreated_seeds: 20, verdict: 'worth repeating' },
      { comparison: 2, strength_ppm: 250, treated_batches: 'A/V', treated_germinated: 9 },
    ]);
  });

  it('names the day of a later soak, from which its days count', () => {
    const later = tablesFor(`
      lot A Iris alba, 48 seeds
      split A, T 24 seeds, U 24 seeds
      sow A/T 2026-01-11, 15 C
      sow A/U 2026-01-11, 15 C
      count A/T 2026-02-14, 3
      count A/U 2026-02-14, 4
      soak A/T 2026-02-15 19:00, GA3 500 ppm, 24 h
      count A/T 2026-03-01, 8
      count A/U 2026-03-01, 1
    `);
    for (const name of ['comparisons', 'strata'] as const) {
      expect(rowsOf(later, name, 'later_soak', 'by_day', 'treated_seeds', 'untreated_seeds')).toEqual([
        { later_soak: '2026-02-15', by_day: 14, treated_seeds: 21, untreated_seeds: 20 },
      ]);
    }
    expect(rowsOf(filled, 'comparisons', 'later_soak')).toEqual([{ later_soak: null }, { later_soak: null }]);
  });

  it('of an agent puts all its doses together, as the report by species does', () => {
    expect(rowsOf(filled, 'strata', 'agent', 'stratum', 'species', 'treated_batches', 'treated_germinated', 'treated_seeds', 'untreated_germinated', 'untreated_seeds')).toEqual([
      { agent: 'GA3', stratum: 1, species: 'iris alba', treated_batches: 'A/T A/V', treated_germinated: 26, treated_seeds: 40, untreated_germinated: 2, untreated_seeds: 20 },
    ]);
  });

  it('is a stratum of the report by species exactly if that takes it in', () => {
    fc.assert(fc.property(anyJournal, files => {
      const source = sourceOf(files);
      const lots = [...source.journal.lots()].filter(({ plant }) => plant !== undefined);
      const wanted = plantTrial('all', lots, Infinity).agents.flatMap(({ agent, strata, across }) => strata.map(({ lot }, i) => {
        const comparison = across.comparisons[i]!;
        return `${lot.id} ${agent.word} ${isUndefined(comparison) ? '' : `${comparison.germinated.treated.x} ${comparison.germinated.untreated.n}`}`.trim();
      }));
      const found = rowsOf(filledTables([source]), 'strata', 'lot', 'agent', 'treated_germinated', 'untreated_seeds')
        .map(row => Object.values(row).filter(cell => cell !== null).join(' '));
      expect(found.sort()).toEqual(wanted.sort());
    }), { numRuns: 30 });
  });
});
