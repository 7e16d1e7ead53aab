import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placesPicture } from '../../server/src/features/drawing/places.ts';
import { runningSoakPicture, stocksPicture } from '../../server/src/features/drawing/bench.ts';
import { gridPicture } from '../../server/src/pictures/grid.ts';
import type { Frame } from '../../server/src/pictures/picture.ts';
import { shelfPicture } from '../../server/src/pictures/shelf.ts';
import { soakPicture } from '../../server/src/pictures/soak.ts';
import { themes } from '../../server/src/pictures/theme.ts';
import { at, journalOf } from '../journal/helpers.ts';
import { outside, shapesOf, withClass } from './svg.ts';

const frame: Frame = { theme: themes.light, width: 400, small: true, id: 'a' };
const wide: Frame = { ...frame, width: 760, small: false };

describe('a soak', () => {
  const soakOf = (now: string, more = '') => {
    const journal = journalOf(`zone Europe/Vienna\nlot V-1 Veratrum nigrum, 20 seeds\nsoak V-1 2026-01-10 19:00, GA3 500 ppm, 20 h${more}`);
    const lot = journal.lot('V-1')!;
    return runningSoakPicture(lot.root.soaks[0]!, { batch: lot.root, lot }, journal, at(now), frame);
  };

  test('shows how much of it is gone, its end and the limit, to scale', () => {
    const picture = soakOf('2026-01-11 05:00')!;
    expect(picture.caption).toBe('10 h gone, 10 h to go');
    const width = (name: string) => Number(withClass(picture, name)[0]!.attributes.width);
    expect(width('gone') / width('whole')).toBeCloseTo(0.5, 2);
    const [limit] = withClass(picture, 'limit');
    const [whole] = withClass(picture, 'whole');
    expect((Number(limit!.attributes.x1) - Number(whole!.attributes.x)) / width('whole')).toBeCloseTo(24 / 20, 2);
    expect(withClass(picture, 'over')).toEqual([]);
  });

  test('that is over its end shows by how much, in another colour and in words', () => {
    const picture = soakPicture({ title: 'x', now: 30, end: 24, limit: 24, from: 'a', to: 'b' }, frame);
    expect(picture.caption).toBe('ended 6 h ago');
    expect(withClass(picture, 'over')[0]!.attributes.fill).toBe(themes.light.alert);
  });

  test('is drawn only while the seed is in it, and where its times are known', () => {
    expect(soakOf('2026-01-11 18:00')).toBeUndefined();
    expect(soakOf('2026-01-10 12:00')).toBeUndefined();
    expect(soakOf('2026-01-11')).toBeUndefined();
    expect(soakOf('2026-01-11 05:00', '\nlift V-1 2026-01-11 04:00')).toBeUndefined();
  });

  test('has nothing outside, whatever its numbers', () => {
    const hours = fc.double({ min: -10, max: 5000, noNaN: true });
    const limits = fc.double({ min: 0.1, max: 5000, noNaN: true });
    fc.assert(fc.property(hours, fc.option(hours, { nil: undefined }), limits, (now, end, limit) => {
      const to = end === undefined ? undefined : '2026-01-11 19:00';
      const picture = soakPicture({ title: 'x', now, end, limit, from: '2026-01-10 19:00', to }, frame);
      expect(outside(picture)).toEqual([]);
    }));
  });
});

describe('the shelf', () => {
  const JOURNAL = [
    'stock G1 2026-01-01, GA3 20 mg, 20 mL', 'dilute G2 2026-01-02, from G1 5 mL, to 10 mL', 'stock OLD 2015-01-01, GA3 20 mg, 20 mL',
    'stock GONE 2026-01-01, GA3 20 mg, 20 mL', 'note GONE 2026-01-03, used up',
  ].join('\n');

  test('has what is left of each bottle, to scale; what is gone is not there', () => {
    const picture = stocksPicture(journalOf(JOURNAL), at('2026-01-10'), wide)!;
    expect(picture.table.rows.map(([name, , left]) => [name, left])).toEqual([['G1', '15 mL of 20 mL'], ['G2', '10 mL of 10 mL'], ['OLD', '20 mL of 20 mL']]);
    const share = (i: number) => Number(withClass(picture, 'left')[i]!.attributes.width) / Number(withClass(picture, 'held')[i]!.attributes.width);
    expect([share(0), share(1)]).toEqual([expect.closeTo(0.75, 2), expect.closeTo(1, 2)]);
    expect(picture.table.rows[2]![3]).toMatch(/^past its date, made /);
  });

  test('is not drawn where nothing stands on it', () => {
    expect(stocksPicture(journalOf('lot V-1 Iris, 3 seeds'), at('2026-01-10'), wide)).toBeUndefined();
  });

  test('has nothing outside, however long the words are', () => {
    const share = fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }))
      .map(([a, b]) => ({ least: Math.min(a, b), most: Math.max(a, b) }));
    const row = fc.record({
      name: fc.string({ unit: 'grapheme' }), holds: fc.string({ unit: 'grapheme' }), left: fc.option(share, { nil: undefined }),
      words: fc.string({ unit: 'grapheme' }), age: fc.string({ unit: 'grapheme' }), state: fc.constantFrom('good' as const, 'near' as const, 'expired' as const),
    });
    fc.assert(fc.property(fc.array(row, { minLength: 1, maxLength: 5 }), fc.constantFrom(frame, wide), (rows, each) => {
      expect(outside(shelfPicture({ title: 'What is left', rows }, each)!)).toEqual([]);
    }));
  });
});

