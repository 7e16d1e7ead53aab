/** Which items of two versions are the same one. */
import type { Item } from './items.ts';

/** Two versions, and of each item the number of its partner in the other one; -1 where it has none. */
export interface Pairing {
  readonly left: readonly Item[];
  readonly right: readonly Item[];
  readonly ofLeft: number[];
  readonly ofRight: number[];
}

export type Key = (item: Item) => string | undefined;

export function newPairing(left: readonly Item[], right: readonly Item[]): Pairing {
  return { left, right, ofLeft: left.map(() => -1), ofRight: right.map(() => -1) };
}

export function pair({ ofLeft, ofRight }: Pairing, left: number, right: number): void {
  ofLeft[left] = right;
  ofRight[right] = left;
}

/**
 * Pairs items of one key. Those that it alone tells apart come first; of several that say the same, those between the
 * same neighbours, and then the first with the first. Comments that say the same and stand elsewhere are no pair: of
 * rules and empty comments there are many.
 */
export function pairBy(pairing: Pairing, key: Key): void {
  pairAlike(pairing, onlyOnes(pairing, key));
  pairRepeated(pairing, key);
}

/** The same, but that a comment is the same only between the same neighbours. */
export function pairRepeated(pairing: Pairing, key: Key): void {
  pairAlike(pairing, withNeighbours(pairing, key, 'before'));
  pairAlike(pairing, withNeighbours(pairing, key, 'after'));
  pairInOrder(pairing, item => (item.kind === 'comment' ? undefined : key(item)));
}

/** Pairs what has one key and stands between the same neighbours. */
export function pairInPlace(pairing: Pairing, key: Key): void {
  pairAlike(pairing, withNeighbours(pairing, key, 'both'));
}

/** Pairs what has one key, the first with the first. */
export function pairInOrder(pairing: Pairing, key: Key): void {
  const { left, right, ofLeft, ofRight } = pairing;
  pairAlike(pairing, { left: keysOfFree(left, ofLeft, key), right: keysOfFree(right, ofRight, key) });
}

/** Only of what has no partner yet: most items of a large journal find theirs at once. */
function keysOfFree(items: readonly Item[], partners: readonly number[], key: Key): (string | undefined)[] {
  return items.map((item, n) => (partners[n] === -1 ? key(item) : undefined));
}

interface Keys {
  readonly left: readonly (string | undefined)[];
  readonly right: readonly (string | undefined)[];
}

function pairAlike(pairing: Pairing, { left, right }: Keys): void {
  const waiting = new Map<string, number[]>();
  for (let n = right.length - 1; n >= 0; n--) {
    const key = right[n];
    if (key === undefined || pairing.ofRight[n] !== -1) continue;
    const same = waiting.get(key);
    if (same) same.push(n);
    else waiting.set(key, [n]);
  }
  for (const [n, key] of left.entries()) {
    if (key === undefined || pairing.ofLeft[n] !== -1) continue;
    const first = waiting.get(key)?.pop();
    if (first !== undefined) pair(pairing, n, first);
  }
}

function onlyOnes({ left, right, ofLeft, ofRight }: Pairing, key: Key): Keys {
  const ones = (items: readonly Item[], partners: readonly number[]) => {
    const keys = keysOfFree(items, partners, key);
    const counts = new Map<string, number>();
    for (const each of keys) if (each !== undefined) counts.set(each, (counts.get(each) ?? 0) + 1);
    return keys.map(each => (each !== undefined && counts.get(each) === 1 ? each : undefined));
  };
  return { left: ones(left, ofLeft), right: ones(right, ofRight) };
}

/** The keys with the nearest paired item before, after, or on both sides. */
function withNeighbours({ left, right, ofLeft, ofRight }: Pairing, key: Key, side: 'before' | 'after' | 'both'): Keys {
  const keysOf = (items: readonly Item[], partners: readonly number[], nameOf: (n: number) => number) => {
    const keys = keysOfFree(items, partners, key);
    if (keys.every(each => each === undefined)) return keys;
    const before = nearest(partners, nameOf);
    const after = nearest(partners.toReversed(), n => nameOf(partners.length - 1 - n)).reverse();
    return keys.map((own, n) => {
      if (own === undefined) return undefined;
      return `${side === 'after' ? '' : before[n]!}\n${side === 'before' ? '' : after[n]!}\n${own}`;
    });
  };
  return { left: keysOf(left, ofLeft, n => ofLeft[n]!), right: keysOf(right, ofRight, n => n) };
}

function nearest(partners: readonly number[], nameOf: (n: number) => number): number[] {
  let last = -1;
  return partners.map((partner, n) => (partner === -1 ? last : (last = nameOf(n))));
}
