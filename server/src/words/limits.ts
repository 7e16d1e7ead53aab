/** How a dose stands to the limit that holds for it. */
import type { Journal } from '../journal/journal.ts';
import type { Limit } from '../journal/limits.ts';
import { printQuantity } from '../model/quantity.ts';
import type { Agent } from '../solutions/agent.ts';
import { compareDoses } from '../solutions/comparison.ts';
import { numberText, percentText } from '../solutions/display.ts';
import type { GivenStrength } from '../solutions/strength.ts';

/** Where a limit comes from, with the line of its record. */
export function originOfLimit({ origin, line }: Limit<unknown>): string {
  return line ? `${origin}, line ${line.number + 1}` : origin;
}

/**
 * Undefined where no limit holds, or where the two cannot be compared. `as`: the agent that the strength is of, where
 * several are counted as one; else the agent whose limit it is.
 *
 * Example: '50 % of the limit of 1000 ppm (default: common practice, no source)'
 */
export function limitText(
  journal: Journal, agent: Agent, strength: GivenStrength, plant: string | undefined, as = agent,
): string | undefined {
  const limit = journal.limits.strength(agent, plant);
  if (!limit) return undefined;
  const of = journal.agents.get(limit.of) ?? agent;
  const comparison = compareDoses({ agent: as, strength }, { agent: of, strength: limit.value });
  if (!comparison.comparable || !comparison.ratio) return undefined;
  const { order, ratio } = comparison;
  const name = `the limit of ${printQuantity(limit.value)}${of.word === as.word ? '' : ` ${of.word}`} (${originOfLimit(limit)})`;
  if (order === 0) return `at ${name}`;
  return order < 0 ? `${percentText(ratio)} of ${name}` : `above ${name}: ${numberText(ratio).text} times as strong`;
}
