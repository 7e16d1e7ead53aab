import { describe, expect, test } from 'vitest';
import { beta, between, gamma, normal, oneOf, poisson, randomOf, whole, type Random } from './random.ts';
import { scatterOf } from './season.ts';

const DRAWS = 20_000;

function draws(draw: (random: Random) => number): number[] {
  const random = randomOf('draws');
  return Array.from({ length: DRAWS }, () => draw(random));
}

function mean(numbers: readonly number[]): number {
  return numbers.reduce((sum, x) => sum + x, 0) / numbers.length;
}

function variance(numbers: readonly number[]): number {
  const centre = mean(numbers);
  return mean(numbers.map(x => (x - centre) ** 2));
}

describe('numbers by chance', () => {
  test('are the same for the same words, and others for others', () => {
    const first = (random: Random) => Array.from({ length: 5 }, random);
    expect(first(randomOf(1, 'cell', 7))).toEqual(first(randomOf(1, 'cell', 7)));
    expect(first(randomOf(1, 'cell', 7))).not.toEqual(first(randomOf(1, 'cell', 8)));
    expect(first(randomOf(1, 'cell', 7))).not.toEqual(first(randomOf(11, 'cell', 7)));
  });

  test('begin independently from one lot to the next', () => {
    const firsts = Array.from({ length: DRAWS }, (_, lot) => randomOf(1, 'cell', lot)());
    expect(mean(firsts)).toBeCloseTo(1 / 2, 2);
    const products = firsts.slice(1).map((x, i) => (x - 0.5) * (firsts[i]! - 0.5));
    expect(mean(products) * 12).toBeCloseTo(0, 1);
  });

  // Means and variances of the distributions: common knowledge. Five standard errors are allowed.
  test.each<[string, (random: Random) => number, number, number]>([
    ['uniform', random => random(), 1 / 2, 1 / 12],
    ['between', random => between(random, 2, 8), 5, 3],
    ['whole', random => whole(random, 1, 6), 3.5, 35 / 12],
    ['one of', random => oneOf(random, [0, 0, 1]), 1 / 3, 2 / 9],
    ['normal', normal, 0, 1],
    ['gamma 0.5', random => gamma(random, 0.5), 0.5, 0.5],
    ['gamma 6', random => gamma(random, 6), 6, 6],
    ['beta 2, 3', random => beta(random, 2, 3), 0.4, 0.04],
    ['Poisson 0.7', random => poisson(random, 0.7), 0.7, 0.7],
  ])('%s', (_, draw, expected, spread) => {
    const found = draws(draw);
    expect(Math.abs(mean(found) - expected)).toBeLessThan(5 * Math.sqrt(spread / DRAWS));
    expect(variance(found) / spread).toBeCloseTo(1, 1);
  });

  test('days scatter around a median of 1 as they should, be they log-normal or gamma', () => {
    for (let lot = 0; lot < 8; lot++) {
      const scatter = scatterOf(randomOf('scatter', lot));
      const days = draws(scatter.draw);
      for (const day of [0.7, 1, 1.4]) {
        expect(Math.abs(mean(days.map(each => Number(each <= day))) - scatter.upBy(day))).toBeLessThan(0.02);
      }
      expect(scatter.upBy(1)).toBeCloseTo(0.5, 3);
    }
  });
});
