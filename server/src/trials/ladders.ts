/** Several doses of one agent in one lot, as one ladder. */
import { ladderOf, type Ladder } from '../measures/ladder.ts';
import { exact } from '../solutions/amounts.ts';
import { strengthSign } from '../solutions/display.ts';
import { usualStrengthText } from '../solutions/strength.ts';
import type { Agent } from '../solutions/agent.ts';
import { isSameDose } from './alike.ts';
import type { Group } from './groups.ts';
import type { Contest } from './lot-trial.ts';
import { coursesOfPair, isFull, type FullPair } from './pairs.ts';
import { isByEye, isSameCourse, onlyDose, type ActiveSoak } from './treatment.ts';

/** Doses in ppm. */
export interface DoseLadder {
  readonly agent: Agent;
  readonly untreated: Group;
  /** Ascending by dose, in step with the doses of `ladder`. */
  readonly rungs: readonly Contest[];
  readonly ladder: Ladder;
}

interface Rung {
  readonly contest: FullPair & Contest;
  readonly soak: ActiveSoak;
  readonly agent: Agent;
  readonly ppm: number;
}

/**
 * The ladders among the contests of a lot: two or more known doses of one agent, soaked equally long at the same point
 * of the seed's life, against the same untreated seed. A contest in which more differs than the treatment is no rung.
 */
export function laddersOf(contests: readonly Contest[]): DoseLadder[] {
  const ladders: Rung[][] = [];
  for (const rung of contests.flatMap(rungOf)) {
    const ladder = ladders.find(rungs => rungs.every(other => isOneLadder(other, rung)));
    if (ladder) ladder.push(rung);
    else ladders.push([rung]);
  }
  return ladders.filter(rungs => rungs.length > 1).map(rungs => {
    const ordered = rungs.sort((a, b) => a.ppm - b.ppm);
    const { agent, contest: { untreated } } = ordered[0]!;
    const doses = ordered.map(({ ppm, contest }) => ({
      dose: ppm, name: nameOf(ppm, agent, isByEye(contest.treated)),
      batches: coursesOfPair(contest).treated, comparison: contest.comparison, verdict: contest.verdict,
    }));
    return {
      agent, untreated,
      rungs: ordered.map(({ contest }) => contest),
      ladder: ladderOf(coursesOfPair(ordered[0]!.contest).untreated, doses),
    };
  });
}

/** Example: '947.4 ppm'; 'about 250 ppm' where powder was halved by eye */
function nameOf(ppm: number, agent: Agent, byEye: boolean): string {
  return `${strengthSign({ isAtMost: false, isAbout: byEye })}${usualStrengthText(exact(ppm), agent)}`;
}

function rungOf(contest: Contest): Rung[] {
  const only = onlyDose(contest.treated.treatment);
  if (!isFull(contest) || contest.alsoDiffers.length > 0 || only?.dose.ppm === undefined) return [];
  return [{ contest, soak: only.soak, agent: only.dose.agent, ppm: only.dose.ppm }];
}

function isOneLadder(a: Rung, b: Rung): boolean {
  return a.agent.word === b.agent.word && a.contest.untreated === b.contest.untreated && isSameCourse(a.soak, b.soak)
    && !isSameDose(a.ppm, b.ppm);
}
