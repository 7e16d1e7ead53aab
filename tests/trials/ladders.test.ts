import { describe, expect, test } from 'vitest';
import { ladderNote } from '../../server/src/words/ladders.ts';
import { known, valueOf } from '../measures/helpers.ts';
import { groupTexts, trial } from './helpers.ts';

/** Untreated seed and doses of an agent: [what it lay in, germinated of 24, further facts of the sowing]. */
function ladder(...parts: readonly (readonly [soak: string, up: number, more?: string])[]): string {
  const names = parts.map((_, i) => String.fromCharCode(65 + i));
  return [
    'lot L Iris alba, 300 seeds',
    `split L, ${names.map(name => `${name} 24 seeds`).join(', ')}`,
    ...parts.map(([soak], i) => `soak L/${names[i]!} 2026-01-10 19:00, ${soak}`),
    ...parts.map(([, , more = ''], i) => `sow L/${names[i]!} 2026-01-11 19:00${more}`),
    ...parts.map(([, up], i) => `count L/${names[i]!} 2026-02-10, ${up}`),
    ...parts.map((_, i) => `discard L/${names[i]!} 2026-02-11`),
  ].join('\n');
}

const day = '24 h';

describe('doses of one agent in one lot', () => {
  test('are a ladder in the order of the doses, with a trend over the untreated seed and a best dose if there is one', () => {
    const { ladders, contests } = trial(ladder(
      ['GA3 1000 ppm, 24 h', 9], ['water, 24 h', 2], ['GA3 250 ppm, 24 h', 8], ['GA3 500 ppm, 24 h', 21]));
    expect(ladders).toHaveLength(1);
    expect(ladders[0]!.ladder.doses.map(({ dose }) => dose)).toEqual([250, 500, 1000]);
    // R 4.2.2: prop.trend.test(c(2, 8, 21, 9), rep(24, 4)).
    expect(known(ladders[0]!.ladder.trend).chiSquare).toBeCloseTo(9.9086, 4);
    expect(valueOf(ladders[0]!.ladder.best)).toBe(500);
    expect(contests).toHaveLength(3);
  });

  test('have the untreated seed as their lowest rung where it lay in 0 ppm', () => {
    const inWater = trial(ladder(['water, 24 h', 2], ['GA3 250 ppm, 24 h', 8], ['GA3 500 ppm, 24 h', 21]));
    const inNothing = trial(ladder(['GA3 0 ppm, 24 h', 2], ['GA3 250 ppm, 24 h', 8], ['GA3 500 ppm, 24 h', 21]));
    expect(groupTexts(inNothing)).toEqual(['untreated: A', 'GA3 250: B', 'GA3 500: C']);
    expect(inNothing.ladders.map(({ ladder: of }) => of)).toEqual(inWater.ladders.map(({ ladder: of }) => of));
    expect(inNothing.contests.map(({ verdict }) => verdict)).toEqual(inWater.contests.map(({ verdict }) => verdict));
  });

  test('share one error: what would do by itself may not do on a ladder', () => {
    const alone = trial(ladder(['water, 24 h', 6], ['GA3 500 ppm, 24 h', 14]));
    expect(alone.contests[0]!.verdict.rule).toBe('more');
    const among = trial(ladder(
      ['water, 24 h', 6], ['GA3 500 ppm, 24 h', 14], ['GA3 250 ppm, 24 h', 7], ['GA3 1000 ppm, 24 h', 6]));
    expect(among.contests.map(({ verdict }) => verdict.rule)).toEqual(['too-few', 'nothing-seen', 'nothing-seen']);
    // R 4.2.2: fisher.test has p 0.0392 for 14 and 6 of 24; three times that is 0.118.
    expect(known(among.contests[0]!.comparison).germinated.fisher.twoSided).toBeCloseTo(0.03921026, 8);
  });

  test('have no rung of unknown strength, and none in which something else differs', () => {
    const { ladders, contests } = trial(ladder(
      ['water, 24 h', 2, ', 15 C'], ['GA3 250 ppm, 24 h', 10, ', 15 C'], ['GA3 500 ppm, 24 h', 12, ', 15 C'],
      ['GA3 unmeasured', 20, ', 15 C'], ['GA3 1000 ppm, 24 h', 24, ', 25 C']));
    expect(ladders.map(({ ladder: { doses } }) => doses.map(({ dose }) => dose))).toEqual([[250, 500]]);
    expect(contests.map(({ verdict }) => verdict.rule)).toEqual(['more', 'more', 'more', 'more-differs']);
  });

  test('say by which day the trend is, where not all of them were counted again', () => {
    const source = ladder(['water, 24 h', 2], ['GA3 250 ppm, 24 h', 8], ['GA3 500 ppm, 24 h', 21]);
    const noteOf = (text: string) => ladderNote(trial(text).ladders[0]!);
    expect(noteOf(source)).toMatch(/^Trend: 40 points more /);
    const again = source.replace('discard L/C 2026-02-11', 'count L/C 2026-02-24, 2');
    expect(noteOf(again)).toMatch(/^Trend by day 30, the last on which all were looked at: 40 points more /);
  });

  test('say that day where nothing was to be seen by then, too', () => {
    const source = ladder(['water, 24 h', 1], ['GA3 100 ppm, 24 h', 8], ['GA3 300 ppm, 24 h', 0], ['GA3 1000 ppm, 24 h', 22])
      .replace('count L/C 2026-02-10, 0', 'count L/C 2026-01-18, 0').replace('discard L/C 2026-02-11', 'discard L/C 2026-01-20, tipped over');
    const looks = ['A', 'B', 'D'].map(name => `count L/${name} 2026-01-18, 0`).join('\n');
    expect(ladderNote(trial(`${source}\n${looks}`).ladders[0]!))
      .toMatch(/^Trend by day 7, the last on which all were looked at: – \(all doses germinated alike\)\. /);
  });

  test('are no ladder where they are one and the same', () => {
    const drops = 'apply L/B 2026-01-20, GA3 100 ppm, 2 drops, 8 seedlings';
    const { groups, ladders } = trial(`${ladder(['water, 24 h', 2], ['GA3 500 ppm, 24 h', 8], ['GA3 500 ppm, 24 h', 9])}\n${drops}`);
    expect(groups).toHaveLength(3);
    expect(ladders).toEqual([]);
  });

  test.each([
    ['of different agents', ['GA3 250 ppm, 24 h', 'ethephon 500 ppm, 24 h']],
    ['for different times', ['GA3 250 ppm, 24 h', 'GA3 500 ppm, 12 h']],
    ['with another agent beside one of them', ['GA3 250 ppm, 24 h', 'GA3 500 ppm, KNO3 0.2 %, 24 h']],
    ['of which there is only one', ['GA3 250 ppm, 24 h']],
  ])('are no ladder where they are %s', (_, soaks) => {
    expect(trial(ladder([`water, ${day}`, 2], ...soaks.map(soak => [soak, 9] as const))).ladders).toEqual([]);
  });
});
