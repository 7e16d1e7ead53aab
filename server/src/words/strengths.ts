/** A strength in the units that growers, labels and papers use. */
import type { Strength } from '../model/quantity.ts';
import type { Agent, Solubility } from '../solutions/agent.ts';
import { readingsOf, type Assumption } from '../solutions/assumptions.ts';
import { exact } from '../solutions/amounts.ts';
import type { Refusal } from '../solutions/outcome.ts';
import { acidEquivalent, availableChlorine, convertStrength, strengthInPpm, unitsOf } from '../solutions/strength.ts';
import { showMade, showStrength } from '../solutions/display.ts';

export interface Equivalents {
  /** Each with the sign before it: '= 0.05 %', '≈ 1.444 mM'. */
  readonly texts: readonly string[];
  readonly assumptions: readonly Assumption[];
  /** Why there are not more of them. */
  readonly refusals: readonly Refusal[];
}

/** A strength in the units of its agent, but for the one that it is given in. */
export function equivalentsOf(strength: Strength, agent: Agent): Equivalents {
  const texts: string[] = [];
  const assumptions = new Map<string, Assumption>();
  const refusals = new Map<string, Refusal>();
  for (const unit of unitsOf(agent)) {
    if (unit === strength.unit || (unit === 'mM' && strength.unit === 'uM')) continue;
    const converted = convertStrength(strength, unit === 'mM' && isWeak(strength, agent) ? 'uM' : unit, agent);
    if (converted.ok) {
      texts.push(`${converted.value.shown.exact ? '=' : '≈'} ${converted.value.shown.text}`);
      for (const assumption of converted.value.assumptions) assumptions.set(assumption.id, assumption);
    } else refusals.set(converted.refusal.code, converted.refusal);
  }
  const ppm = strengthInPpm(strength, agent);
  const acid = ppm.ok ? acidEquivalent(ppm.value, agent) : undefined;
  if (acid && agent.acid) texts.push(`≈ ${showMade(acid, 'ppm').text} ${agent.acid.word}`);
  if (ppm.ok && agent.word === 'bleach') texts.push(`≈ ${showStrength(availableChlorine(ppm.value).div(10_000), '%').text} available chlorine`);
  for (const reading of readingsOf(agent)) assumptions.set(reading.id, reading);
  return { texts, assumptions: [...assumptions.values()], refusals: [...refusals.values()] };
}

/** Below a hundredth of a mM people write uM. */
function isWeak(strength: Strength, agent: Agent): boolean {
  const converted = convertStrength(strength, 'mM', agent);
  return converted.ok && converted.value.value.lt(exact(0.01));
}

/** What dissolves in water, in the unit of labels. Example: '5 g/L' */
export function dissolvedText({ ppm }: Solubility): string {
  return showStrength(ppm.div(1000), 'g/L').text;
}

/** Said of a strength that exceeds it. */
export function solubilityText(solubility: Solubility): string {
  return `More than dissolves in water: ${dissolvedText(solubility)} (${solubility.source.text}).`;
}
