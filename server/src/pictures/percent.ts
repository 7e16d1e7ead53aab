/**
 * A share as a percentage for a picture; one that is not quite nothing or everything does not round to it.
 *
 * @example
 * percentText(17 / 24) // '71'
 */
export function percentText(share: number): string {
  const percent = Math.round(share * 100);
  if (share > 0 && percent === 0) return '<1';
  return share < 1 && percent === 100 ? '>99' : String(percent);
}
