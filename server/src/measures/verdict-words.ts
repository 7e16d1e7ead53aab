import type { VerdictName } from './verdict-rules.ts';

/** A verdict with its reason as one sentence; `open`: seed may still germinate and change it. */
export function asSentence(verdict: VerdictName, reason: string, open: boolean): string {
  const soFar = verdict === 'cannot tell' ? ' yet' : ' so far';
  return `${verdict.charAt(0).toUpperCase()}${verdict.slice(1)}${open ? soFar : ''}: ${reason}.`;
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

/** What the log-rank tests found: the one over all the seed sown sees how much germinated as well as how soon. */
export function speedWords(faster: boolean, ofGerminated: boolean): string {
  if (ofGerminated) return faster ? 'germinated faster' : 'germinated slower';
  return faster ? 'was ahead over the whole time' : 'lay behind over the whole time';
}
