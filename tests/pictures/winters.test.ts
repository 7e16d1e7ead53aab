import { describe, expect, test } from 'vitest';
import { wintersPicture } from '../../server/src/features/drawing/winters.ts';
import type { Frame, Picture } from '../../server/src/pictures/picture.ts';
import { themes } from '../../server/src/pictures/theme.ts';
import { plantTrial } from '../../server/src/trials/plant-trial.ts';
import { journalOf } from '../journal/helpers.ts';
import { collisions, outside, textBoxes, withClass } from './svg.ts';

const frame: Frame = { theme: themes.print, width: 760, small: false, id: 'a' };

/** Two parts of 20 seeds, treated and untreated, with one count in January; `year` is that of the autumn before. */
const lot = (id: string, year: number, [treated, untreated]: readonly [number, number]) => `
lot ${id} Veratrum nigrum, 60 seeds
split ${id}, A 20 seeds, B 20 seeds
soak ${id}/A ${year}-11-10 18:00, GA3 500 ppm, 24 h
soak ${id}/B ${year}-11-10 18:00, water, 24 h
sow ${id}/A ${year}-11-11 18:00
sow ${id}/B ${year}-11-11 18:00
count ${id}/A ${year + 1}-01-25, ${treated}
count ${id}/B ${year + 1}-01-25, ${untreated}
`;

function drawn(...lots: readonly string[]): Picture | undefined {
  const all = [...journalOf(lots.join('\n')).lots()];
  return wintersPicture(plantTrial('Veratrum nigrum', all, Infinity), frame);
}

describe('the lots of a plant over the winters', () => {
  const two = drawn(lot('VER-23', 2023, [12, 4]), lot('VER-22', 2022, [9, 3]))!;

  test('stand in one frame, treated and untreated, the first winter first', () => {
    expect(two.table.rows.map(([label, name, day, seeds]) => [label, name, day, seeds])).toEqual([
      ['2022/23 water 24 h', 'VER-22/B', '75', '3 of 20'], ['2022/23 GA3 500 ppm 24 h', 'VER-22/A', '75', '9 of 20'],
      ['2023/24 water 24 h', 'VER-23/B', '75', '4 of 20'], ['2023/24 GA3 500 ppm 24 h', 'VER-23/A', '75', '12 of 20'],
    ]);
    expect(two.description).toContain('the sowing of each batch');
  });

  test('have each winter in a shape of its own, and untreated seed dashed and open in black and white', () => {
    const shapes = withClass(two, 'look').map(({ attributes: { d, fill } }) => ({ d, fill }));
    expect(shapes.map(({ fill }) => fill)).toEqual(['#ffffff', '#000000', '#ffffff', '#000000']);
    // Circles are drawn as arcs, squares with straight lines.
    expect(shapes.map(({ d }) => d!.includes('A'))).toEqual([true, true, false, false]);
    expect(withClass(two, 'steps').map(({ attributes }) => attributes['stroke-dasharray'] !== undefined)).toEqual([true, false, true, false]);
  });

  test('are told apart without colour where a winter had several lots', () => {
    const many = drawn(...['VER-1', 'VER-2', 'VER-3'].map(id => lot(id, 2022, [9, 3])), lot('VER-4', 2023, [9, 3]))!;
    const looks = withClass(many, 'look').map(({ attributes: { d, fill } }) => `${d} ${fill}`);
    const lines = withClass(many, 'steps').map(({ attributes }) => `${attributes['stroke-dasharray']} ${attributes['stroke-width']}`);
    expect(new Set(looks.map((look, i) => `${look} ${lines[i]}`)).size).toBe(8);
  });

  test('have their labels within the picture and apart, and say which winters have no room', () => {
    const years = Array.from({ length: 10 }, (_, i) => lot(`VER-${i}`, 2010 + i, [i, 1]));
    const picture = drawn(...years)!;
    expect(withClass(picture, 'steps')).toHaveLength(16);
    expect(picture.caption).toContain('Not drawn: 4 earlier curves (2010/11 and 2011/12).');
    expect(outside(picture)).toEqual([]);
    expect(collisions(textBoxes(picture))).toEqual([]);
  });

  test('name the batches that have no curve, with the reason', () => {
    const estimated = lot('VER-22', 2022, [9, 3]).replace('A 20 seeds', 'A about 20 seeds');
    expect(drawn(estimated, lot('VER-23', 2023, [12, 4]))!.caption)
      .toContain('No curve: VER-22/A (its seeds were estimated, not counted).');
  });

  test('are not drawn where nothing was counted', () => {
    expect(drawn('lot VER-22 Veratrum nigrum, 60 seeds')).toBeUndefined();
  });
});
