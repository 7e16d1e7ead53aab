import type { Journal } from '../../journal/journal.ts';
import { isFree } from '../mix/ids.ts';

/**
 * An id that the journal does not know: the given one if it is free and does not end in a letter, else with a number.
 *
 * Example: freeId(journal, 'G') is 'G3' where G1 and G2 are known
 */
export function freeId(journal: Journal, wanted: string): string {
  if (/\d$/.test(wanted) && isFree(journal, wanted)) return wanted;
  const stem = /\d$/.test(wanted) ? `${wanted}-` : wanted;
  let number = 1;
  while (!isFree(journal, `${stem}${number}`)) number++;
  return `${stem}${number}`;
}
