import { describe, expect, test } from 'vitest';
import { due } from '../../server/src/calendar/due.ts';
import { stateOf, stateText } from '../../server/src/words/state.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';
import { expectAllMarked, expectMarked } from '../checks/marked.ts';
import { at, journalOf, lotOf } from '../journal/helpers.ts';

function dueOn(now: string, lines: string): string[] {
  const journal = journalOf(`lot VER-24 Veratrum nigrum, 40 seeds\n${lines}`);
  return due(journal, at(now)).map(({ id, kind, day }) => `${kind} ${id} ${day - at('2026-01-01').day}`);
}

describe('seed that stands outdoors', () => {
  const sown = 'sow VER-24 2025-11-10, outdoors, in gritty compost, at cold frame\n';

  test('owes no weekly look, and is not missed', () => {
    expect(dueOn('2026-03-01', sown)).toEqual([]);
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 40 seeds
      sow VER-24 2025-11-10, outdoors, in gritty compost, at cold frame
    `, { now: '2026-06-01' });
  });

  test('stays outdoors when some of its seedlings are potted, and comes in with a move', () => {
    const up = `${sown}count VER-24 2026-03-01, 9\n`;
    expect(dueOn('2026-05-01', `${up}pot VER-24 2026-03-20, 9 seedlings, at bench 1\n`)).toEqual([]);
    // A week after the pot, on 2026-03-27, which is day 85 of the year from 0.
    expect(dueOn('2026-05-01', `${up}move VER-24 2026-03-20, at bench 1\npot VER-24 2026-03-20, 9 seedlings\n`)).toEqual(['count VER-24 85']);
  });

  test('is to be looked at when the grower says, until somebody looked; and then when the count says', () => {
    const planned = 'sow VER-24 2025-11-10, outdoors, look again 2026-03-01, at cold frame\n';
    // 2026-03-01 is day 59 of the year from 0.
    expect(dueOn('2026-01-01', planned)).toEqual(['count VER-24 59']);
    expect(dueOn('2026-03-20', planned)).toEqual(['count VER-24 59']);
    expect(dueOn('2026-03-20', `${planned}count VER-24 2026-02-20, 0\n`)).toEqual(['count VER-24 59']);
    expect(dueOn('2026-03-20', `${planned}count VER-24 2026-03-02, 0\n`)).toEqual([]);
    // 2026-04-01 is day 90.
    expect(dueOn('2026-03-20', `${planned}count VER-24 2026-03-02, 0, look 2026-04-01\n`)).toEqual(['count VER-24 90']);
  });

  test('and is missed only when that day is long past', () => {
    expectMarked(['no-recent-count'], `
      lot VER-24 Veratrum nigrum, 40 seeds
      sow VER-24 2025-11-10, outdoors, look again 2026-03-01
          ^^^^^^ no-recent-count
      lot GEN-24 Gentiana lutea, 40 seeds
      sow GEN-24 2025-11-10, outdoors, look again 2026-07-01
    `, { now: '2026-06-01' });
  });

  test('is said to be outdoors since then, until it comes in', () => {
    const state = (lines: string) => {
      const { root } = lotOf(`lot VER-24 Veratrum nigrum, 40 seeds\n${lines}`);
      return stateText(stateOf(root, at('2026-02-01')), at('2026-02-01'));
    };
    expect(state(sown)).toBe('outdoors since 2025-11-10, day 83');
    expect(state('sow VER-24 2025-11-01, 18 C\nmove VER-24 2025-11-10, at cold frame, outdoors\n')).toBe('outdoors since 2025-11-10, day 92');
    expect(state(`${sown}move VER-24 2026-01-20, at bench 1\n`)).toBe('sown, day 83');
    // Indoors again it is to be counted every week.
    expect(dueOn('2026-01-20', `${sown}move VER-24 2026-01-20, at bench 1\n`)).toHaveLength(1);
  });

  test('is compared with seed that stood beside it, and not with seed that stood indoors', () => {
    const trial = (place: string) => trialOf(lotOf(`
      lot VER-24 Veratrum nigrum, 40 seeds
      split VER-24, A 20 seeds, B 20 seeds
      soak VER-24/A 2025-11-09 19:00, GA3 500 ppm, 24 h
      soak VER-24/B 2025-11-09 19:00, water, 24 h
      sow VER-24/A 2025-11-10 19:00, outdoors
      sow VER-24/B 2025-11-10 19:00${place}
      count VER-24/A 2026-04-01, 18
      count VER-24/B 2026-04-01, 3
    `), Infinity).contests.map(({ alsoDiffers }) => alsoDiffers);
    expect(trial(', outdoors')).toEqual([[]]);
    expect(trial('')).toEqual([['standing outdoors']]);
  });
});
