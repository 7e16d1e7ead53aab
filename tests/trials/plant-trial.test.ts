import { describe, expect, test } from 'vitest';
import { byPlant } from '../../server/src/trials/by-plant.ts';
import { dosesOf, plantTrial, type AgentAcross } from '../../server/src/trials/plant-trial.ts';
import { allOf } from '../../server/src/trials/untreated-shares.ts';
import { expectClose, known, UCB_ADMISSIONS } from '../measures/helpers.ts';
import { journalOf } from './helpers.ts';

interface Told {
  readonly id: string;
  readonly plant: string;
  readonly soak?: string;
  readonly year?: number;
  /** Germinated and sown, treated then untreated. */
  readonly counts: readonly [number, number, number, number];
  readonly sowing?: readonly [string, string];
}

/** A lot with a treated batch A and a batch B in water, counted once and thrown away. */
function lot({ id, plant, soak = 'GA3 500 ppm, 24 h', year = 2026, counts: [a, n, b, m], sowing: [c, d] = ['', ''] }: Told): string {
  return [
    `lot ${id} ${plant}`, `split ${id}, A ${n} seeds, B ${m} seeds`,
    `soak ${id}/A ${year}-01-10 19:00, ${soak}`, `soak ${id}/B ${year}-01-10 19:00, water, 24 h`,
    `sow ${id}/A ${year}-01-11 19:00${c}`, `sow ${id}/B ${year}-01-11 19:00${d}`,
    `count ${id}/A ${year}-03-10, ${a}`, `count ${id}/B ${year}-03-10, ${b}`,
    `discard ${id}/A ${year}-03-11`, `discard ${id}/B ${year}-03-11`,
  ].join('\n');
}

function agentsOf(lots: readonly string[]): readonly AgentAcross[] {
  return plantTrial('Iris', [...journalOf(lots.join('\n')).lots()], Infinity).agents;
}

test('the doses of an agent are told apart as far as a bench can, and what nobody measured is one of its own', () => {
  const soaks = ['GA3 500 ppm', 'GA3 unmeasured', 'GA3 510 ppm', 'GA3 250 ppm', 'GA3 unmeasured'];
  const [ga3] = agentsOf(soaks.map((soak, i) => lot({ id: `L${i}`, plant: 'Iris alba', soak: `${soak}, 24 h`, counts: [8, 10, 2, 10] })));
  expect(dosesOf(ga3!.strata).map(({ ppm, strata }) => [ppm, strata.map(each => each.lot.id).join(' ')]))
    .toEqual([[500, 'L0 L2'], [undefined, 'L1 L4'], [250, 'L3']]);
});

test('the untreated seed of all lots is told by winter, and added up', () => {
  const told = [['L26', 2026, 3], ['L24', 2024, 1], ['L25', 2025, 2], ['M25', 2025, 4]] as const;
  const { untreated } = plantTrial('Iris', [...journalOf(told.map(([id, year, up]) => (
    lot({ id, plant: 'Iris alba', year, counts: [8, 10, up, 10] }))).join('\n')).lots()], Infinity);
  expect(untreated.map(share => share.lot.id)).toEqual(['L24', 'L25', 'M25', 'L26']);
  expect(allOf(untreated)).toEqual({ x: 10, n: 40 });
});

