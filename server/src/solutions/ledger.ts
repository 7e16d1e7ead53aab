/** What is left in a bottle or a packet after everything taken from it, in the order of time. */
import { type Exact, exact } from './amounts.ts';
import { HALVING_ERROR } from './uncertainty.ts';

/** A part of whatever is there: halved by eye so many times, a quarter for two. */
export interface Portion {
  readonly halved: number;
}

/** What there was, measured again: the ledger goes on from it, whatever it said before. */
export interface Found {
  readonly found: Exact;
}

/** mL of a liquid or mg of powder, or a part of what is left; undefined where the record does not say. */
export type Amount = Exact | Portion | undefined;

export interface Withdrawal<Key> {
  readonly key: Key;
  /** Time of the draw on any scale on which later is larger; equal times keep their given order. */
  readonly when: number;
  readonly amount: Amount | Found;
}

/** mL or mg within limits that hold whatever the amounts were that nobody measured. None is ever below zero. */
export interface Left {
  readonly least: Exact;
  readonly most: Exact;
  /** As measured, each half taken for a half; undefined once something was taken that nobody measured. */
  readonly likely: Exact | undefined;
}

export interface LedgerEntry<Key> {
  readonly key: Key;
  /** What this draw leaves; undefined where it is not known how much there was at first. */
  readonly left: Left | undefined;
  /** What it took; undefined where the record does not say. */
  readonly taken: Left | undefined;
  /** mL or mg that this draw asks for and that cannot be there. */
  readonly missing: Exact;
  /** mL or mg that were found and that cannot have been left; 0 for a draw. */
  readonly tooMuch: Exact;
}

export interface Ledger<Key> {
  readonly entries: readonly LedgerEntry<Key>[];
  readonly left: Left | undefined;
  /** The draw at which it was used up and more than measuring explains was missing. */
  readonly overdrawn: LedgerEntry<Key> | undefined;
  /** Draws without an amount since it was measured last: what is left is then at most this. */
  readonly notMeasured: readonly Key[];
}

/**
 * Three draws of 3.34 mL out of 10 mL are no mistake: what is missing in all may be so much of what was made. Common
 * practice, no source.
 */
const SLACK = exact(0.01);
const none = exact(0);

/** Something that was measured, with no more behind it than that. */
export function measured(amount: Exact): Left {
  return { least: amount, most: amount, likely: amount };
}

/**
 * The draws in the order of time with what each leaves. A draw that asks for more than is there takes what
 * is there. `made` in mL or mg; undefined: it is not known, and nothing is said of what is left until it is measured.
 */
export function ledgerOf<Key>(made: Exact | undefined, withdrawals: readonly Withdrawal<Key>[]): Ledger<Key> {
  const entries: LedgerEntry<Key>[] = [];
  let left = made && measured(made);
  let whole = made;
  let missing = none;
  let notMeasured: Key[] = [];
  let overdrawn: LedgerEntry<Key> | undefined;
  const inTime = [...withdrawals].sort((a, b) => a.when - b.when);
  for (const { key, amount } of inTime) {
    if (isFound(amount)) {
      const { found } = amount;
      const tooMuch = left && found.gt(left.most) ? found.sub(left.most) : none;
      [left, whole, missing, notMeasured] = [measured(found), found, none, []];
      entries.push({ key, left, taken: undefined, missing, tooMuch });
      continue;
    }
    const asked = isExact(amount) ? amount : none;
    const short = left && asked.gt(left.most) ? asked.sub(left.most) : none;
    const taken = takenOf(left, amount);
    left = left && after(left, amount);
    const entry = { key, left, taken, missing: short, tooMuch: none };
    missing = missing.add(short);
    if (whole && missing.gt(whole.mul(SLACK))) overdrawn ??= entry;
    if (amount === undefined) notMeasured.push(key);
    entries.push(entry);
  }
  return { entries, left, overdrawn, notMeasured };
}

/** Whether it tells what there was, and not what was taken. */
export function isFound(amount: Amount | Found): amount is Found {
  return amount !== undefined && 'found' in amount;
}

function isExact(amount: Amount): amount is Exact {
  return amount !== undefined && !('halved' in amount);
}

function takenOf(left: Left | undefined, amount: Amount): Left | undefined {
  if (amount === undefined) return undefined;
  if (isExact(amount)) return measured(amount);
  if (!left) return undefined;
  const { low, likely, high } = portionOf(amount);
  return { least: left.least.mul(low), most: left.most.mul(high), likely: left.likely?.mul(likely) };
}

function after({ least, most, likely }: Left, amount: Amount): Left {
  if (amount === undefined) return { least: none, most, likely: undefined };
  if (isExact(amount)) {
    return { least: less(least, amount), most: less(most, amount), likely: likely && less(likely, amount) };
  }
  const one = exact(1);
  const part = portionOf(amount);
  return {
    least: least.mul(one.sub(part.high)), most: most.mul(one.sub(part.low)), likely: likely?.mul(one.sub(part.likely)),
  };
}

function less(amount: Exact, taken: Exact): Exact {
  return taken.gt(amount) ? none : amount.sub(taken);
}

/** Of what was halved so many times the share that one portion is, with its limits. */
function portionOf({ halved }: Portion): { low: Exact; likely: Exact; high: Exact } {
  const one = exact(1);
  const half = one.div(2);
  let [low, likely, high] = [one, one, one];
  for (let n = 0; n < halved; n++) {
    low = low.mul(half).mul(one.sub(HALVING_ERROR));
    likely = likely.mul(half);
    high = high.mul(half).mul(one.add(HALVING_ERROR));
  }
  return { low, likely, high };
}
