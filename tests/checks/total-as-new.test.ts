import { describe, test } from 'vitest';
import { expectMarked } from './marked.ts';

const now = '2026-03-01';

describe('numbers that look like totals', () => {
  test('are marked at the last of them: 2, 5, 8, 11 and 12 of 40 would add up to 38', () => {
    expectMarked(['total-as-new'], `
      lot L Gentiana lutea, 40 seeds
      sow L 2026-01-01
      count L 2026-01-10, 2
      count L 2026-01-17, 5
      count L 2026-01-24, 8
      count L 2026-01-31, 11
      count L 2026-02-07, 12
                          ^^ total-as-new
    `, { now });
  });

  test('are none where they fall, or come to little', () => {
    expectMarked(['total-as-new'], `
      lot L Gentiana lutea, 40 seeds
      sow L 2026-01-01
      count L 2026-01-10, 2
      count L 2026-01-17, 12
      count L 2026-01-24, 14
      count L 2026-01-31, 8
      lot M Gentiana lutea, 40 seeds
      sow M 2026-01-01
      count M 2026-01-10, 1
      count M 2026-01-17, 2
      count M 2026-01-24, 3
      count M 2026-01-31, 4
    `, { now });
  });

  test('may be a line that stands twice', () => {
    expectMarked(['total-as-new'], `
      lot L Gentiana lutea, 40 seeds
      sow L 2026-01-01
      count L 2026-01-10, 6, 1 rotted
      count L 2026-01-10, 6, 1 rotted
                             ^^^^^^^^ total-as-new
      count L 2026-01-17, 0
      count L 2026-01-17, 0
    `, { now });
  });
});
