import { describe, expect, test } from 'vitest';
import { agentText, detailTexts, behindText, evidenceTexts, groupLabel, groupNames } from '../../server/src/words/trials.ts';
import { plantTrial } from '../../server/src/trials/plant-trial.ts';
import { contest, journalOf, trial, twoBatches } from '../trials/helpers.ts';

describe('a group of batches', () => {
  test('is called by what was done to it', () => {
    const labels = (source: string) => trial(source).groups.map(groupLabel);
    expect(labels(twoBatches())).toEqual(['water 24 h', 'GA3 500 ppm 24 h']);
    expect(labels(twoBatches({ soakA: 'GA3 500 ppm, KNO3 0.2 %, bleach 1 %, 12 h', soakB: '' }))).toEqual(['no soak', 'GA3 500 ppm + KNO3 0.2 % 12 h']);
    expect(labels(twoBatches({ soakA: 'GA3 unmeasured', soakB: 'peroxide 1 %, 30 min' }))).toEqual(['peroxide 1 % 30 min', 'GA3 unmeasured up to 24 h']);
  });

  test('is named by its batches, by their number where they are many', () => {
    const names = (n: number) => {
      const all = Array.from({ length: n }, (_, i) => `B${i + 1}`);
      return trial([
        'lot L Iris alba, 100 seeds', `split L, ${all.map(name => `${name} 5 seeds`).join(', ')}`,
        ...all.map(name => `sow L/${name} 2026-01-10`), ...all.map(name => `count L/${name} 2026-02-10, 1`),
      ].join('\n')).groups.map(groupNames);
    };
    expect(names(3)).toEqual(['B1, B2 and B3']);
    expect(names(5)).toEqual(['5 batches']);
    const rest = ['lot L Iris alba, 100 seeds', 'split L, A 5 seeds', 'sow L 2026-01-10', 'count L 2026-02-10, 1'].join('\n');
    expect(trial(rest).groups.map(groupNames)).toEqual(['the rest']);
  });
});

describe('what stands behind a verdict', () => {
  test('are seedlings that suffered, and the tests for who wants them', () => {
    const source = twoBatches().replace('2026-02-10, 15', '2026-02-10, 15, 3 leggy, 1 died');
    expect(evidenceTexts(contest(source))).toEqual(['leggy 3 of 15 against 0 of 5', 'died 1 of 15 against 0 of 5']);
    // R 4.2.2: fisher.test(matrix(c(15, 5, 5, 15), 2)) has p 0.00385.
    expect(detailTexts(contest(source))).toContain('Fisher’s exact test p 0.0038');
  });

  test('are days gained, as limits, where the treated seed is shown to be ahead', () => {
    const counted = (a: string, b: string, end = '2026-02-11') => contest(twoBatches().replace('discard L/B 2026-02-11', `discard L/B ${end}`)
      .replace('count L/A 2026-02-10, 15', `count L/A 2026-01-31, ${a}`).replace('count L/B 2026-02-10, 5', `count L/B 2026-01-31, ${b}`));
    // Half of 15 by day 20, half of 5 between days 20 and 30.
    expect(evidenceTexts(counted('12\n    count L/A 2026-02-10, 3', '1\n    count L/B 2026-02-10, 4'))).toEqual([
      'half of the seed that germinated was up: treated before day 20, untreated day 20 to 30 (up to 30 days earlier)',
    ]);
    expect(behindText(counted('12\n    count L/A 2026-02-10, 3', '1\n    count L/B 2026-02-10, 4'))).toMatch(/^Half of the seed/);
    // Nobody looked at the treated seed again, so what came later of the untreated is in the table only.
    expect(evidenceTexts(counted('12\n    count L/A 2026-02-10, 3', '1\n    count L/B 2026-02-10, 2\n    count L/B 2026-03-20, 2', '2026-03-21'))).toEqual([
      'half of the seed found by the looks compared was up: treated before day 20, untreated day 20 to 30 (up to 30 days earlier)',
    ]);
    // Both came up between the same two looks.
    expect(evidenceTexts(counted('14\n    count L/A 2026-02-10, 3', '2\n    count L/B 2026-02-10, 0'))).toEqual([]);
    expect(evidenceTexts(counted('1\n    count L/A 2026-02-10, 3', '1\n    count L/B 2026-02-10, 3'))).toEqual([]);
  });

  test('say that several treatments were judged together', () => {
    const source = [
      'lot L Iris alba, 60 seeds', 'split L, A 20 seeds, B 20 seeds, C 20 seeds',
      ...['A 2026-01-10 19:00, GA3 500 ppm, 24 h', 'B 2026-01-10 19:00, water, 24 h', 'C 2026-01-10 19:00, KNO3 0.2 %, 24 h'].map(soak => `soak L/${soak}`),
      ...['A', 'B', 'C'].flatMap(part => [`sow L/${part} 2026-01-11 19:00`, `count L/${part} 2026-02-10, 5`, `discard L/${part} 2026-02-11`]),
    ].join('\n');
    expect(trial(source).contests.map(evidenceTexts)).toEqual(
      [['judged together with 1 other comparison of this lot'], ['judged together with 1 other comparison of this lot']]);
  });
});

describe('an agent that was tried in several lots', () => {
  test('is told with its doses', () => {
    const text = (...soaks: string[]) => {
      const lots = soaks.map((soakA, i) => twoBatches({ soakA }).replaceAll('L/', `L${i}/`).replace('lot L ', `lot L${i} `)
        .replace('split L,', `split L${i},`).replace(/^ +/gm, ''));
      return agentText(plantTrial('Iris alba', [...journalOf(`stock H 2026-01-01, GA3 100 mg halved 2 times, 25 mL\n${lots.join('\n')}`).lots()], Infinity).agents[0]!);
    };
    expect(text('GA3 500 ppm, 24 h')).toBe('GA3 (500 ppm)');
    expect(text('GA3 500 ppm, 24 h', 'GA3 62.5 ppm, 24 h', 'GA3 unmeasured')).toBe('GA3 (62.5 to 500 ppm, unmeasured)');
    expect(text('GA3 500 ppm, 24 h', 'H, 24 h')).toBe('GA3 (about 500 to 1000 ppm)');
    expect(text('GA3 unmeasured')).toBe('GA3 (unmeasured)');
  });
});
