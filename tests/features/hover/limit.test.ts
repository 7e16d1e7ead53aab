import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

describe('hover on what is limited', () => {
  test('tells which limit holds and where it comes from', () => {
    expect(hover(`
      limit soak, 12 h
            ^^^^ here
      limit soak, 10 h
    `, '2026-02-10')).toBe('soak: the longest soak. 10 h holds for all plants (the “limit” record in journal.germ, line 2).');
    expect(hover(`
      limit count, 10 days
            ^^^^^ here
    `, '2026-02-10')).toBe(
      'count: how often an open batch is to be looked at. 10 days holds for all plants (the “limit” record in journal.germ, line 1).');
  });

  test('tells the default where the record has no number', () => {
    expect(hover(`
      limit stock
            ^^^^^ here
    `, '2026-02-10')).toBe('stock: how long a stock keeps dark and cold. 4 years holds for all plants (default: common practice, no source).');
  });
});
