import { expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

test('a `day` line with the old year in January is asked about, once', () => {
  expectMarked(['year-slip'], `
    lot L Gentiana lutea, 40 seeds
    lot M Gentiana lutea, 40 seeds
    day 2025-12-20
    sow L, 20 seeds
    sow M, 20 seeds
    day 2026-01-03
    count L, 0
    day 2025-01-10
        ^^^^^^^^^^ year-slip
    count L, 1
    count M, 2
    day 2026-01-17
    count L, 3
  `, { now: '2026-02-01' });
});

test('so is the last one, while it is written, and one with the new year in December', () => {
  expectMarked(['year-slip'], `
    day 2026-01-03
    day 2025-01-10
        ^^^^^^^^^^ year-slip
  `, { now: '2026-01-10' });
  expectMarked(['year-slip'], `
    day 2025-12-14
    day 2026-12-21
        ^^^^^^^^^^ year-slip
    day 2025-12-28
  `, { now: '2026-01-10' });
});

test('and a record with a date of its own, among those of its lot', () => {
  expectMarked(['year-slip'], `
    lot L Gentiana lutea, 40 seeds
    sow L 2024-12-28, 20 seeds
    count L 2026-01-03, 0
    lot M Gentiana lutea, 40 seeds
    sow M 2025-11-03, 20 seeds
    count L 2025-01-10, 1
            ^^^^^^^^^^ year-slip
    count L 2026-01-17, 3
    count M 2025-12-01, 0
  `, { now: '2026-02-01' });
});

test('what fits, what is written from the newest to the oldest, and what no year mends is left', () => {
  expectMarked(['year-slip'], `
    lot L Gentiana lutea, 40 seeds
    day 2026-01-17
    count L, 3
    day 2026-01-10
    count L, 1
    day 2025-12-20
    sow L, 20 seeds
    day 2026-02-20
    count L, 0
    day 2025-03-03
    note L, looked up in the old book
    day 2026-02-27
    count L, 0
  `, { now: '2026-06-01' });
});

test('the message names the dates around it, and the year that fits', () => {
  const [problem] = problemsIn('year-slip', 'day 2026-01-03\nday 2025-01-10\nday 2026-01-17', { now: '2026-02-01' });
  expect(problem!.message).toBe('2025-01-10 is out of order between 2026-01-03 and 2026-01-17. Is the year right? It may be 2026-01-10.');
  expect(problem!.fixes.map(({ text }) => text)).toEqual(['2026-01-10']);
});
