/** Up to so many names, each that nobody defined is compared with all. */
const MANY = 1000;
/** No name that is longer is a slip of another. */
const LONGEST = 60;
/** So many names that differ in the same letter are enough to find one that is near. */
const MOST = 50;

const memo = new WeakMap<readonly string[], ReadonlyMap<string, readonly number[]>>();

/**
 * Those of some names that another may be a slip of, in their order. Of very many only those come that one letter
 * tells from it, whatever their case: to compare each with each would take minutes.
 */
export function namesNear(name: string, names: readonly string[]): readonly string[] {
  if (names.length <= MANY) return names;
  let index = memo.get(names);
  if (!index) memo.set(names, index = indexOf(names));
  const found = new Set(shortened(name).flatMap(key => index.get(key) ?? []));
  return [...found].sort((a, b) => a - b).map(n => names[n]!);
}

function indexOf(names: readonly string[]): Map<string, number[]> {
  const index = new Map<string, number[]>();
  for (const [n, name] of names.entries()) {
    for (const key of new Set(shortened(name))) {
      const known = index.get(key);
      if (!known) index.set(key, [n]);
      else if (known.length < MOST) known.push(n);
    }
  }
  return index;
}

/** A name, and the same without each of its letters: two that differ in one letter have one of these in common. */
function shortened(name: string): string[] {
  if (name.length > LONGEST) return [];
  const lower = name.toLowerCase();
  return [lower, ...Array.from({ length: lower.length }, (_, n) => lower.slice(0, n) + lower.slice(n + 1))];
}