describe('the lots of a plant', () => {
  test('are compared each with itself, over the winters, and never pooled', () => {
    const [ga3] = agentsOf([
      lot({ id: 'L25', plant: 'Iris alba', year: 2025, counts: [8, 10, 2, 10] }),
      lot({ id: 'L26', plant: 'Iris alba', counts: [5, 6, 2, 6] }),
    ]);
    expect(ga3).toMatchObject({ agent: { word: 'GA3' }, across: { lots: 2, rule: 'more-in-lots' } });
    // statsmodels 0.13.5, StratifiedTable.
    expectClose(known(ga3!.across.homogeneity).chiSquare, 0.06899950555074288);
    expect(ga3!.strata.map(stratum => stratum.lot.id)).toEqual(['L25', 'L26']);
  });

  test('give the published odds ratio of UCBAdmissions where its departments are written as lots', () => {
    const [ga3] = agentsOf(UCB_ADMISSIONS.map(([a, b, c, d], i) => (
      lot({ id: `D${i}`, plant: 'Iris alba', counts: [a, a + b, c, c + d] }))));
    const { mantelHaenszel } = ga3!.across;
    // R 4.2.2, example of mantelhaen.test: common odds ratio 0.9046968, chi-square without correction 1.5246, p 0.2169
    // (1.4269 and 0.2323 with it).
    expect(known(known(mantelHaenszel).oddsRatio).value).toBeCloseTo(0.9046968, 7);
    expect(known(mantelHaenszel).corrected.chiSquare).toBeCloseTo(1.4269, 4);
  });

  test('are taken together by agent, in whatever doses; an agent beside another one is no trial of it', () => {
    const agents = agentsOf([
      lot({ id: 'L1', plant: 'Iris alba', counts: [8, 10, 2, 10] }),
      lot({ id: 'L2', plant: 'Iris alba', soak: 'GA3 unmeasured', counts: [8, 10, 2, 10] }),
      lot({ id: 'L3', plant: 'Iris alba', soak: 'ethephon 100 ppm, 24 h', counts: [8, 10, 2, 10] }),
      lot({ id: 'L4', plant: 'Iris alba', soak: 'GA3 500 ppm, KNO3 0.2 %, 24 h', counts: [8, 10, 2, 10] }),
      lot({ id: 'L5', plant: 'Iris alba', soak: 'GA3 500 ppm, 12 h\nsoak L5/A 2026-01-11 08:00, KNO3 0.2 %, 10 h', counts: [8, 10, 2, 10] }),
    ]);
    expect(agents.map(({ agent, strata }) => [agent.word, strata.map(({ lot: { id } }) => id)])).toEqual([
      ['GA3', ['L1', 'L2']], ['ethephon', ['L3']],
    ]);
  });

  test('in which more differs than the soak take no part', () => {
    expect(agentsOf([lot({ id: 'L1', plant: 'Iris alba', counts: [8, 10, 2, 10], sowing: [', 20 C', ', 10 C'] })])).toEqual([]);
  });

  test('that were tried under several conditions are as many strata of one lot', () => {
    const [ga3] = agentsOf([`
      lot L Iris alba, 100 seeds
      split L, A 20 seeds, B 20 seeds, C 20 seeds, D 20 seeds
      soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak L/B 2026-01-10 19:00, water, 24 h
      soak L/C 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak L/D 2026-01-10 19:00, water, 24 h
      sow L/A 2026-01-11 19:00, 5 C
      sow L/B 2026-01-11 19:00, 5 C
      sow L/C 2026-01-11 19:00, 20 C
      sow L/D 2026-01-11 19:00, 20 C
      count L/A 2026-03-10, 6
      count L/B 2026-03-10, 2
      count L/C 2026-03-10, 19
      count L/D 2026-03-10, 14
    `]);
    expect(ga3!.across).toMatchObject({ lots: 1, open: 1 });
    expect(ga3!.strata.map(({ pairs }) => pairs.map(({ treated }) => treated.batches[0]!.batch.path))).toEqual([['L/A'], ['L/C']]);
    // R 4.2.2: mantelhaen.test(array(c(6, 2, 14, 18, 19, 14, 1, 6), c(2, 2, 2))).
    const { mantelHaenszel } = ga3!.across;
    expectClose(known(known(mantelHaenszel).oddsRatio).value, 5.28571428571);
    expect(known(mantelHaenszel).corrected.chiSquare).toBeCloseTo(5.12525667, 8);
  });
});

describe('plants', () => {
  const lots = () => journalOf(`
    lot L1 Iris alba, 10 seeds
    lot L2 Primula rosea, 10 seeds
    lot L3 iris  Alba, 10 seeds
    lot L4 × Irisia alba, 10 seeds
    lot L5 Iris nigra subsp. parva, 10 seeds
    lot L6 Iris nigra ssp. parva, 10 seeds
  `).lots();
  const ids = (by: 'species' | 'genus') => [...byPlant(lots(), by)].map(([name, all]) => [name, all.map(({ id }) => id)]);

  test('are one species where their names differ in case, blanks and abbreviations only', () => {
    expect(ids('species')).toEqual([
      ['Iris alba', ['L1', 'L3']], ['Iris nigra subsp. parva', ['L5', 'L6']], ['Primula rosea', ['L2']], ['× Irisia alba', ['L4']],
    ]);
  });

  test('are one genus by the first word of their name', () => {
    expect(ids('genus')).toEqual([['Iris', ['L1', 'L3', 'L5', 'L6']], ['Irisia', ['L4']], ['Primula', ['L2']]]);
  });
});
