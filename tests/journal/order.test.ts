import { describe, expect, test } from 'vitest';
import { batchOf, counted, lotOf } from './helpers.ts';

/** The remarks of a lot's records in the order of its life. */
function order(source: string): string[] {
  return lotOf(`lot VER-24 Veratrum nigrum, 60 seeds\n${source}`).root.events.map(({ entry }) => entry.line.text.split(', ').at(-1)!);
}

describe('the order of time', () => {
  test('is that of dates and times, whatever the order of lines', () => {
    expect(order('note VER-24 2026-01-11 08:00, c\nnote VER-24 2026-01-10 20:00, b\nnote VER-24 2026-01-10 08:00, a\nnote VER-24 2025-12-31 23:00, 0'))
      .toEqual(['0', 'a', 'b', 'c']);
  });

  test('puts a record without a time behind the one above it', () => {
    expect(order('day 2026-01-10\nnote VER-24 19:00, a\nnote VER-24, b\nnote VER-24 18:00, before')).toEqual(['before', 'a', 'b']);
    expect(order('day 2026-01-10\nnote VER-24, first\nnote VER-24 08:00, a\nnote VER-24, b')).toEqual(['first', 'a', 'b']);
  });

  test('goes by file, then by line, where nothing else tells', () => {
    const lot = lotOf(`
      --- b.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      note VER-24 2026-01-10, c
      --- a.germ
      note VER-24 2026-01-10, a
      note VER-24 2026-01-10, b
    `);
    expect(lot.root.events.map(({ entry }) => entry.line.text.at(-1))).toEqual(['a', 'b', 'c']);
  });

  test('has a split without a date before everything', () => {
    const batch = batchOf(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2025-01-10, water, 12 h
      split VER-24, A 20 seeds
    `, 'VER-24/A');
    expect(batch.soaks).toEqual([]);
  });

  test('lets a day line date what follows it in its file, and no other', () => {
    const lot = lotOf(`
      --- a.germ
      day 2026-01-10
      --- b.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      count VER-24, 1
      day 2026-01-12
      count VER-24, 2
      count VER-24 2026-01-11, =1 germinated
    `);
    expect(counted(lot.root.totals)).toEqual({ germinated: 3 });
  });

  test('does not take the day above for a date that cannot be read', () => {
    const lot = lotOf(`
      lot VER-24 Veratrum nigrum, 60 seeds
      day 2026-01-12
      count VER-24 31/1/2026, 1
      count VER-24 2026-02-30, 1
      count VER-24, 5 germinatd
      count VER-24, 1
    `);
    expect(lot.root.events.map(({ entry }) => entry.line.number)).toEqual([4, 5]);
  });
});
