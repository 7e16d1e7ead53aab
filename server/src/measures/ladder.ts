import { bestDose } from './best-dose.ts';
import type { Comparison } from './comparison.ts';
import { germinated, shareOf } from './contrast.ts';
import { seedsCounted, type Course } from './course.ts';
import { lastLook, until } from './looks.ts';
import { isUndefined, undefinedBecause, type Known, type Undefined } from './measured.ts';
import { jointOverdispersion, poolOf } from './replicates.ts';
import { sharedLooks } from './shared-looks.ts';
import { rankScores, trend, type Trend } from './trend.ts';
import type { Verdict } from './verdict.ts';

/** The batches of a lot that got one dose, and what they came to beside the untreated seed. */
export interface Dose {
  /** Strength of the agent, above 0; in any unit, the same in the whole ladder. */
  readonly dose: number;
  /** The same as a reader is told it, with its unit. */
  readonly name: string;
  readonly batches: readonly Course[];
  readonly comparison: Comparison | Undefined;
  readonly verdict: Verdict;
}

/** A ladder of doses in one lot. */
export interface Ladder {
  readonly doses: readonly Dose[];
  /** Of germinated seed, untreated included; scores are the ranks 0, 1, 2, ... of the doses. */
  readonly trend: Trend | Undefined;
  /** The day of the trend, where some batch was counted again after it. */
  readonly trendBy: number | undefined;
  /** The dose that the evidence carries, if it carries one. */
  readonly best: Known | Undefined;
}

/** A ladder of doses that were judged together, see Room. */
export function ladderOf(untreated: readonly Course[], doses: readonly Dose[]): Ladder {
  const measured = doses.filter(({ comparison }) => !isUndefined(comparison));
  const sides = [untreated, ...measured.map(({ batches }) => batches)];
  // Beside a dose that is measured no batch is without looks.
  const day = measured.length === 0 ? undefined : sharedLooks(sides.flat()).at(-1);
  const isEarly = day !== undefined && sides.flat().some(course => lastLook(course) > day);
  return { doses, trend: trendOf(sides, measured, day), trendBy: isEarly ? day : undefined, best: bestDose(doses) };
}

/** The trend on the last day on which all batches were looked at. */
function trendOf(
  sides: readonly (readonly Course[])[], doses: readonly Dose[], day: number | undefined,
): Trend | Undefined {
  if (doses.length === 0) return undefinedBecause('no dose can be compared');
  if (day === undefined) return undefinedBecause('there is no day on which all batches were looked at');
  const seen = sides.map(side => side.map(course => until(course, day)));
  const scores = rankScores([0, ...doses.map(({ dose }) => dose)]);
  const rungs = seen.map((side, i) => ({ score: scores[i]!, ...shareOf(side, germinated, seedsCounted) }));
  return trend(rungs, jointOverdispersion(seen.map(poolOf)));
}
