import type { VerdictName } from './verdict-rules.ts';

/** A verdict with its reason as one sentence. */
export function asSentence(verdict: VerdictName, reason: string): string {
  return `${verdict.charAt(0).toUpperCase()}${verdict.slice(1)}: ${reason}.`;
}

/** A share from 0 to 1 as whole percent. */
export function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}

/** A p-value with two digits. */
export function probability(p: number): string {
  return p < 0.001 ? 'below 0.001' : p.toPrecision(2);
}

/** A ratio with two digits. */
export function ratio(value: number): string {
  return value < 10 ? value.toPrecision(2) : value.toFixed(0);
}
