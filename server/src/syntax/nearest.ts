import { closest, distance } from 'fastest-levenshtein';

/**
 * The candidate that was probably meant, regardless of case; undefined when none is near enough to be worth offering:
 * one slip in a short word, two in one of six letters, more in a long one; or two letters that changed places.
 *
 * Example: nearest('cuont', ['count', 'cut']) is 'count'
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  // A hostile line can hold a word of any length; nothing that long is a slip of a known one.
  if (word.length > 60) return undefined;
  const all = [...candidates];
  if (all.length === 0) return undefined;
  const lower = word.toLowerCase();
  const lowered = all.map(candidate => candidate.toLowerCase());
  const swapped = lowered.find(other => letters(other) === letters(lower) && distance(lower, other) <= 2);
  const best = swapped ?? closest(lower, lowered);
  const near = swapped !== undefined || distance(lower, best) <= Math.max(1, Math.floor(lower.length / 3));
  return near ? all[lowered.indexOf(best)] : undefined;
}

function letters(word: string): string {
  return word.split('').sort().join('');
}

/**
 * A list in plain words.
 *
 * Example: listed(['a', 'b', 'c'], 'or') is 'a, b or c'
 */
export function listed(items: readonly string[], last: 'and' | 'or'): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)!}`;
}
