import { binomialProbabilities, hypergeometric } from './discrete.ts';
import { asUnlikely } from './fisher.ts';

/** p-values of Fisher's test above this are far from any verdict, and stay as they are, as boschloo() has it. */
const FAR = 0.2;

/**
 * Shares of the seed of which the one is taken that makes the chance greatest; closer ones change it by a
 * thousandth.
 */
const SHARES = 150;

/** One-sided p-values of all counts of two sides. */
export interface BoschlooTable {
  readonly n1: number;
  readonly n2: number;
  /** At a (n2 + 1) + b, for a of the first and b of the second side. */
  readonly p: Float64Array;
}

/**
 * Boschloo's p-value that the first share is the greater one, for all counts at once: outcomes join in the order of
 * Fisher's p, and the chance of all that have joined is summed up for each share.
 *
 * @example
 * boschlooTable(8, 8).p[7 * 9 + 2] // 0.0081, as boschloo({ x: 7, n: 8 }, { x: 2, n: 8 })
 */
export function boschlooTable(n1: number, n2: number): BoschlooTable {
  const p = fisherTable(n1, n2);
  const near = Uint32Array.from(p.keys()).filter(i => p[i]! <= FAR).sort((i, j) => p[i]! - p[j]!);
  const first = distributions(n1);
  const second = distributions(n2);
  const chances = new Float64Array(SHARES);
  const found = new Float64Array(near.length);
  for (let from = 0, to = 0; from < near.length; from = to) {
    while (to < near.length && asUnlikely(p[near[to]!]!, p[near[from]!]!)) {
      const [a, b] = [Math.floor(near[to]! / (n2 + 1)), near[to]! % (n2 + 1)];
      for (let i = 0; i < SHARES; i++) chances[i]! += first[i * (n1 + 1) + a]! * second[i * (n2 + 1) + b]!;
      to++;
    }
    found.fill(Math.min(1, chances.reduce((most, chance) => Math.max(most, chance), 0)), from, to);
  }
  for (const [i, at] of near.entries()) p[at] = found[i]!;
  return { n1, n2, p };
}

function fisherTable(n1: number, n2: number): Float64Array {
  const p = new Float64Array((n1 + 1) * (n2 + 1)).fill(1);
  for (let total = 0; total <= n1 + n2; total++) {
    const { first, probabilities } = hypergeometric(n1, n2, total);
    let sum = 0;
    for (let i = probabilities.length - 1; i >= 0; i--) {
      const a = first + i;
      p[a * (n2 + 1) + total - a] = sum = Math.min(1, sum + probabilities[i]!);
    }
  }
  return p;
}

function distributions(n: number): Float64Array {
  const all = new Float64Array(SHARES * (n + 1));
  for (let i = 0; i < SHARES; i++) all.set(binomialProbabilities(n, (i + 0.5) / SHARES), i * (n + 1));
  return all;
}
