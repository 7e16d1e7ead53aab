import { describe, expect, test } from 'vitest';
import { expectAllMarked, problemsIn } from './marked.ts';

describe('a record on a batch all of whose seeds went to others', () => {
  test('is marked, whatever it is; remarks and a further split are something else', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 48 seeds
      split VER-24, A 24 seeds, B 24 seeds
      day 2026-03-10
      soak VER-24 19:00, water, 24 h
           ^^^^^^ nothing-left
      count VER-24, 3
            ^^^^^^ nothing-left
      discard VER-24, all soft
              ^^^^^^ nothing-left
      note VER-24, a good year
      due VER-24 2026-05-01, look
      split VER-24 2026-03-10, C 1 seed
                               ^^^^^^^^ split-exceeds-seeds
    `, { now: '2026-03-11' });
  });

  test('is not said where more was given out than there was: nobody knows how many stayed', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 48 seeds
      split VER-24, A 25 seeds, B 24 seeds
                    ^^^^^^^^^^^^^^^^^^^^^^ split-exceeds-seeds
      sow VER-24 2026-03-10
    `, { now: '2026-03-11' });
  });

  test('is right before the split, and where a seed stayed', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 48 seeds
      soak VER-24 2026-03-10 19:00, water, 24 h
      split VER-24 2026-03-11, A 24 seeds, B 24 seeds
      lot VER-25 Veratrum nigrum, 49 seeds
      split VER-25, A 24 seeds, B 24 seeds
      sow VER-25 2026-03-10
      lot VER-26 Veratrum nigrum
      split VER-26, A 24 seeds, B 24 seeds
      sow VER-26 2026-03-10
    `, { now: '2026-03-11' });
  });

  test('is offered for each of the batches', () => {
    const [problem] = problemsIn('nothing-left', 'lot V Veratrum, 4 seeds\nsplit V, A 2 seeds, B 2 seeds\nsow V 2026-03-10');
    expect(problem?.message).toBe('All seeds of V were split off into V/A and V/B. Write this record for one of those.');
    expect(problem?.fixes.map(({ text }) => text)).toEqual(['V/A', 'V/B']);
  });

  test('names eight batches, and no others where there are none', () => {
    const parts = Array.from({ length: 8 }, (_, n) => `${n} 1 seed`).join(', ');
    const [problem] = problemsIn('nothing-left', `lot V Veratrum, 8 seeds\nsplit V, ${parts}\nsow V 2026-03-10`);
    expect(problem?.message).toContain('V/5, V/6 and V/7.');
  });

  test('does not name a hundred batches', () => {
    const parts = Array.from({ length: 100 }, (_, n) => `${n} 1 seed`).join(', ');
    const [problem] = problemsIn('nothing-left', `lot V Veratrum, 100 seeds\nsplit V, ${parts}\nsow V 2026-03-10`);
    expect(problem?.message).toContain('V/6, V/7 and others.');
    expect(problem?.fixes.map(({ text }) => text)).toEqual(['V/0', 'V/1', 'V/2', 'V/3', 'V/4', 'V/5', 'V/6', 'V/7']);
  });
});
