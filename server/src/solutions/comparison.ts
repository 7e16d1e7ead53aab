/** Which of two doses is the stronger, where that can be said. */
import type { StrengthUnit } from '../model/quantity.ts';
import type { Agent } from './agent.ts';
import { type Exact, exact } from './amounts.ts';
import { type Assumption, isMolar, readingsOf } from './assumptions.ts';
import { acidEquivalent, type GivenStrength, strengthInPpm } from './strength.ts';
import { HALVING_ERROR } from './uncertainty.ts';

/** Doses that differ by no more than this share are one: nobody measures closer. Common practice, no source. */
export const SAME_SHARE = 0.05;

export interface Dose {
  readonly agent: Agent;
  readonly strength: GivenStrength;
}

export type Comparison =
  | {
    readonly comparable: true;
    /** Negative when the first is weaker, 0 when they are equal, positive when it is stronger. */
    readonly order: number;
    /** The first divided by the second; undefined where the second is 0. */
    readonly ratio: Exact | undefined;
    readonly assumptions: readonly Assumption[];
  }
  | { readonly comparable: false; readonly why: string };

/**
 * Compares two doses of one agent; a salt with its acid by what acid it stands for. Doses of different
 * agents, and one that nobody measured, cannot be compared.
 */
export function compareDoses(first: Dose, second: Dose): Comparison {
  const [a, b] = [first, second].map(({ agent, strength }) => strengthInPpm(strength, agent));
  if (!a!.ok) return { comparable: false, why: a!.refusal.message };
  if (!b!.ok) return { comparable: false, why: b!.refusal.message };
  if (first.agent.word === second.agent.word) return ordered(a!.value, b!.value, readingsOf(first.agent));
  if (substanceOf(first.agent) !== substanceOf(second.agent)) {
    const why = `${first.agent.word} and ${second.agent.word} are different agents: their strengths cannot be compared.`;
    return { comparable: false, why };
  }
  return ordered(
    comparedPpm(a!.value, first.agent),
    comparedPpm(b!.value, second.agent),
    [...readingsOf(first.agent), ...readingsOf(second.agent)],
  );
}

/** The word of the agent that a dose counts as: for a salt its acid. */
export function substanceOf(agent: Agent): string {
  return agent.acid?.word ?? agent.word;
}

/** ppm of what a dose counts as. */
export function comparedPpm(ppm: Exact, agent: Agent): Exact {
  return acidEquivalent(ppm, agent) ?? ppm;
}

/** Molarities are written with three digits: 500 ppm of GA3 are “1.44 mM”, which is 498.8 ppm. */
const ROUNDED_SHARE = 0.01;

/**
 * Whether a dose is stronger than another, both in ppm of what they count as. Where one of them was written as a
 * molarity and the other by its mass, by more than the rounding of a molarity. The units are those written; undefined
 * for what was not.
 */
export function isStronger(
  dose: Exact, other: Exact, written: readonly [StrengthUnit | undefined, StrengthUnit | undefined],
): boolean {
  const [a, b] = written.map(unit => unit !== undefined && isMolar(unit));
  return dose.gt(a === b ? other : other.mul(exact(1).add(ROUNDED_SHARE)));
}

/**
 * Whether what somebody wrote of a liquid can be what it holds, both in ppm: as near as people measure, or as they
 * halve powder by eye that often.
 */
export function mayBeAsStrong(written: Exact, held: Exact, halvings: number): boolean {
  const error = halvings === 0 ? exact(SAME_SHARE) : HALVING_ERROR;
  let [low, high] = [held, held];
  for (let n = 0; n < Math.max(halvings, 1); n++) {
    [low, high] = [low.mul(exact(1).sub(error)), high.mul(exact(1).add(error))];
  }
  return written.gte(low) && written.lte(high);
}

function ordered(a: Exact, b: Exact, assumptions: readonly Assumption[]): Comparison {
  return { comparable: true, order: a.compare(b), ratio: b.n === 0n ? undefined : a.div(b), assumptions };
}
