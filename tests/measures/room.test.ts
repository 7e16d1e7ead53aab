import { expect, test } from 'vitest';
import type { Comparison } from '../../server/src/measures/comparison.ts';
import { roomsOf } from '../../server/src/measures/room.ts';

/** Of each comparison, by how much its p-values grow. */
function factors(better: readonly number[], worse: readonly number[]): (readonly [number, number, number])[] {
  const comparisons = better.map((p, i) => ({ better: { p }, worse: { p: worse[i]! } }) as Comparison);
  const rooms = roomsOf(comparisons);
  return comparisons.map(comparison => {
    const { better: up, worse: down, treatments } = rooms.get(comparison)!;
    return [up, down, treatments];
  });
}

// R 4, p.adjust(c(0.01, 0.04, 0.03), "holm") is 0.03 0.06 0.06; of c(0.5, 0.25, 0.8) it is 1 0.75 1.
test('treatments beside one untreated part leave each other the room of Holm’s correction, each way for itself', () => {
  const [first, second, third] = factors([0.01, 0.04, 0.03], [0.5, 0.25, 0.8]);
  expect(first).toEqual([expect.closeTo(0.03 / 0.01), expect.closeTo(1 / 0.5), 3]);
  expect(second).toEqual([expect.closeTo(0.06 / 0.04), expect.closeTo(0.75 / 0.25), 3]);
  expect(third).toEqual([expect.closeTo(0.06 / 0.03), expect.closeTo(1 / 0.8), 3]);
});

// R 4, p.adjust(c(0, 0.5), "holm") is 0 0.5: nothing times a number is nothing, and the number is not known from it.
test('a p-value that a computer cannot tell from nothing grows by as many as there are', () => {
  expect(factors([0, 0.5], [0.5, 0])).toEqual([[2, 1, 2], [1, 2, 2]]);
});

test('one treatment alone has all the room', () => {
  expect(factors([0.04], [0.9])).toEqual([[1, 1, 1]]);
  expect(roomsOf([]).size).toBe(0);
});
