import { expect, test } from 'vitest';
import { batchGermination, lotGermination } from '../../server/src/features/drawing/germination.ts';
import { lotOf } from '../journal/helpers.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';

test('the picture of a lot, and of its treated batch, says what estimated seed comes to, and why it has no curve', () => {
  const lot = lotOf(`
    lot VER-24 Veratrum nigrum, 60 seeds
    split VER-24, A 20 seeds, B about 20 seeds
    soak VER-24/A 2026-01-10 18:00, GA3 500 ppm, 24 h
    soak VER-24/B 2026-01-10 18:00, water, 24 h
    sow VER-24/A 2026-01-11 18:00
    sow VER-24/B 2026-01-11 18:00
    count VER-24/A 2026-02-08, 14
    count VER-24/B 2026-02-08, 4
    discard VER-24/A 2026-02-09
    discard VER-24/B 2026-02-09
  `);
  for (const values of [lotGermination(trialOf(lot, Infinity)), batchGermination(lot.batches.get('VER-24/A')!, trialOf(lot, Infinity))]) {
    expect(values!.curves.map(({ names }) => names)).toEqual(['A']);
    expect(values!.caption).toMatch(
      /^Worth repeating: .* 4 of 18 to 22 untreated .*No curve: VER-24\/B \(its seeds were estimated, not counted\)\.$/);
  }
});
