import type { Dose, DosePart, Entry } from '../journal/life.ts';
import { factOf, type SubstanceFact } from '../model/record.ts';
import type { Agent } from '../solutions/agent.ts';
import { showStrength } from '../solutions/display.ts';
import { stockFromPowder } from '../solutions/stock.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type Found, type SolutionCheck } from './check.ts';

/** An agent without its strength, which nobody said was unmeasured. */
export function strengthMissing(
  { line, record }: Entry, { agent }: Dose, { fact, stock, isPowder, held }: DosePart,
): Found | undefined {
  const { name, mass, strength, unmeasured } = fact;
  if (!agent || agent.role === 'water' || strength || unmeasured) return undefined;
  if (isPowder) return held.ok || held.refusal.code !== 'no-strength' ? undefined : packetMissing(line, agent, fact);
  if (stock !== undefined) return undefined;
  const volume = factOf(record, 'volume')?.value;
  const made = mass && volume
    ? stockFromPowder({ agent, mass: mass.value, volume, halved: fact.halved?.value }) : undefined;
  if (made?.ok) {
    const { text, exact } = showStrength(made.value.ppm, 'ppm');
    const suggestion = `Pure powder in that volume is ${text}. Write the strength, or write a “stock” record and its id.`;
    return found(line, 'strength-missing', name, { agent: agent.word, suggestion },
      { fixes: exact ? [replacement(fact, `${agent.word} ${text}`)] : [] });
  }
  return found(line, 'strength-missing', name, {
    agent: agent.word,
    suggestion: 'Write it, or “unmeasured” if you did not measure it. Without a strength, limits and comparisons skip this dose.',
  });
}

/** Powder out of a packet, of which the mass or the liquid is not written. */
function packetMissing(line: Entry['line'], agent: Agent, { name, mass, halved }: SubstanceFact): Found {
  const suggestion = mass && !halved
    ? 'Write how much liquid it went into: “20 mL”.'
    : `Write the mass that you took and how much liquid it went into (“${name.text} 10 mg, 20 mL”), or “${name.text} unmeasured”.`;
  return found(line, 'strength-missing', name, { agent: agent.word, suggestion });
}

/** A stock of which the powder or the final volume is not written, so that nobody knows what is taken from it. */
export const strengthOfStockMissing: SolutionCheck = function* ({ id, entry: { line, record }, agent, ppm }) {
  // What cannot be read on the line may be what is missing.
  if (record.keyword !== 'stock' || ppm.ok || !agent || agent.role === 'water' || line.content.problems.length > 0) return;
  const [draw, substance, volume] = [factOf(record, 'draw'), factOf(record, 'substance'), factOf(record, 'volume')];
  const named = draw?.stock ?? substance?.name;
  const hasPowder = (draw?.mass ?? draw?.halved ?? substance?.mass) !== undefined;
  // A packet alone (`from P1`) or “unmeasured” says that nobody weighed the powder.
  const isPinch = draw ? !hasPowder : substance?.unmeasured !== undefined;
  if (!named || isPinch || (hasPowder && volume)) return;
  const final = 'the final volume, such as “18 mL”';
  const suggestion = hasPowder ? `Write ${final}.`
    : `Write the mass of the powder, such as “${named.text} 20 mg”${volume ? '' : `, and ${final}`}. `
      + `If you did not weigh it, write “${named.text} unmeasured”.`;
  yield found(line, 'strength-missing', named, { agent: id, suggestion });
};
