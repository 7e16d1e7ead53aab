import type { Dose, Entry } from '../journal/life.ts';
import { printQuantity } from '../model/quantity.ts';
import { compareDoses } from '../solutions/comparison.ts';
import { showStrength } from '../solutions/display.ts';
import { found, relatedTo, type Context, type Found } from './check.ts';

/** A dose stronger than the limit that holds for its agent and this plant. */
export function doseAboveLimit(
  { line }: Entry, { agent, fact, ppm, stock }: Dose, plant: string | undefined, { journal }: Context,
): Found | undefined {
  const limit = agent && ppm.ok ? journal.limits.strength(agent, plant) : undefined;
  const limited = limit && journal.agents.get(limit.of);
  if (!agent || !ppm.ok || !limit || !limited) return undefined;
  const comparison = compareDoses(
    { agent, strength: { value: ppm.value.valueOf(), unit: 'ppm' } }, { agent: limited, strength: limit.value });
  if (!comparison.comparable || comparison.order <= 0) return undefined;
  const strength = fact.strength
    ? printQuantity(fact.strength.value)
    : `${showStrength(ppm.value, 'ppm').text} (stock ${stock ?? fact.name.text})`;
  const of = limit.of === agent.word ? '' : ` of ${limit.of}`;
  return found(line, 'dose-above-limit', fact.strength ?? fact.name,
    { agent: agent.word, strength, limit: `${printQuantity(limit.value)}${of}`, origin: limit.origin },
    { related: limit.line ? [relatedTo(journal.entryAt(limit.line)!, 'The limit')] : [] });
}
