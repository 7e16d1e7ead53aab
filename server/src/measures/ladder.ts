import { bestDose } from './best-dose.ts';
import { compare, type Comparison } from './comparison.ts';
import { germinated, shareOf } from './contrast.ts';
import { seedsCounted, type Course } from './course.ts';
import { judgedBy } from './evidence.ts';
import { holm } from './holm.ts';
import { isUndefined, undefinedBecause, type Known, type Undefined } from './measured.ts';
import { jointOverdispersion, poolOf } from './replicates.ts';
import { sameAge } from './same-age.ts';
import { rankScores, trend, type Trend } from './trend.ts';
import { judge, type Verdict } from './verdict.ts';

/** The batches of a lot that got one dose. */
export interface Dose {
  /** Strength of the agent, above 0; in any unit, the same in the whole ladder. */
  readonly dose: number;
  readonly batches: readonly Course[];
  /** What else differs from the untreated seed, see judge. */
  readonly alsoDiffers?: readonly string[];
}

export interface JudgedDose {
  readonly dose: number;
  readonly comparison: Comparison | Undefined;
  /** With p-values corrected after Holm over the doses of the ladder. */
  readonly verdict: Verdict;
}

/** A ladder of doses in one lot. */
export interface Ladder {
  readonly doses: readonly JudgedDose[];
  /** Of germinated seed, untreated included; scores are the ranks 0, 1, 2, ... of the doses. */
  readonly trend: Trend | Undefined;
  /** The dose that the evidence carries, if it carries one. */
  readonly best: Known | Undefined;
}

/**
 * Judges each dose of a ladder against the untreated seed. With several doses one of them looks good by
 * chance more often; Holm's correction of Fisher's and of the log-rank p-values makes up for that.
 */
export function judgeLadder(untreated: readonly Course[], doses: readonly Dose[]): Ladder {
  const comparisons = doses.map(({ batches }) => compare(batches, untreated));
  const fisherPs = corrected(comparisons, comparison => judgedBy(comparison).contrast.fisher.twoSided);
  const speedPs = corrected(comparisons, ({ speed: { combined } }) => (isUndefined(combined) ? undefined : combined.p));
  const judged = doses.map(({ dose, alsoDiffers = [] }, i): JudgedDose => {
    const comparison = comparisons[i]!;
    const ps = { fisher: fisherPs[i] ?? 1, speed: speedPs[i] };
    return { dose, comparison, verdict: judge(comparison, { alsoDiffers, corrected: ps }) };
  });
  const measured = doses.filter((_, i) => !isUndefined(comparisons[i]!));
  return { doses: judged, trend: trendOf(untreated, measured), best: bestDose(judged) };
}

/** Corrected p-values in the places of those that exist. */
function corrected(
  comparisons: readonly (Comparison | Undefined)[],
  pOf: (comparison: Comparison) => number | undefined,
): readonly (number | undefined)[] {
  const ps = comparisons.map(comparison => (isUndefined(comparison) ? undefined : pOf(comparison)));
  const adjusted = [...holm(ps.filter(p => p !== undefined))];
  return ps.map(p => (p === undefined ? undefined : adjusted.shift()));
}

function trendOf(untreated: readonly Course[], doses: readonly Dose[]): Trend | Undefined {
  if (doses.length === 0) return undefinedBecause('no dose can be compared');
  const { sides } = sameAge([untreated, ...doses.map(({ batches }) => batches)]);
  const scores = rankScores([0, ...doses.map(({ dose }) => dose)]);
  const rungs = sides.map((side, i) => ({ score: scores[i]!, ...shareOf(side, germinated, seedsCounted) }));
  return trend(rungs, jointOverdispersion(sides.map(poolOf)));
}
