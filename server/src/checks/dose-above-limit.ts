import type { Dose, Entry } from '../journal/life.ts';
import type { StrengthLimit } from '../journal/limits.ts';
import { printQuantity } from '../model/quantity.ts';
import type { Agent } from '../solutions/agent.ts';
import type { Exact } from '../solutions/amounts.ts';
import { comparedPpm } from '../solutions/comparison.ts';
import { showStrength } from '../solutions/display.ts';
import { strengthInPpm } from '../solutions/strength.ts';
import { found, relatedTo, type Context, type Found } from './check.ts';

/** A dose stronger than the limit that holds for its agent and this plant. */
export function doseAboveLimit(
  { line }: Entry, { agent, fact, ppm, stock }: Dose, plant: string | undefined, { journal }: Context,
): Found | undefined {
  const limit = agent && ppm.ok ? journal.limits.strength(agent, plant) : undefined;
  const limited = limit && journal.agents.get(limit.of);
  if (!agent || !ppm.ok || !limit || !limited) return undefined;
  const most = ppmOf(limit, limited);
  if (!most || comparedPpm(ppm.value, agent).lte(most)) return undefined;
  const strength = fact.strength
    ? printQuantity(fact.strength.value)
    : `${showStrength(ppm.value, 'ppm').text} (stock ${stock ?? fact.name.text})`;
  const of = limit.of === agent.word ? '' : ` of ${limit.of}`;
  return found(line, 'dose-above-limit', fact.strength ?? fact.name,
    { agent: agent.word, strength, limit: `${printQuantity(limit.value)}${of}`, origin: limit.origin },
    { related: limit.line ? [relatedTo(journal.entryAt(limit.line)!, 'The limit')] : [] });
}

const memo = new WeakMap<StrengthLimit, Exact>();

/** The limit in ppm; a few limits judge thousands of doses. */
function ppmOf(limit: StrengthLimit, agent: Agent): Exact | undefined {
  const known = memo.get(limit);
  if (known) return known;
  const ppm = strengthInPpm(limit.value, agent);
  if (!ppm.ok) return undefined;
  const compared = comparedPpm(ppm.value, agent);
  memo.set(limit, compared);
  return compared;
}
