import { expect, test } from 'vitest';
import { lotGermination } from '../../server/src/features/drawing/germination.ts';
import { germinationPicture } from '../../server/src/pictures/germination/picture.ts';
import { themes } from '../../server/src/pictures/theme.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';
import { lotOf } from '../journal/helpers.ts';
import { textBoxes } from './svg.ts';

test('germination of seed that was counted in a towel is of the seed: none of it was sown', () => {
  const lot = lotOf(`
    lot VER-24 Veratrum nigrum, 24 seeds
    chill VER-24 2026-01-11, 4 C
    count VER-24 2026-02-01, 5
    count VER-24 2026-02-08, 4
  `);
  const frame = { theme: themes.light, width: 720, small: false, id: 'a' };
  const picture = germinationPicture(lotGermination(trialOf(lot, Infinity))!, frame)!;
  expect(textBoxes(picture).map(({ what }) => what)).toContain('% of the seed');
  expect(picture.description).toMatch(/^Share of the seed that had germinated, over the days from/);
});
