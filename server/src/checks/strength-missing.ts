import type { Dose, DosePart, Entry } from '../journal/life.ts';
import { factOf } from '../model/record.ts';
import { showStrength } from '../solutions/display.ts';
import { stockFromPowder } from '../solutions/stock.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type Found } from './check.ts';

/** An agent without its strength, which nobody said was unmeasured. */
export function strengthMissing(
  { line, record }: Entry, { agent }: Dose, { fact, stock }: DosePart,
): Found | undefined {
  const { name, mass, strength, unmeasured } = fact;
  if (!agent || agent.role === 'water' || stock !== undefined || strength || unmeasured) return undefined;
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
    suggestion: 'Write it, or “unmeasured” if nobody measured it. Without a strength, limits and comparisons skip this dose.',
  });
}
