/** Several doses of one agent in one lot, as one ladder. */
import { judgeLadder, type Ladder } from '../measures/ladder.ts';
import type { Agent } from '../solutions/agent.ts';
import { isSameDose } from './alike.ts';
import type { Group } from './groups.ts';
import { coursesOfPair, isFull, type FullPair, type Pair } from './pairs.ts';
import { isSameCourse, onlyDose, type ActiveSoak } from './treatment.ts';

/** Doses in ppm. */
export interface DoseLadder {
  readonly agent: Agent;
  readonly untreated: Group;
  /** Ascending by dose, in step with the doses of `ladder`. */
  readonly rungs: readonly Pair[];
  readonly ladder: Ladder;
}

interface Rung {
  readonly pair: FullPair;
  readonly soak: ActiveSoak;
  readonly agent: Agent;
  readonly ppm: number;
}

/**
 * The ladders among pairs: two or more known doses of one agent, soaked equally long at the same point of the seed's
 * life, against the same untreated seed. A pair in which more differs than the treatment is no rung.
 */
export function laddersOf(pairs: readonly Pair[]): DoseLadder[] {
  const ladders: Rung[][] = [];
  for (const rung of pairs.flatMap(rungOf)) {
    const ladder = ladders.find(rungs => rungs.every(other => isOneLadder(other, rung)));
    if (ladder) ladder.push(rung);
    else ladders.push([rung]);
  }
  return ladders.filter(rungs => rungs.length > 1).map(rungs => {
    const ordered = rungs.sort((a, b) => a.ppm - b.ppm);
    const { agent, pair: { untreated } } = ordered[0]!;
    const doses = ordered.map(({ ppm, pair }) => ({ dose: ppm, batches: coursesOfPair(pair).treated }));
    return {
      agent, untreated,
      rungs: ordered.map(({ pair }) => pair),
      ladder: judgeLadder(coursesOfPair(ordered[0]!.pair).untreated, doses),
    };
  });
}

function rungOf(pair: Pair): Rung[] {
  const only = onlyDose(pair.treated.treatment);
  if (!isFull(pair) || pair.alsoDiffers.length > 0 || only?.dose.ppm === undefined) return [];
  return [{ pair, soak: only.soak, agent: only.dose.agent, ppm: only.dose.ppm }];
}

function isOneLadder(a: Rung, b: Rung): boolean {
  return a.agent.word === b.agent.word && a.pair.untreated === b.pair.untreated && isSameCourse(a.soak, b.soak)
    && !isSameDose(a.ppm, b.ppm);
}
