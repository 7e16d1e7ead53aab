/** Before the experiment: what difference the numbers of seed in a split can show, and what would show more. */
import type { Batch, Lot } from '../journal/life.ts';
import { isUndefined } from '../measures/measured.ts';
import { plan, type Plan } from '../measures/plan.ts';
import { factsOf, type JournalRecord } from '../model/record.ts';
import { isActiveSoak, isSameTreatment, treatmentOf, type Treatment } from './treatment.ts';

/** Untreated shares that a split is judged for: poor, middling, good germination. Common practice, no source. */
export const SUPPOSED_SHARES = [0.1, 0.4, 0.7] as const;

/** As different as a treatment can hardly make seed: who cannot tell these apart learns nothing. */
export const FARTHEST = { untreated: 0.1, treated: 0.9 } as const;

/** So many on either side tell these two apart with power to spare, and reckoning how much takes long. */
const PLENTY = 12;

/** Whether a trial of so many seeds is worth making: it finds what a treatment can do at most. */
export function tells(treated: number, untreated: number): boolean {
  if (Math.min(treated, untreated) >= PLENTY) return true;
  if (Math.min(treated, untreated) < 1) return false;
  const { visible, isMany } = plan(treated, untreated, FARTHEST.untreated);
  return isMany || (!isUndefined(visible) && visible.value <= FARTHEST.treated);
}

interface Side {
  readonly names: readonly string[];
  readonly seeds: number;
}

export interface SplitPlan {
  readonly treated: Side;
  readonly untreated: Side;
  /** Nothing was done to the parts yet: the first half of them is taken for the treated side, or the first of two. */
  readonly isSupposed: boolean;
  /** For each of a few shares of the untreated seed. */
  readonly plans: readonly [Plan, ...Plan[]];
}

interface Part extends Side {
  readonly batch: Batch | undefined;
  readonly treatment: Treatment;
}

/** Undefined for a split into replicates, or into fewer than two parts with seeds. */
export function splitPlan(record: JournalRecord, lot: Lot): SplitPlan | undefined {
  const counted = factsOf(record, 'part').flatMap(({ name, n }) => (n && n.value > 0 ? [{ name, n }] : []));
  const parts = counted.map((part): Part => {
    const batch = lot.batches.get(`${record.subject?.text ?? ''}/${part.name.text}`);
    return { names: [part.name.text], seeds: part.n.value, batch, treatment: batch ? wholeTreatment(batch) : [] };
  });
  const first = parts.find(({ treatment }) => treatment.length > 0);
  if (first) {
    const treated = parts.filter(({ treatment }) => isSameTreatment(treatment, first.treatment));
    const untreated = parts.filter(({ treatment }) => treatment.length === 0);
    return untreated.length > 0 ? planOf(treated, untreated, treatmentsIn(parts)) : undefined;
  }
  const [a, b] = parts;
  if (!a || !b || parts.some(({ batch }) => batch && isSown(batch))) return undefined;
  const half = areDishes(parts) ? parts.length / 2 : 1;
  return { ...planOf(parts.slice(0, half), parts.slice(half, 2 * half), 1), isSupposed: true };
}

/** Four parts or more, all of about one size, are as many dishes of two sides. */
function areDishes(parts: readonly Part[]): boolean {
  const sizes = parts.map(({ seeds }) => seeds);
  return parts.length >= 4 && parts.length % 2 === 0 && Math.max(...sizes) - Math.min(...sizes) <= 1;
}

/** Kinds of treatment that are tried beside the untreated parts. */
function treatmentsIn(parts: readonly Part[]): number {
  const kinds: Treatment[] = [];
  for (const { treatment } of parts) {
    if (treatment.length > 0 && !kinds.some(kind => isSameTreatment(kind, treatment))) kinds.push(treatment);
  }
  return kinds.length;
}

function planOf(treated: readonly Part[], untreated: readonly Part[], treatments: number): SplitPlan {
  const [a, b] = [together(treated), together(untreated)];
  const layout = { dishes: { treated: treated.length, untreated: untreated.length }, treatments };
  const [first, ...others] = SUPPOSED_SHARES.map(share => plan(a.seeds, b.seeds, share, layout));
  return { treated: a, untreated: b, isSupposed: false, plans: [first!, ...others] };
}

/** Its own, or that of the first of its parts that was treated. */
function wholeTreatment(batch: Batch): Treatment {
  const treated = [batch, ...batch.children].find(({ soaks }) => soaks.some(isActiveSoak));
  return treated ? treatmentOf(treated, treated.soaks) : [];
}

function isSown({ sowing, children }: Batch): boolean {
  return sowing !== undefined || children.some(isSown);
}

function together(parts: readonly Part[]): Side {
  return {
    names: parts.flatMap(({ names }) => names),
    seeds: parts.reduce((sum, { seeds }) => sum + seeds, 0),
  };
}
