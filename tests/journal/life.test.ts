import { describe, expect, test } from 'vitest';
import { isGivenOut } from '../../server/src/journal/given-out.ts';
import { countsOf, dayNumber, isUsed } from '../../server/src/journal/life.ts';
import { at, batchOf, lotOf } from './helpers.ts';

describe('a batch', () => {
  const sown = batchOf('lot VER-24 Veratrum\nsow VER-24 2026-01-11 19:00\ncount VER-24 2026-01-19, 3\ncount VER-24 2026-01-12, 0');

  test('counts its days from day 0, before it too', () => {
    expect([dayNumber(sown, at('2026-01-19')), dayNumber(sown, at('2026-01-11')), dayNumber(sown, at('2026-01-01'))]).toEqual([8, 0, -10]);
    expect(dayNumber(batchOf('lot VER-24 Veratrum'), at('2026-01-19'))).toBe(undefined);
  });

  test('counts the days of the calendar, whatever summer time does', () => {
    const batch = batchOf('zone Europe/Vienna\nlot VER-24 Veratrum\nsow VER-24 2026-03-28 23:30');
    expect(dayNumber(batch, at('2026-03-30 00:30'))).toBe(2);
  });

  test('has its counts in the order of time', () => {
    expect(countsOf(sown).map(({ entry }) => entry.line.number)).toEqual([3, 2]);
  });

  test('is used by anything but remarks and splits', () => {
    expect(isUsed(sown)).toBe(true);
    expect(isUsed(batchOf('lot VER-24 Veratrum, 9 seeds\nsplit VER-24, A 3 seeds\nnote VER-24 2026-01-01, dry\ndue VER-24 2026-02-01, sow'))).toBe(false);
  });

  test('is given out when its last seed went to others', () => {
    const given = (line: string) => isGivenOut(batchOf(`lot VER-24 Veratrum, 9 seeds\n${line}`));
    expect([given('split VER-24, A 5 seeds, B 4 seeds'), given('split VER-24, A 5 seeds'), given('#')]).toEqual([true, false, false]);
  });
});

describe('a lot', () => {
  test('has its plant and when it was collected', () => {
    const { id, plant, collected } = lotOf('lot VER-24 Veratrum nigrum, collected 2025-09');
    expect({ id, plant, collected }).toEqual({ id: 'VER-24', plant: 'Veratrum nigrum', collected: { first: at('2025-09-01').day, last: at('2025-09-30').day } });
  });

  test('has with it the records of batches that are not there, and the names that were given out twice', () => {
    const { strays, twice } = lotOf(`
      lot VER-24 Veratrum, 60 seeds
      split VER-24, A 5 seeds
      split VER-24, A 5 seeds, B 5 seeds
      sow VER-24/C 2026-01-01
    `);
    expect(strays.map(({ line }) => line.number)).toEqual([3]);
    expect(twice.map(({ path, entry, first }) => [path, entry.line.number, first.line.number])).toEqual([['VER-24/A', 2, 1]]);
  });
});
