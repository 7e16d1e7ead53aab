/** What is left in a solution after everything drawn from it, in the order of time. */
import { type Exact, exact } from './amounts.ts';

export interface Withdrawal<Key> {
  readonly key: Key;
  /** Time of the draw on any scale on which later is larger; equal times keep their given order. */
  readonly when: number;
  /** mL; undefined where the record does not say. */
  readonly ml: Exact | undefined;
}

export interface LedgerEntry<Key> {
  readonly key: Key;
  /** mL left after this draw, never below zero; undefined where the volume made is not known. */
  readonly leftMl: Exact | undefined;
  /** mL that this draw asks for and that are not there. */
  readonly missingMl: Exact;
}

export interface Ledger<Key> {
  readonly entries: readonly LedgerEntry<Key>[];
  readonly leftMl: Exact | undefined;
  /** The draw at which the solution was used up and more than measuring explains was missing. */
  readonly overdrawn: LedgerEntry<Key> | undefined;
  /** Draws without a volume: what is left is then at most this. */
  readonly notMeasured: readonly Key[];
}

/**
 * Three draws of 3.34 mL out of 10 mL are no mistake: what is missing in all may be so much of what was made. Common
 * practice, no source.
 */
const SLACK = exact(0.01);

/**
 * The draws in the order of time with what each leaves. A draw that asks for more than is there takes what
 * is there. `madeMl` undefined: the volume is not known, and nothing is said of what is left.
 */
export function ledgerOf<Key>(
  madeMl: Exact | undefined,
  withdrawals: readonly Withdrawal<Key>[],
): Ledger<Key> {
  const entries: LedgerEntry<Key>[] = [];
  const none = exact(0);
  let left = madeMl;
  let missing = none;
  let overdrawn: LedgerEntry<Key> | undefined;
  const inTime = [...withdrawals].sort((a, b) => a.when - b.when);
  for (const { key, ml = none } of inTime) {
    const short = left !== undefined && ml.gt(left);
    const missingMl = left !== undefined && short ? ml.sub(left) : none;
    if (left !== undefined) left = short ? none : left.sub(ml);
    const entry = { key, leftMl: left, missingMl };
    missing = missing.add(missingMl);
    if (madeMl && missing.gt(madeMl.mul(SLACK))) overdrawn ??= entry;
    entries.push(entry);
  }
  return {
    entries,
    leftMl: left,
    overdrawn,
    notMeasured: inTime.filter(({ ml }) => ml === undefined).map(({ key }) => key),
  };
}
