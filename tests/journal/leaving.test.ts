import { describe, expect, test } from 'vitest';
import { due } from '../../server/src/calendar/due.ts';
import { placesNow } from '../../server/src/calendar/places.ts';
import { germinatedOf } from '../../server/src/words/germination.ts';
import { lifeLine } from '../../server/src/words/life-line.ts';
import { stateOf, stateText } from '../../server/src/words/state.ts';
import { courseOf } from '../../server/src/trials/course.ts';
import { expectAllMarked } from '../checks/marked.ts';
import { at, journalOf } from './helpers.ts';

const sown = `
  lot VER-24 Veratrum nigrum, 40 seeds, at tin 1
  split VER-24, A 20 seeds
  sow VER-24/A 2026-01-11, 15 C, at tray 4
  count VER-24/A 2026-02-01, 12
`;

function after(lines: string, path = 'VER-24/A', now = '2026-06-01') {
  const journal = journalOf(`${sown}${lines.split('\n').map(line => `  ${line.trim()}\n`).join('')}`);
  const batch = journal.lot('VER-24')!.batches.get(path)!;
  return { journal, batch, now: at(now), state: stateText(stateOf(batch, at(now)), at(now)) };
}

describe('seedlings that leave', () => {
  test('all: the batch is over, keeps its numbers, is in no place and owes nothing', () => {
    const { journal, batch, now, state } = after('plant VER-24/A 2026-05-10, in the long border');
    expect(state).toBe('planted out in the long border 2026-05-10');
    expect(germinatedOf(batch)).toMatchObject({ x: 12, n: 20 });
    expect(courseOf(batch)).toMatchObject({ sown: 20, closed: true });
    expect(placesNow(journal, now).map(({ name }) => name)).toEqual(['tin 1']);
    expect(due(journal, now)).toEqual([]);
  });

  test.each([
    ['give VER-24/A 2026-05-10, to the garden club', 'given away to the garden club 2026-05-10'],
    ['sell VER-24/A 2026-05-10', 'sold 2026-05-10'],
    ['send VER-24/A 2026-05-10, to a friend in the north', 'sent to a friend in the north 2026-05-10'],
    ['lose VER-24/A 2026-05-10, to slugs', 'lost to slugs 2026-05-10'],
  ])('%s: %s', (line, state) => expect(after(line).state).toBe(state));

  test('some: the others stay, and are counted on', () => {
    const { journal, batch, now, state } = after('plant VER-24/A 2026-05-10, 5 seedlings, in the long border');
    expect(state).toBe('sown, day 141');
    expect(lifeLine(batch, journal, now)).toBe('sown 4 months ago at 15 C, 5 seedlings planted out in the long border 3 weeks ago');
    expect(germinatedOf(batch)).toMatchObject({ x: 12, n: 20 });
    expect(due(journal, now).map(({ kind, id }) => `${kind} ${id}`)).toEqual(['count VER-24/A']);
  });

  test('lost in a spill, they had germinated all the same', () => {
    const { batch } = after('lose VER-24/A 2026-02-10, 3 seedlings, to a spill');
    expect(batch.totals).toMatchObject({ germinated: 12, lost: 0, died: 0 });
    expect(germinatedOf(batch)).toMatchObject({ x: 12, n: 20 });
  });

  test('and that all left owe nothing, once every seed is accounted for', () => {
    const { journal, now } = after(`count VER-24/A 2026-03-01, 8
      give VER-24/A 2026-05-10, 9 seedlings
      plant VER-24/A 2026-05-11, 11 seedlings`);
    expect(due(journal, now)).toEqual([]);
  });
});

describe('seed that leaves', () => {
  test('some: fewer are there to sow, and a percentage is of those', () => {
    const { batch } = after('send VER-24 2026-01-05, 6 seeds, to a friend\nsow VER-24 2026-02-01\ncount VER-24 2026-03-01, 7', 'VER-24');
    expect(batch).toMatchObject({ kept: 14, sown: 14 });
    expect(germinatedOf(batch)).toMatchObject({ x: 7, n: 14 });
  });

  test('all of it: the packet is in no place any more', () => {
    for (const line of ['send VER-24 2026-01-05, to a friend', 'send VER-24 2026-01-05, 20 seeds, to a friend']) {
      const { journal, now, state } = after(line, 'VER-24');
      expect(state).toBe('sent to a friend 2026-01-05');
      expect(placesNow(journal, now).map(({ name }) => name)).toEqual(['tray 4']);
    }
  });

  test('estimated: what stays is a range', () => {
    const { batch } = after('give VER-24 2026-01-05, about 10 seeds', 'VER-24');
    expect(batch.kept).toBeUndefined();
    expect(batch.worlds.map(({ kept }) => kept)).toEqual([9, 9, 11, 11]);
  });
});

test('more than there are, and anything after all have left, are mistakes', () => {
  expectAllMarked(`
    lot VER-24 Veratrum nigrum, 40 seeds
    send VER-24 2026-01-05, 45 seeds, to a friend
                            ^^^^^^^^ split-exceeds-seeds
    lot GEN-24 Gentiana lutea, 40 seeds
    sow GEN-24 2026-01-11
    count GEN-24 2026-02-01, 12
    plant GEN-24 2026-05-01, 8 seedlings
    sell GEN-24 2026-05-02, 5 seedlings
                            ^^^^^^^^^^^ more-than-germinated
    give GEN-24 2026-05-20, to the garden club
    count GEN-24 2026-05-21, 1
          ^^^^^^ after-close
    note GEN-24 2026-05-22, all gone
  `, { now: '2026-05-25' });
});
