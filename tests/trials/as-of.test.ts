import { describe, expect, test } from 'vitest';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';
import { groupTexts } from './helpers.ts';

const TEXT = `
lot L Iris alba, 60 seeds
split L, A 20 seeds, B 20 seeds
soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
soak L/B 2026-01-10 19:00, water, 24 h
sow L/A 2026-01-11 19:00
sow L/B 2026-01-11 19:00
count L/A 2026-01-31, 10
count L/B 2026-01-31, 1
count L/A 2026-02-10, 5
count L/B 2026-02-10, 12
discard L/A 2026-02-11
discard L/B 2026-02-11
`;

/** The trial of the lot as the journal told it in the evening of a day. */
function trialOn(iso: string) {
  const journal = new Journal(dayOfIso(iso));
  journal.set('a.germ', TEXT);
  return trialOf(journal.lot('L')!, Infinity);
}

describe('a trial as of a day', () => {
  test('knows nothing of later counts, nor that the batches were closed', () => {
    expect(trialOn('2026-01-31').contests[0]!.verdict.sentence).toMatch(/^Worth repeating so far: by day 20, 10 of 20 .* 1 of 20/);
    expect(trialOn('2026-02-11').contests[0]!.verdict.sentence).toMatch(/^Worth repeating: .*by day 30, 15 of 20/);
  });

  test('has no group before the first count', () => {
    expect(groupTexts(trialOn('2026-01-30'))).toEqual([]);
    expect(trialOn('2026-01-30').leftOut.map(({ why }) => why.undefined)).toEqual(['no counts yet', 'no counts yet']);
    expect(trialOn('2026-01-10')).toMatchObject({ groups: [], leftOut: [] });
  });
});
