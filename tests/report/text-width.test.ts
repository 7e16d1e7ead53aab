import { expect, test } from 'vitest';
import { widthOf } from '../../server/src/report/text-width.ts';

test.each([
  [0, ['', '\u0000', '\u200B', '\u00AD', '\u0300', '\uFEFF', '\uD83C']],
  [1, ['a', '–', 'é', 'e\u0301', 'ｱ', '☀', 'ψ', '\u00A0', '°']],
  [2, ['ab', '種', '한', 'Ａ', '🌱', '👩‍🌾', '🇦🇹', '☀\uFE0F', '1\uFE0F\u20E3', '\u{20000}']],
  [10, ['Iris 🌱 種', '種子 22 e\u0301x']],
])('in a terminal these take %i columns', (width, texts) => {
  expect(texts.filter(text => widthOf(text) !== width)).toEqual([]);
});

test('so does a text that is longer than what is measured at a time', () => {
  expect(widthOf('種'.repeat(2001))).toBe(4002);
  expect(widthOf(`${'e\u0301'.repeat(2000)}\u0301`)).toBe(2000);
});
