import { ACROSS_RULES, type AcrossFindings, type AcrossRuleId } from './across-rules.ts';
import { acrossSentence } from './across-text.ts';
import { breslowDay } from './breslow-day.ts';
import {
  togetherOf, type Claim, type Plain, type RankFinding, type Roads,
} from './claim.ts';
import { compareParts, type Comparison } from './comparison.ts';
import { newcombe, type Difference } from './difference.ts';
import { differenceOver, type Apart } from './difference-over.ts';
import { reaches } from './fisher.ts';
import type { Lasts } from './lasting.ts';
import { mantelHaenszel, type ChiSquare, type MantelHaenszel, type Stratum } from './mantel-haenszel.ts';
import { isUndefined, undefinedBecause, type Undefined } from './measured.ts';
import { normalTail } from './rank-test.ts';
import type { Finding, ShareTest, Side } from './share-test.ts';
import type { Sides } from './seen.ts';
import { ofDishes, type Spread } from './spread.ts';
import { stratifiedGreater } from './stratified.ts';
import { THRESHOLDS } from './thresholds.ts';
import type { VerdictName } from './verdict-rules.ts';
import { isMoreOften, isMostlyWeak, READINGS, weakOver, type WeakSeedlings } from './weak.ts';
import type { Course } from './course.ts';

/** Treated and untreated batches of one lot in one winter, under the same conditions: one stratum. */
export interface LotPair {
  /** Its name; a lot may have several strata. */
  readonly lot: string;
  /** By treatment: the batches of each part are dishes of one. */
  readonly treated: Side;
  readonly untreated: readonly Course[];
  /** Where they are cut at a day of judging, as they were counted later. */
  readonly whole?: Sides | undefined;
  /** The end may have been chosen by what was seen: only the smaller level counts. */
  readonly isStrict?: boolean;
}

/** The claim that one side is ahead in all lots together. p-values are one-sided. */
export interface AcrossClaim {
  readonly germinated: Finding;
  readonly sound: Finding;
  readonly ahead: Finding | Undefined;
  readonly sooner: Finding | Undefined;
  readonly p: number;
}

/** Treated against untreated over lots and winters; every lot is compared with itself only. */
export interface AcrossLots {
  /** For each pair, in order; the undefined ones take no part in the rest. */
  readonly comparisons: readonly (Comparison | Undefined)[];
  /** Lots that take part, and those of them in which seed may still germinate. */
  readonly lots: number;
  readonly open: number;
  readonly better: AcrossClaim | Undefined;
  readonly worse: AcrossClaim | Undefined;
  /** Treated less untreated over the lots, weighted by their seeds. */
  readonly difference: Difference | Undefined;
  /** Of the counts as shown; with the homogeneity for details. */
  readonly mantelHaenszel: MantelHaenszel | Undefined;
  /** Breslow-Day: whether the lots have one odds ratio. */
  readonly homogeneity: ChiSquare | Undefined;
  readonly verdict: VerdictName;
  /** The rule that decided; its words stand in ACROSS_RULES. */
  readonly rule: AcrossRuleId;
  readonly sentence: string;
}

/**
 * Combines the comparisons of several lots of one species or genus, stratified by lot; never a pooled table. `doses`
 * are the parts of these pairs that had one dose each, where there were several: what no dose shows is not claimed of
 * all together (a closed test: Marcus, Peritz & Gabriel 1976, Biometrika 63:655-660, from memory).
 */
export function acrossLots(pairs: readonly LotPair[], doses: readonly (readonly LotPair[])[] = []): AcrossLots {
  const found = findingsOf(pairs);
  const parts = doses.length > 1 ? doses.map(findingsOf) : [found];
  const findings = {
    ...found,
    betterInADose: parts.some(part => isShown(part.better, part.isStrict)),
    worseInADose: parts.some(part => isShown(part.worse, part.isStrict)),
  };
  const { id: rule, verdict } = ACROSS_RULES.find(({ holds }) => holds(findings))!;
  const { comparisons, lots, open, better, worse, difference, mantelHaenszel: ratio, homogeneity } = found;
  return {
    comparisons, lots, open, better, worse, difference, mantelHaenszel: ratio, homogeneity,
    verdict, rule, sentence: acrossSentence(verdict, rule, findings),
  };
}

type Found = Omit<AcrossFindings, 'betterInADose' | 'worseInADose'> & Pick<AcrossLots, 'comparisons'>;

