/** Chance with a seed, so that every lot can be grown again. */

/** From 0 up to, but not including, 1. */
export type Random = () => number;

/**
 * Numbers that depend on the words given and nothing else. sfc32 of PractRand, seeded by FNV-1a (both from memory);
 * random.test.ts holds it to means, variances and independence.
 */
export function randomOf(...words: readonly (string | number)[]): Random {
  let [a, b, c, counter] = [hash(words.join('\0')), 0x9e3779b9, 0x243f6a88, 1];
  const next = (): number => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum | 0;
    return (sum >>> 0) / 2 ** 32;
  };
  for (let i = 0; i < 15; i++) next();
  return next;
}

function hash(text: string): number {
  let sum = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193);
  return sum >>> 0;
}

export function between(random: Random, low: number, high: number): number {
  return low + (high - low) * random();
}

/** A whole number, both ends included. */
export function whole(random: Random, low: number, high: number): number {
  return low + Math.floor((high - low + 1) * random());
}

export function oneOf<T>(random: Random, items: readonly T[]): T {
  return items[Math.floor(items.length * random())]!;
}

/** Standard normal; Box & Muller 1958 (memory). */
export function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Gamma with mean `shape` and scale 1; Marsaglia & Tsang 2000 (memory). */
export function gamma(random: Random, shape: number): number {
  if (shape < 1) return gamma(random, shape + 1) * (1 - random()) ** (1 / shape);
  const d = shape - 1 / 3;
  for (;;) {
    const x = normal(random);
    const v = (1 + x / Math.sqrt(9 * d)) ** 3;
    if (v > 0 && Math.log(1 - random()) < x * x / 2 + d - d * v + d * Math.log(v)) return d * v;
  }
}

export function beta(random: Random, a: number, b: number): number {
  const x = gamma(random, a);
  return x / (x + gamma(random, b));
}

/** Knuth's way, for small means. */
export function poisson(random: Random, mean: number): number {
  const limit = Math.exp(-mean);
  let n = 0;
  for (let product = random(); product > limit; product *= random()) n++;
  return n;
}
