import { closest, distance } from 'fastest-levenshtein';

/**
 * The candidate that was probably meant, regardless of case; undefined when none is near enough to be worth offering.
 *
 * Example: nearest('cuont', ['count', 'cut']) is 'count'
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  // A hostile line can hold a word of any length; nothing that long is a slip of a known one.
  if (word.length > 60) return undefined;
  const all = [...candidates];
  if (all.length === 0) return undefined;
  const lower = word.toLowerCase();
  const best = closest(lower, all.map(c => c.toLowerCase()));
  const steps = distance(lower, best);
  return steps <= (word.length < 4 ? 1 : Math.max(2, Math.floor(word.length / 3))) ? all.find(c => c.toLowerCase() === best) : undefined;
}

/**
 * A list in plain words.
 *
 * Example: listed(['a', 'b', 'c'], 'or') is 'a, b or c'
 */
export function listed(items: readonly string[], last: 'and' | 'or'): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1) as string}`;
}
