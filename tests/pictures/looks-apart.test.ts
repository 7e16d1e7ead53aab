import { expect, test } from 'vitest';
import { lotGermination } from '../../server/src/features/drawing/germination.ts';
import { germinationPicture } from '../../server/src/pictures/germination/picture.ts';
import { themes } from '../../server/src/pictures/theme.ts';
import { lotOf } from '../journal/helpers.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';

const described = (more: string) => {
  const lot = lotOf(`
    lot L Iris alba, 60 seeds
    split L, A 20 seeds, B 20 seeds, C 20 seeds
    soak L/C 2026-01-10 18:00, GA3 500 ppm, 24 h
    sow L/A 2026-01-11
    sow L/B 2026-01-11
    sow L/C 2026-01-11
    count L/A 2026-02-01, 5
    count L/B 2026-02-01, 4
    count L/C 2026-02-01, 9
    count L/A 2026-03-01, 6
    ${more}
  `, 'L');
  return germinationPicture(lotGermination(trialOf(lot, Infinity))!, { theme: themes.light, width: 720, small: false, id: 'a' })!.description;
};

test('a curve of several dishes says from which day on not all of them were looked at', () => {
  expect(described('')).toContain('15 of 40 = 38 % by day 49 (after day 21 not all of it was looked at), 95 %');
  expect(described('count L/B 2026-03-01, 0')).toContain('15 of 40 = 38 % by day 49, 95 %');
  // All of B had germinated: there was nothing more to look at.
  expect(described('count L/B 2026-02-02, 16')).toContain('31 of 40 = 78 % by day 49, 95 %');
});
