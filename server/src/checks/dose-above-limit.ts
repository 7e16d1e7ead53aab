import type { Dose, Entry } from '../journal/life.ts';
import type { Journal } from '../journal/journal.ts';
import type { StrengthLimit } from '../journal/limits.ts';
import { printQuantity } from '../model/quantity.ts';
import type { Agent } from '../solutions/agent.ts';
import { exact, type Exact } from '../solutions/amounts.ts';
import { comparedPpm, isStronger, substanceOf } from '../solutions/comparison.ts';
import { strengthSign } from '../solutions/display.ts';
import { strengthInPpm, fullStrength } from '../solutions/strength.ts';
import { listed } from '../syntax/nearest.ts';
import { found, relatedTo, type Context, type Found } from './check.ts';

/**
 * A dose stronger than the limit that holds for its agent and this plant. A salt beside its acid adds to it: the one
 * that goes above the limit with those before it is marked, whichever of them the limit is for.
 */
export function doseAboveLimit(
  { line }: Entry, dose: Dose, all: readonly Dose[], plant: string | undefined, { journal }: Context,
): Found | undefined {
  const { agent, fact, ppm, written } = dose;
  if (!agent || !ppm.ok) return undefined;
  const before = sameBefore(agent, dose, all);
  const [strictest] = [agent, ...before.map(each => each.agent)]
    .flatMap(each => limitFor(each, plant, journal)).sort((a, b) => a.most.compare(b.most));
  if (!strictest) return undefined;
  const { limit, limited, most } = strictest;
  const own = comparedPpm(ppm.value, agent);
  const others = before.reduce((sum, each) => sum.add(each.counted), exact(0));
  const units = [written?.unit, limit.value.unit] as const;
  if (!isStronger(own.add(others), most, units)) return undefined;
  const inAll = isStronger(own, most, units) ? '' : ` with ${fullStrength(others, limited).text} of ${limited.word} beside it`;
  const upTo = strengthSign({ isAtMost: dose.stale !== undefined, isAbout: dose.byEye });
  const strength = `${upTo}${written ? printQuantity(written) : `${fullStrength(ppm.value, agent).text}${behind(dose)}`}${inAll}`;
  const of = limit.of === agent.word ? '' : ` of ${limit.of}`;
  return found(line, 'dose-above-limit', fact.strength ?? fact.name,
    { agent: agent.word, strength, limit: `${printQuantity(limit.value)}${of}`, origin: limit.origin },
    { related: limit.line ? [relatedTo(journal.entryAt(limit.line)!, 'The limit')] : [] });
}

interface Judged {
  readonly limit: StrengthLimit;
  /** The agent that the limit is for. */
  readonly limited: Agent;
  /** In ppm of what it counts as. */
  readonly most: Exact;
}

function limitFor(agent: Agent, plant: string | undefined, { agents, limits }: Journal): Judged[] {
  const limit = limits.strength(agent, plant);
  const limited = limit && agents.get(limit.of);
  const most = limited && ppmOf(limit, limited);
  return most ? [{ limit, limited, most }] : [];
}

/** The doses of the same substance that stand before this one, in ppm of what they count as. */
function sameBefore(agent: Agent, { parts }: Dose, all: readonly Dose[]): { agent: Agent; counted: Exact }[] {
  return all.slice(0, all.findIndex(each => each.parts === parts)).flatMap(({ agent: other, ppm }) => (
    other && ppm.ok && substanceOf(other) === substanceOf(agent)
      ? [{ agent: other, counted: comparedPpm(ppm.value, other) }] : []));
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