describe('what lies where', () => {
  const JOURNAL = [
    'lot V-1 Veratrum nigrum, 20 seeds', 'lot I-1 Iris alba, 20 seeds', 'lot J-1 Iris aphylla, 20 seeds', 'sow V-1 2026-01-01, at bag 1 slot 2', 'sow I-1 2026-01-01, at bag 1 slot 10',
    'sow J-1 2026-01-09, at frame', 'count J-1 2026-01-09, 0',
  ].join('\n');

  test('is a grid by container and slot, in their order, with a letter for each plant and what is due', () => {
    const picture = placesPicture(journalOf(JOURNAL), at('2026-01-10'), wide)!;
    expect(picture.table.rows.map(([place, slot, id]) => [place, slot, id])).toEqual([['bag 1', '2', 'V-1'], ['bag 1', '10', 'I-1'], ['frame', '', 'J-1']]);
    const words = shapesOf(picture).filter(({ name }) => name === 'text').map(({ text }) => text);
    expect(words).toEqual(expect.arrayContaining(['Vn', 'Ial', 'Iap', 'bag 1', 'frame']));
    expect(withClass(picture, 'slot due')).toHaveLength(2);
    expect(withClass(picture, 'slot')).toHaveLength(1);
  });

  test('has containers side by side where there is room, and below one another where there is none', () => {
    const tops = (each: Frame) => {
      const picture = placesPicture(journalOf(JOURNAL), at('2026-01-10'), each)!;
      return ['bag 1', 'frame'].map(name => Number(shapesOf(picture).find(({ text }) => text === name)!.attributes.y));
    };
    const [bag, frameTop] = tops(wide);
    expect(frameTop).toBe(bag);
    const [first, second] = tops({ ...frame, width: 260 });
    expect(second).toBeGreaterThan(first!);
  });

  test('has what is due in full where four lines suffice, and tells plants apart whose names begin alike', () => {
    const plants = ['Iris alba', 'Iris alata', 'Iris', 'Irisine', 'GA3', '‘Blue’', '‘Red’'];
    const due = 'count; last looked at on 2026-11-22';
    const slots = plants.map(plant => ({ slot: '1', id: 'I-1', plant, due }));
    const picture = gridPicture({ title: 'x', containers: [{ name: 'tin', slots }] }, wide)!;
    const texts = shapesOf(picture).filter(({ name }) => name === 'text');
    expect(texts.map(({ text }) => text).join(' ')).toContain(due);
    const letters = texts.filter(({ attributes }) => attributes['font-size'] === '14').map(({ text }) => text);
    expect(letters.slice(1)).toEqual(['Ialb', 'Iala', 'Iris', 'Iris 2', 'GA3', '?', '? 2']);
  });

  test('of one container alone, or not at all', () => {
    expect(placesPicture(journalOf(JOURNAL), at('2026-01-10'), wide, 'frame')!.table.rows).toHaveLength(1);
    expect(placesPicture(journalOf('lot V-1 Iris, 3 seeds'), at('2026-01-10'), wide)).toBeUndefined();
  });

  test('has nothing outside, however much lies there', () => {
    const word = fc.string({ unit: 'grapheme', maxLength: 30 });
    const maybe = fc.option(word, { nil: undefined });
    const slot = fc.record({ slot: maybe, id: word, plant: word, due: maybe });
    const slots = fc.array(slot, { minLength: 1, maxLength: 9 });
    const containers = fc.array(fc.record({ name: word, slots }), { minLength: 1, maxLength: 4 });
    fc.assert(fc.property(containers, fc.constantFrom(frame, wide), (all, each) => {
      expect(outside(gridPicture({ title: 'What lies where', containers: all }, each)!)).toEqual([]);
    }));
  });
});