function findingsOf(pairs: readonly LotPair[]): Found {
  const comparisons = pairs.map(({ treated, untreated, whole }) => compareParts(treated, untreated, whole));
  const known = comparisons.filter(comparison => !isUndefined(comparison)) as readonly Comparison[];
  const counted = pairs.filter((_, i) => !isUndefined(comparisons[i]!));
  const strata = known.map(({ germinated }): Stratum => ({ first: germinated.treated, second: germinated.untreated }));
  const combined = mantelHaenszel(strata);
  const ratio = isUndefined(combined) ? combined : combined.oddsRatio;
  const open = new Set(counted.filter((_, i) => isOpen(known[i]!)).map(({ lot }) => lot)).size;
  return {
    comparisons, strata: known,
    lots: new Set(counted.map(({ lot }) => lot)).size,
    open, isStrict: open > 0 || counted.some(pair => pair.isStrict) || known.some(({ isCutShort }) => isCutShort),
    better: acrossClaim(known.map(({ better }) => better), 'more or sooner'),
    worse: acrossClaim(known.map(({ worse }) => worse), 'more, sooner or sounder'),
    weaker: isWeakerIn(known.map(({ weak }) => [weak.treated, weak.untreated])),
    untreatedWeaker: isWeakerIn(known.map(({ untreatedWeak: { treated, untreated } }) => [untreated, treated])),
    difference: differenceOver(known.map(({ germinated }) => germinated)),
    inTheEnd: { better: lastsOf(known.map(({ better }) => better)), worse: lastsOf(known.map(({ worse }) => worse)) },
    mantelHaenszel: combined,
    homogeneity: isUndefined(ratio) ? ratio : breslowDay(strata, ratio.value),
    ready: known.length > 0 && known.every(({ isReady }) => isReady),
  };
}

/** Whether seed may still germinate and change a comparison. */
function isOpen({ open }: Comparison): boolean {
  return open.treated + open.untreated > 0;
}

function isShown(claim: AcrossClaim | Undefined, isStrict: boolean): boolean {
  return !isUndefined(claim) && reaches(claim.p, isStrict ? THRESHOLDS.soFar.value : THRESHOLDS.level.value);
}

function acrossClaim(claims: readonly Claim[], roads: Roads): AcrossClaim | Undefined {
  if (claims.length === 0) return undefinedBecause('no lot has treated and untreated seed that was counted');
  const ranks = (of: (claim: Claim) => RankFinding | Undefined): Plain | Undefined => {
    const found = claims.map(of).filter(finding => !isUndefined(finding)) as readonly RankFinding[];
    if (found.length === 0) return of(claims[0]!);
    const seeds = found.length === 1 ? found[0]!.seeds : normalTail(found);
    const spread = meanSpread(found.map(finding => finding.spread));
    return { seeds, p: ofDishes(seeds, spread, 'days'), spread };
  };
  const tests = {
    germinated: shareOver(claims.map(({ germinated }) => germinated)),
    sound: shareOver(claims.map(({ sound }) => sound)),
    ahead: ranks(({ ahead }) => ahead), sooner: ranks(({ sooner }) => sooner),
  };
  const paces = claims.flatMap(({ correlations }) => correlations.ahead ?? []);
  const correlations = {
    ahead: paces.length === 0 ? undefined : Math.min(...paces),
    sound: Math.min(...claims.map(claim => claim.correlations.sound)),
  };
  return togetherOf(tests, correlations, roads);
}

function shareOver(found: readonly ShareTest[]): Plain {
  const seeds = stratifiedGreater(found);
  const spread = meanSpread(found.map(finding => finding.spread));
  return { seeds, p: ofDishes(seeds, spread, 'share'), spread };
}

/** Undefined where the last looks of no lot say anything against the claim. */
function lastsOf(claims: readonly Claim[]): Lasts | undefined {
  if (claims.every(({ inTheEnd }) => !inTheEnd)) return undefined;
  const over = (what: 'germinated' | 'sound') => {
    const found = claims.map(claim => claim.inTheEnd?.[what] ?? claim[what]);
    return { p: shareOver(found).p, difference: differenceOver(found.map(contrastOf)) };
  };
  return { germinated: over('germinated'), sound: over('sound') };
}

function contrastOf({ first, second }: ShareTest): Apart {
  return { treated: first, untreated: second, difference: newcombe(first, second) };
}

/** Of several lots, each with dishes of its own. */
function meanSpread(spreads: readonly Spread[]): Spread {
  const df = spreads.reduce((sum, spread) => sum + spread.df, 0);
  return {
    df,
    factor: df === 0 ? 1 : spreads.reduce((sum, spread) => sum + spread.factor * spread.df, 0) / df,
    size: Math.max(0, ...spreads.map(({ size }) => size)),
  };
}

/** Mantel-Haenszel over the germinated seed of the lots, if only by one reading of the words, see isWeakerThan. */
function isWeakerIn(found: readonly (readonly [one: WeakSeedlings, other: WeakSeedlings])[]): boolean {
  const [one, other] = [weakOver(found.map(([side]) => side)), weakOver(found.map(([, side]) => side))];
  if (isMoreOften(one, other) || isMostlyWeak(one, other)) return true;
  const counted = found.filter(sides => sides.every(({ of }) => of > 0));
  return counted.length > 0 && READINGS.some(reading => {
    const strata = counted.map(([a, b]): Stratum => (
      { first: { x: a[reading], n: a.of }, second: { x: b[reading], n: b.of } }));
    return reaches(stratifiedGreater(strata), THRESHOLDS.level.value);
  });
}
