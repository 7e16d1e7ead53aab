/** How to divide seed into a part to treat and a part to leave untreated. */
import { rangeOf } from '../journal/estimates.ts';
import type { Batch } from '../journal/life.ts';
import { plan, type Plan } from '../measures/plan.ts';
import { THRESHOLDS } from '../measures/thresholds.ts';
import { SUPPOSED_SHARES, tells } from '../trials/split-plan.ts';
import { allOf, isWaiting, type UntreatedShare } from '../trials/untreated-shares.ts';
import type { Choice } from './choice.ts';
import type { Untouched } from './seed.ts';

export interface Division {
  /** The batch that is to be divided; undefined where the seed is in several batches already, which are the parts. */
  readonly of: Batch | undefined;
  /** The parts that are there already. */
  readonly parts: { readonly treated: readonly Batch[]; readonly untreated: readonly Batch[] } | undefined;
  /** Other seed that nothing was done to, which stays as it is. */
  readonly rest: readonly Batch[];
  /** Seeds of each side; undefined where nobody knows how many there are: half and half by eye then. */
  readonly sides: { readonly treated: number; readonly untreated: number } | undefined;
  /** The number is the least of an estimate, so that it cannot be written as it stands. */
  readonly isEstimated: boolean;
  /** What these numbers can show; undefined where it is no trial, or the numbers are not known. */
  readonly plan: Plan | undefined;
  /** Of the untreated seed, as the plan supposes it: `own` from records of the plant, without what waits in cold. */
  readonly share: { readonly value: number; readonly own: boolean; readonly leavesOut: boolean };
  /** No division of so few seeds shows anything. */
  readonly isTooFew: boolean;
}

/** Untreated germination that is neither poor nor good. */
const [, MIDDLING] = SUPPOSED_SHARES;

/**
 * Where a treatment paid before, a quarter stays untreated, and no fewer seeds than a verdict needs: it shows whether
 * the treatment still pays, and is there if it harms. Common practice, no source.
 */
const KEPT = 0.25;

/** Undefined where nothing is to be treated, and of a single seed. */
export function divisionFor(
  { kind }: Choice, { batches, seeds }: Untouched, shares: readonly UntreatedShare[],
): Division | undefined {
  if (kind === 'leave' || kind === 'unknown') return undefined;
  if (seeds && seeds.least < 2) return undefined;
  const share = shareOf(shares);
  const parts = batches.filter(({ children }) => children.length === 0);
  if (parts.length > 1) {
    const isEstimated = parts.some(part => part.kept === undefined);
    return partsOf(kind, parts, batches.filter(batch => !parts.includes(batch)), share, isEstimated);
  }
  const [of] = batches.toSorted((a, b) => leastOf(b) - leastOf(a));
  const range = of && rangeOf(of, 'kept');
  const base = {
    of, parts: undefined, rest: batches.filter(batch => batch !== of), share,
    isEstimated: range !== undefined && range.least < range.most,
  };
  if (!range) return { ...base, sides: undefined, plan: undefined, isTooFew: false };
  const n = range.least;
  if (n < 2) return undefined;
  if (kind === 'treat') return { ...base, sides: mostOf(n), plan: undefined, isTooFew: false };
  const half = plan(Math.ceil(n / 2), Math.floor(n / 2), share.value);
  const { treated, untreated } = half.best;
  const isTooFew = !tells(treated, untreated);
  const sides = isTooFew ? { treated: half.treated, untreated: half.untreated } : { treated, untreated };
  return { ...base, sides, plan: half, isTooFew };
}

function leastOf(batch: Batch): number {
  return rangeOf(batch, 'kept')?.least ?? 0;
}

function mostOf(n: number): { treated: number; untreated: number } {
  const kept = Math.max(Math.round(KEPT * n), THRESHOLDS.fewestSeeds.value);
  const untreated = Math.min(kept, Math.floor(n / 2));
  return { treated: n - untreated, untreated };
}

/** Seed that was divided before: as growers name parts, the first of them is the one to treat. */
function partsOf(
  kind: Choice['kind'], batches: readonly Batch[], rest: readonly Batch[], share: Division['share'], isEstimated: boolean,
): Division {
  const n = batches.length;
  const kept = kind === 'treat' ? Math.max(1, Math.round(KEPT * n)) : Math.ceil(n / 2);
  const parts = { treated: batches.slice(0, n - kept), untreated: batches.slice(n - kept) };
  const [treated, untreated] = [parts.treated, parts.untreated].map(side => (
    side.every(part => rangeOf(part, 'kept')) ? side.reduce((sum, part) => sum + leastOf(part), 0) : undefined));
  const sides = treated === undefined || untreated === undefined ? undefined : { treated, untreated };
  const layout = { dishes: { treated: parts.treated.length, untreated: parts.untreated.length }, treatments: 1 };
  return {
    of: undefined, parts, rest, sides, isEstimated, share,
    plan: sides && kind !== 'treat' ? plan(sides.treated, sides.untreated, share.value, layout) : undefined,
    isTooFew: sides !== undefined && kind !== 'treat' && !tells(sides.treated, sides.untreated),
  };
}

/** Whole percent of all untreated seed of the plant that was counted, so far. */
function shareOf(shares: readonly UntreatedShare[]): Division['share'] {
  const { x, n } = allOf(shares);
  const leavesOut = shares.some(isWaiting);
  return n === 0
    ? { value: MIDDLING, own: false, leavesOut } : { value: Math.round((100 * x) / n) / 100, own: true, leavesOut };
}
