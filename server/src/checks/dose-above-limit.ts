import type { Dose, Entry } from '../journal/life.ts';
import type { StrengthLimit } from '../journal/limits.ts';
import { printQuantity } from '../model/quantity.ts';
import type { Agent } from '../solutions/agent.ts';
import { exact, type Exact } from '../solutions/amounts.ts';
import { comparedPpm, isStronger, substanceOf } from '../solutions/comparison.ts';
import { strengthSign } from '../solutions/display.ts';
import { strengthInPpm, usualStrengthText } from '../solutions/strength.ts';
import { listed } from '../syntax/nearest.ts';
import { found, relatedTo, type Context, type Found } from './check.ts';

/**
 * A dose stronger than the limit that holds for its agent and this plant. A salt beside its acid adds to it: the one
 * that goes above the limit with those before it is marked.
 */
export function doseAboveLimit(
  { line }: Entry, dose: Dose, all: readonly Dose[], plant: string | undefined, { journal }: Context,
): Found | undefined {
  const { agent, fact, ppm, written } = dose;
  const limit = agent && ppm.ok ? journal.limits.strength(agent, plant) : undefined;
  const limited = limit && journal.agents.get(limit.of);
  if (!agent || !ppm.ok || !limit || !limited) return undefined;
  const most = ppmOf(limit, limited);
  const own = comparedPpm(ppm.value, agent);
  const others = sumBefore(dose, all);
  const units = [written?.unit, limit.value.unit] as const;
  if (!most || !isStronger(own.add(others), most, units)) return undefined;
  const inAll = isStronger(own, most, units) ? '' : ` with ${usualStrengthText(others, limited)} of ${limited.word} beside it`;
  const upTo = strengthSign({ isAtMost: dose.stale !== undefined, isAbout: dose.byEye });
  const strength = `${upTo}${written ? printQuantity(written) : `${usualStrengthText(ppm.value, agent)}${behind(dose)}`}${inAll}`;
  const of = limit.of === agent.word ? '' : ` of ${limit.of}`;
  return found(line, 'dose-above-limit', fact.strength ?? fact.name,
    { agent: agent.word, strength, limit: `${printQuantity(limit.value)}${of}`, origin: limit.origin },
    { related: limit.line ? [relatedTo(journal.entryAt(limit.line)!, 'The limit')] : [] });
}

/** ppm of the same substance in the doses that stand before this one. */
function sumBefore({ agent, parts }: Dose, all: readonly Dose[]): Exact {
  let sum = exact(0);
  for (const { agent: other, ppm } of all.slice(0, all.findIndex(each => each.parts === parts))) {
    const isSame = other && agent && substanceOf(other) === substanceOf(agent);
    if (isSame && ppm.ok) sum = sum.add(comparedPpm(ppm.value, other));
  }
  return sum;
}

/** Example: ' (stock G2)'; ' (stocks G1 and G2)' */
function behind({ parts }: Dose): string {
  const stocks = [...new Set(parts.flatMap(({ stock }) => stock ?? []))];
  return stocks.length === 0 ? '' : ` (${stocks.length === 1 ? 'stock' : 'stocks'} ${listed(stocks, 'and')})`;
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
