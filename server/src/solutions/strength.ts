/**
 * Strengths in one unit and another: 1 ppm is 1 mg/L in dilute water, 1 % is 10 g/L, mM = mg/L / molar
 * mass. The exact form of a strength is ppm (see amounts.ts).
 */
import type { Strength, StrengthUnit } from '../model/quantity.ts';
import type { Agent } from './agent.ts';
import { type Exact, exact } from './amounts.ts';
import { type Assumption, assumptionsBetween, chlorinePerHypochlorite } from './assumptions.ts';
import { type Shown, showMade, showStrength, toNumber } from './display.ts';
import { known, type Outcome, refused } from './outcome.ts';

/** A strength as a record gives it: a little powder on a damp towel has none. */
export type GivenStrength = Strength | 'unmeasured';

export interface Converted {
  readonly value: Exact;
  readonly unit: StrengthUnit;
  readonly shown: Shown<StrengthUnit>;
  readonly assumptions: readonly Assumption[];
}

const notMeasuredText = 'Nothing was measured, so it has no ppm and is left out of comparisons of doses; ' +
  'against untreated seed it counts as treated.';
const notMeasured = refused('unmeasured', notMeasuredText);

/** ppm of one unit; undefined where the molar mass is needed and not known. */
function ppmPer(unit: StrengthUnit, agent: Agent): Exact | undefined {
  switch (unit) {
    case 'ppm':
    case 'mg/L': return exact(1);
    case 'g/L': return exact(1000);
    case '%': return exact(10_000);
    case 'mM': return agent.molarMass;
    case 'uM': return agent.molarMass?.div(1000);
  }
}

function factorOf(unit: StrengthUnit, agent: Agent): Outcome<Exact> {
  if (agent.role === 'water') return refused('no-strength', 'Water has no strength.');
  if (agent.strengthIs === 'by volume' && unit !== '%' && unit !== 'ppm') {
    return refused('by-volume', `${agent.word} is measured by volume, and what it holds is unknown. Use %.`);
  }
  const factor = ppmPer(unit, agent);
  if (factor === undefined) {
    const text = `Plumule knows no molar mass of ${agent.word}, so it cannot convert ${unit}. Declare it: agent ${agent.word}, N g/mol.`;
    return refused('no-molar-mass', text);
  }
  return known(factor);
}

/**
 * The exact ppm (mg/L; for a liquid by volume uL/L) of a strength. Refused: unmeasured, no molar mass, by
 * volume, water.
 */
export function strengthInPpm(strength: GivenStrength, agent: Agent): Outcome<Exact> {
  if (strength === 'unmeasured') return notMeasured;
  const factor = factorOf(strength.unit, agent);
  return factor.ok ? known(exact(strength.value).mul(factor.value)) : factor;
}

/** The inverse of strengthInPpm, refused for the same reasons. */
export function strengthFromPpm(ppm: Exact, unit: StrengthUnit, agent: Agent): Outcome<Exact> {
  const factor = factorOf(unit, agent);
  return factor.ok ? known(ppm.div(factor.value)) : factor;
}

/**
 * A strength in another unit, with what that takes for granted.
 *
 * Example: 500 ppm of GA3 in mM is 1.443505986... (500 / 346.379)
 */
export function convertStrength(
  strength: GivenStrength,
  unit: StrengthUnit,
  agent: Agent,
): Outcome<Converted> {
  if (strength === 'unmeasured') return notMeasured;
  const ppm = strengthInPpm(strength, agent);
  if (!ppm.ok) return ppm;
  const value = strengthFromPpm(ppm.value, unit, agent);
  if (!value.ok) return value;
  return known({
    value: value.value,
    unit,
    shown: showStrength(value.value, unit),
    assumptions: assumptionsBetween(strength.unit, unit, agent),
  });
}

type Told = Pick<Agent, 'strengthIs' | 'role'>;

/** From here on (10 %) no label and no grower tells a strength in ppm. Common practice, no source. */
const MOST_PPM = 100_000;

/**
 * The unit in which a strength of an agent is told where none is written: % of the volume for what is measured by it,
 * and % of disinfectants, as on their labels, and of what is as strong as an acid that was bought.
 */
export function usualUnit({ strengthIs, role }: Told, ppm: number): 'ppm' | '%' {
  return strengthIs === 'by volume' || role === 'disinfectant' || ppm >= MOST_PPM ? '%' : 'ppm';
}

/** The units that a strength of an agent has. */
export function unitsOf({ strengthIs }: Pick<Agent, 'strengthIs'>): readonly StrengthUnit[] {
  return strengthIs === 'by volume' ? ['%'] : ['ppm', 'mg/L', 'g/L', '%', 'mM'];
}

/** In the unit in which strengths of the agent are told: 500 ppm of GA3; 10 % of smoke water, which is 100000 ppm. */
export function usualStrength(ppm: Exact, agent: Told): Shown<'ppm' | '%'> {
  const unit = usualUnit(agent, toNumber(ppm));
  return showMade(unit === '%' ? ppm.div(10_000) : ppm, unit);
}

export function usualStrengthText(ppm: Exact, agent: Told): string {
  return usualStrength(ppm, agent).text;
}

/** The same with as many digits as a label has, and as it takes to see on which side of a limit it lies. */
export function fullStrength(ppm: Exact, agent: Told): Shown<'ppm' | '%'> {
  const { unit } = usualStrength(ppm, agent);
  return showStrength(unit === '%' ? ppm.div(10_000) : ppm, unit);
}

/** A strength in a unit, or in the usual one where it has none in that unit. */
export function strengthText(ppm: Exact, unit: StrengthUnit, agent: Agent): string {
  const value = strengthFromPpm(ppm, unit, agent);
  return value.ok ? showMade(value.value, unit).text : usualStrengthText(ppm, agent);
}

/** ppm of the acid that ppm of a salt stands for; undefined for an agent that is no salt. */
export function acidEquivalent(ppm: Exact, agent: Agent): Exact | undefined {
  return agent.acid === undefined ? undefined : ppm.mul(agent.acid.perSalt);
}

/** Available chlorine (mg/L of Cl2) of a strength of sodium hypochlorite (mg/L). */
export function availableChlorine(hypochloritePpm: Exact): Exact {
  return hypochloritePpm.mul(chlorinePerHypochlorite);
}
