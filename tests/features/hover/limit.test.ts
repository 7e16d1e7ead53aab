import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

describe('hover on what is limited', () => {
  test('tells which limit holds and where it comes from', () => {
    expect(hover(`
      limit soak, 12 h
            ^^^^ here
      limit soak, 10 h
    `, '2026-02-10')).toBe('soak: the longest soak. 10 h applies to all plants (the “limit” record in journal.germ, line 2).');
    expect(hover(`
      limit count, 10 days
            ^^^^^ here
    `, '2026-02-10')).toBe(
      'count: how often to look at an open batch. 10 days applies to all plants (the “limit” record in journal.germ, line 1).');
  });

  test('tells the default where the record has no number', () => {
    expect(hover(`
      limit stock
            ^^^^^ here
    `, '2026-02-10')).toBe('stock: how long a stock keeps dark and cold. 4 years applies to all plants (default: common practice, no source).');
  });
});
