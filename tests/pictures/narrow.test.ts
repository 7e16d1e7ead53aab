import { expect, test } from 'vitest';
import { lotGermination } from '../../server/src/features/drawing/germination.ts';
import { differencesPicture } from '../../server/src/pictures/differences.ts';
import { germinationPicture } from '../../server/src/pictures/germination/picture.ts';
import type { Frame } from '../../server/src/pictures/picture.ts';
import { themes } from '../../server/src/pictures/theme.ts';
import { lotOf } from '../journal/helpers.ts';
import { collisions, outside, shapesOf, textBoxes } from './svg.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';

// As wide as a panel beside the journal at 200 %.
const frame: Frame = { theme: themes.light, width: 300, small: false, id: 'a' };

test('what stands at the ends of the curves is broken over rows, not cut', () => {
  const lot = lotOf(`lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 20 seeds, B 20 seeds
soak VER-24/A 2026-01-10 18:00, GA3 500 ppm, 24 h
soak VER-24/B 2026-01-10 18:00, water, 24 h
sow VER-24/A 2026-01-11 18:00
sow VER-24/B 2026-01-11 18:00
count VER-24/A 2026-02-08, 14
count VER-24/B 2026-02-08, 4
cut VER-24/A 2026-02-08, 4 fresh, 2 dead`);
  const picture = germinationPicture(lotGermination(trialOf(lot, Infinity))!, frame)!;
  const ends = shapesOf(picture)
    .filter(({ name, attributes }) => name === 'text' && Number(attributes.x) > 150 && attributes['text-anchor'] === undefined)
    .map(({ text }) => text).join(' ');
  expect(ends).toContain('GA3 500 ppm 24 h');
  expect(ends).toContain('cut: 4 fresh, 2 dead');
  expect(collisions(textBoxes(picture))).toEqual([]);
});

test('names of lots stand whole above their rows of differences, and the numbers of the axis apart', () => {
  const difference = { value: 0.33, low: 0.2, high: 0.44 };
  const row = (label: string) => ({ label, counts: '', isTogether: false, difference });
  const rows = [row('2025/26 GEN-25'), row('2026/27 GEN-26')];
  const drawn = (width: number) => differencesPicture({ title: 'x', caption: '', rows }, { ...frame, width })!;
  const texts = (width: number) => shapesOf(drawn(width)).filter(({ name }) => name === 'text');
  const heightOf = (width: number, words: string) => texts(width).find(({ text }) => text === words)!.attributes.y;
  expect(heightOf(300, '2025/26 GEN-25')).not.toBe(heightOf(300, '33 (20 to 44)'));
  expect(heightOf(760, '2025/26 GEN-25')).toBe(heightOf(760, '33 (20 to 44)'));
  expect(texts(240).map(({ text }) => text)).not.toContain('-50');
  expect(texts(760).map(({ text }) => text)).toContain('-50');
  expect(collisions(textBoxes(drawn(300)))).toEqual([]);
  expect(outside(drawn(300))).toEqual([]);
});
