import { describe, expect, test } from 'vitest';
import { agentText, evidenceTexts, groupLabel, groupNames } from '../../../server/src/features/words/trials.ts';
import { plantTrial } from '../../../server/src/trials/plant-trial.ts';
import { known } from '../../measures/helpers.ts';
import { contest, journalOf, trial, twoBatches } from '../../trials/helpers.ts';

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
  test('are the tests, the days gained, and seedlings that suffered', () => {
    // R 4.2.2: fisher.test(matrix(c(15, 5, 5, 15), 2)) has p 0.00385.
    const source = twoBatches().replace('2026-02-10, 15', '2026-02-10, 15, 3 leggy, 1 died');
    const texts = evidenceTexts(known(contest(source).comparison));
    expect(texts[0]).toBe('Fisher’s exact test p 0.0038');
    expect(texts.slice(1)).toEqual(['leggy 3 of 15 against 0 of 5', 'died 1 of 15 against 0 of 5']);
  });

  test('are days gained where somebody looked between', () => {
    const counted = (a: string, b: string) => contest(twoBatches()
      .replace('count L/A 2026-02-10, 15', `count L/A 2026-01-31, ${a}`).replace('count L/B 2026-02-10, 5', `count L/B 2026-01-31, ${b}`));
    const days = (a: string, b: string) => evidenceTexts(known(counted(a, b).comparison)).filter(text => text.startsWith('T50'));
    // T50: 20 (15 + 1) / 2 / 12 = 13.3 days against 20 + 10 ((5 + 1) / 2 - 1) / 4 = 25.
    expect(days('12\n    count L/A 2026-02-10, 3', '1\n    count L/B 2026-02-10, 4')).toEqual(['T50 11.7 days earlier']);
    // 20 + 10 ((4 + 1) / 2 - 1) / 3 = 25 on both sides.
    expect(days('1\n    count L/A 2026-02-10, 3', '1\n    count L/B 2026-02-10, 3')).toEqual(['T50 the same']);
  });

  test('are no days where half of both was up when somebody first looked, or all of it was found on one day', () => {
    const counted = (a: string, b: string) => known(contest(twoBatches({ up: [15, 5] })
      .replace('count L/A 2026-02-10, 15', `count L/A 2026-01-31, ${a}`).replace('count L/B 2026-02-10, 5', `count L/B 2026-01-31, ${b}`)).comparison);
    const first = counted('12\n    count L/A 2026-02-10, 3', '4\n    count L/B 2026-02-10, 1');
    expect(first.t50).toEqual({ undefined: 'half of both sides was up when somebody first looked' });
    const later = counted('0\n    count L/A 2026-02-10, 15', '0\n    count L/B 2026-02-10, 12');
    expect(later.t50).toEqual({ undefined: 'all the germinated seed of both sides was found on one day' });
    expect(later.t50OfSown).toEqual(later.t50);
  });

  test('are the log-rank tests only where seed was found on more than one day', () => {
    const found = (second: string) => evidenceTexts(known(contest(twoBatches().replace('count L/B 2026-02-10', second)).comparison));
    expect(found('count L/B 2026-02-10')).not.toContainEqual(expect.stringContaining('log-rank'));
    expect(found('count L/A 2026-01-31, 0\n    count L/B 2026-01-31, 2\n    count L/B 2026-02-10')).toContainEqual(expect.stringMatching(/^log-rank tests p 0\.\d+$/));
  });

  test('has no days where nothing germinated on a side', () => {
    const { t50, ...others } = known(contest(twoBatches({ up: [3, 0] })).comparison);
    expect(t50).toEqual({ undefined: 'untreated: nothing germinated' });
    expect(evidenceTexts({ t50, ...others })).toEqual([expect.stringMatching(/^Fisher/)]);
  });
});

describe('an agent that was tried in several lots', () => {
  test('is told with its doses', () => {
    const text = (...soaks: string[]) => {
      const lots = soaks.map((soakA, i) => twoBatches({ soakA }).replaceAll('L/', `L${i}/`).replace('lot L ', `lot L${i} `)
        .replace('split L,', `split L${i},`).replace(/^ +/gm, ''));
      return agentText(plantTrial('Iris alba', [...journalOf(lots.join('\n')).lots()]).agents[0]!);
    };
    expect(text('GA3 500 ppm, 24 h')).toBe('GA3 (500 ppm)');
    expect(text('GA3 500 ppm, 24 h', 'GA3 62.5 ppm, 24 h', 'GA3 unmeasured')).toBe('GA3 (62.5 to 500 ppm, unmeasured)');
    expect(text('GA3 unmeasured')).toBe('GA3 (unmeasured)');
  });
});
