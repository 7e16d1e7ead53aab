/** What became of each item on both sides. */
import { distance } from 'fastest-levenshtein';
import { keptSigns, meantName, writtenName } from './identity.ts';
import type { Item } from './items.ts';
import { newPairing, pair, pairBy, pairInOrder, pairInPlace, pairRepeated, type Key, type Pairing } from './match.ts';

/** One item in up to three versions: as both began with it, in ours, in theirs. At least one of them has it. */
export interface Trio {
  readonly base: Item | undefined;
  readonly ours: Item | undefined;
  readonly theirs: Item | undefined;
}

export interface Trios {
  /** In the order of each version. */
  readonly base: readonly Trio[];
  readonly ours: readonly Trio[];
  readonly theirs: readonly Trio[];
}

/** Finds which items are the same. What says the same of the same day is; after that, what is likely to be a change. */
export function triosOf(base: readonly Item[], ours: readonly Item[], theirs: readonly Item[]): Trios {
  const baseOurs = newPairing(base, ours);
  const baseTheirs = newPairing(base, theirs);
  pairSame(baseOurs);
  pairSame(baseTheirs);
  const sides = newPairing(ours, theirs);
  for (const [n, o] of baseOurs.ofLeft.entries()) {
    const t = baseTheirs.ofLeft[n]!;
    if (o !== -1 && t !== -1) pair(sides, o, t);
  }
  pairAdded(sides, baseOurs, baseTheirs);
  // What both sides have in the same words came to be on both: nothing that only one of them changed.
  pairChanged(baseOurs, n => sides.ofLeft[n]! !== -1);
  pairChanged(baseTheirs, n => sides.ofRight[n]! !== -1);
  return joined(baseOurs, baseTheirs, sides);
}

/** What became of each item of one version in another one: unchanged, changed, taken out, or new. */
export function pairsOf(
  before: readonly Item[], after: readonly Item[],
): { readonly left: Item | undefined; readonly right: Item | undefined }[] {
  const pairing = newPairing(before, after);
  pairSame(pairing);
  pairChanged(pairing, () => false);
  return [
    ...before.map((left, n) => ({ left, right: after[pairing.ofLeft[n]!] })),
    ...after.filter((_, n) => pairing.ofRight[n] === -1).map(right => ({ left: undefined, right })),
  ];
}

/** An item of the base that stood in a conflict is the same as none. */
const closed = (key: Key): Key => item => (item.open ? undefined : key(item));

function pairSame(pairing: Pairing): void {
  pairBy(pairing, closed(writtenName));
  pairBy(pairing, closed(meantName));
}

/** Items that are new on both sides. */
function pairAdded(sides: Pairing, { ofRight: ofOurs }: Pairing, { ofRight: ofTheirs }: Pairing): void {
  const isNew = new Set<Item>([
    ...sides.left.filter((_, n) => ofOurs[n] === -1), ...sides.right.filter((_, n) => ofTheirs[n] === -1),
  ]);
  const added = (key: Key): Key => item => (isNew.has(item) ? key(item) : undefined);
  pairRepeated(sides, added(writtenName));
  pairRepeated(sides, added(meantName));
}

/** The most of a line, as a share of its length, that may be another in a change of it. */
const MOST_CHANGED = 0.5;

function pairChanged(pairing: Pairing, isTaken: (n: number) => boolean): void {
  const taken = new Set(pairing.right.filter((_, n) => isTaken(n)));
  const free = (key: Key): Key => item => (taken.has(item) ? undefined : key(item));
  for (const sign of keptSigns) {
    pairInPlace(pairing, free(sign));
    pairInOrder(pairing, free(sign));
  }
  const likely = newPairing(pairing.left, pairing.right);
  likely.ofLeft.splice(0, Infinity, ...pairing.ofLeft);
  likely.ofRight.splice(0, Infinity, ...pairing.ofRight);
  pairInPlace(likely, free(({ kind }) => (kind === 'record' || kind === 'unread' ? 'line' : undefined)));
  for (const [n, other] of likely.ofLeft.entries()) {
    if (other === -1 || pairing.ofLeft[n] !== -1) continue;
    if (isChangeOf(pairing.left[n]!, pairing.right[other]!)) pair(pairing, n, other);
  }
}

function isChangeOf(before: Item, after: Item): boolean {
  // A record that can be read has other signs of being the same one.
  if (isWhole(before) && isWhole(after)) return false;
  const [a, b] = [before.head!.text, after.head!.text];
  const longest = Math.max(a.length, b.length);
  if (Math.min(a.length, b.length) < longest * (1 - MOST_CHANGED)) return false;
  return distance(a, b) <= longest * MOST_CHANGED;
}

function isWhole({ reading }: Item): boolean {
  return reading?.record !== undefined && reading.problems.length === 0;
}

function joined(baseOurs: Pairing, baseTheirs: Pairing, sides: Pairing): Trios {
  const { left: base } = baseOurs;
  const { left: ours, right: theirs } = sides;
  const ofBase = base.map((item, n): Trio => ({
    base: item, ours: ours[baseOurs.ofLeft[n]!], theirs: theirs[baseTheirs.ofLeft[n]!],
  }));
  const ofOurs = ours.map((item, n): Trio => {
    const known = ofBase[baseOurs.ofRight[n]!];
    return known ?? { base: undefined, ours: item, theirs: theirs[sides.ofLeft[n]!] };
  });
  const ofTheirs = theirs.map((item, n): Trio => {
    const known = ofBase[baseTheirs.ofRight[n]!];
    if (known) return known;
    const other = sides.ofRight[n]!;
    return other === -1 ? { base: undefined, ours: undefined, theirs: item } : ofOurs[other]!;
  });
  return { base: ofBase, ours: ofOurs, theirs: ofTheirs };
}
