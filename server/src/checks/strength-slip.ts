import type { Dose, Entry } from '../journal/life.ts';
import { printQuantity } from '../model/quantity.ts';
import { unitSlip } from '../solutions/slips.ts';
import { listed } from '../syntax/nearest.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type Found } from './check.ts';

/** A strength that nobody uses, probably in a unit that was not meant. */
export function strengthSlip({ line }: Entry, { agent, fact, ppm }: Dose): Found | undefined {
  const { strength } = fact;
  // Most are usual, and comparing is quicker than reading a strength in all its units.
  if (agent?.usual && ppm.ok && ppm.value.gte(agent.usual.low) && ppm.value.lte(agent.usual.high)) return undefined;
  const slip = agent && strength && unitSlip(strength.value, agent);
  if (!slip) return undefined;
  const readings = slip.readings.map(printQuantity);
  const meant = readings.length > 0 ? `Did you mean ${listed(readings, 'or')}? ` : '';
  return found(line, 'strength-slip', strength,
    { agent: agent.word, strength: printQuantity(strength.value), suggestion: `${meant}Growers use ${slip.usual}.` },
    { fixes: readings.map(text => replacement(strength, text)) });
}
