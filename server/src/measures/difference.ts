import type { Interval } from './measured.ts';
import { wilson } from './proportion.ts';

/** A share x of n with its interval. x and n need not be whole, see wilson. */
export interface Share {
  readonly x: number;
  readonly n: number;
}

/** Shares that are equal on paper may miss each other by this: 12 of 40 less 16 of 40 is not quite -0.1. */
export const ROUNDING = 1e-9;

/** A difference of two shares, first less second, from -1 to 1 (times 100: percentage points). */
export interface Difference extends Interval {
  readonly value: number;
}

/**
 * The difference of two independent shares with Newcombe's hybrid score interval (square and add). Both n
 * must be above 0.
 *
 * d - sqrt((p1 - l1)^2 + (u2 - p2)^2) to d + sqrt((u1 - p1)^2 + (p2 - l2)^2), with Wilson's l and u. Newcombe
 * 1998, Stat Med 17:873-890, method 10 (the paper read to its abstract only).
 *
 * @example
 * newcombe({ x: 56, n: 70 }, { x: 48, n: 80 }) // { value: 0.2, low: 0.0524314724, high: 0.3338726540 }
 */
export function newcombe(first: Share, second: Share, confidence?: number): Difference {
  const p1 = first.x / first.n;
  const p2 = second.x / second.n;
  const a = wilson(first.x, first.n, confidence);
  const b = wilson(second.x, second.n, confidence);
  const value = p1 - p2;
  return {
    value,
    low: Math.max(-1, value - Math.hypot(p1 - a.low, b.high - p2)),
    high: Math.min(1, value + Math.hypot(a.high - p1, p2 - b.low)),
  };
}
