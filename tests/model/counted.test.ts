import { expect, test } from 'vitest';
import { counted } from '../../server/src/model/counted.ts';

test('one of something is named by its word, and none or several by the plural', () => {
  expect([0, 1, 2].map(n => counted(n, 'seed'))).toEqual(['0 seeds', '1 seed', '2 seeds']);
  expect([1, 2].map(n => counted(n, 'dish', 'dishes'))).toEqual(['1 dish', '2 dishes']);
});
