import { ACROSS_RULES, type AcrossFindings, type AcrossRuleId } from './across-rules.ts';
import { acrossSentence } from './across-text.ts';
import { breslowDay } from './breslow-day.ts';
import { compareParts, type Comparison } from './comparison.ts';
import { worth, type Contrast } from './contrast.ts';
import type { Course } from './course.ts';
import { reaches } from './fisher.ts';
import { mantelHaenszel, type ChiSquare, type MantelHaenszel, type Stratum } from './mantel-haenszel.ts';
import { isUndefined, type Undefined } from './measured.ts';
import { speedPairs, speedTests, type SpeedTests } from './speed-test.ts';
import { THRESHOLDS } from './thresholds.ts';
import type { VerdictName } from './verdict-rules.ts';

/** Treated and untreated batches of one lot in one winter, under the same conditions: one stratum. */
export interface LotPair {
  /** Its name; a lot may have several strata. */
  readonly lot: string;
  /** By treatment: the batches of each part are replicates of each other. */
  readonly treated: readonly (readonly Course[])[];
  readonly untreated: readonly Course[];
}

/** Treated against untreated over lots and winters; every lot is compared with itself only. */
export interface AcrossLots {
  /** For each pair, in order; the undefined ones take no part in the rest. */
  readonly comparisons: readonly (Comparison | Undefined)[];
  /** Lots that take part, and those of them in which seed may still germinate. */
  readonly lots: number;
  readonly open: number;
  /** What was compared: `sound` seedlings where the treatment is shown to cost seedlings, else germinated seed. */
  readonly outcome: 'germinated' | 'sound';
  /** Of the seeds that overdispersed replicates are worth. */
  readonly mantelHaenszel: MantelHaenszel | Undefined;
  /** Breslow-Day: whether the lots have one odds ratio. */
  readonly homogeneity: ChiSquare | Undefined;
  /** Stratified by lot; divided by the mean overdispersion of the lots. */
  readonly speed: SpeedTests;
  readonly verdict: VerdictName;
  /** The rule that decided; its words stand in ACROSS_RULES. */
  readonly rule: AcrossRuleId;
  readonly sentence: string;
}

/**
 * Combines the comparisons of several lots of one species or genus, stratified by lot; never a pooled table.
 *
 * @example
 * acrossLots([{ lot: 'A', treated: [[a1]], untreated: [a2] }, { lot: 'B', treated: [[b1]], untreated: [b2] }]).sentence
 * // 'Worth repeating: in 2 lots more of the treated seed germinated: odds ratio 13 (95 % interval 2.4 to
 * // 73).'
 */
export function acrossLots(pairs: readonly LotPair[]): AcrossLots {
  const comparisons = pairs.map(({ treated, untreated }) => compareParts(treated, untreated));
  const known = comparisons.filter(comparison => !isUndefined(comparison)) as readonly Comparison[];
  const cost = isCost(known);
  const outcome = cost ? 'sound' : 'germinated';
  const strata = known.map(comparison => stratumOf(comparison, comparison[outcome]));
  const combined = mantelHaenszel(strata);
  const ratio = isUndefined(combined) ? combined : combined.oddsRatio;
  const homogeneity = isUndefined(ratio) ? ratio : breslowDay(strata, ratio.value);
  const counted = pairs.filter((_, i) => !isUndefined(comparisons[i]!));
  const tables = counted.map(({ treated, untreated }) => speedPairs(treated.flat(), untreated));
  const speed = speedTests(tables, meanOverdispersion(known));
  const lots = new Set(counted.map(({ lot }) => lot)).size;
  const open = new Set(counted.filter((_, i) => isOpen(known[i]!)).map(({ lot }) => lot)).size;
  const findings: AcrossFindings = {
    strata: known, lots, open, cost, outcome, mantelHaenszel: combined, homogeneity, speed,
  };
  const { id: rule, verdict } = ACROSS_RULES.find(({ holds }) => holds(findings))!;
  const sentence = acrossSentence(verdict, rule, findings);
  return { comparisons, lots, open, outcome, mantelHaenszel: combined, homogeneity, speed, verdict, rule, sentence };
}

/** Whether seed may still germinate and change a comparison. */
function isOpen({ open }: Comparison): boolean {
  return open.treated + open.untreated > 0;
}

function isCost(comparisons: readonly Comparison[]): boolean {
  const weak = mantelHaenszel(comparisons.flatMap(comparison => {
    const { seedlings } = comparison;
    return isUndefined(seedlings.weak) ? [] : [stratumOf(comparison, seedlings.weak)];
  }));
  return !isUndefined(weak) && weak.excess > 0 && reaches(weak.corrected.p, THRESHOLDS.level.value);
}

function stratumOf({ overdispersion }: Comparison, { treated, untreated }: Contrast): Stratum {
  return { first: worth(treated, overdispersion), second: worth(untreated, overdispersion) };
}

function meanOverdispersion(strata: readonly Comparison[]): number {
  return strata.reduce((sum, { overdispersion }) => sum + overdispersion, 0) / strata.length;
}
