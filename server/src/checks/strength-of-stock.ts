import type { Dose, DosePart, Entry } from '../journal/life.ts';
import { printQuantity, type Volume } from '../model/quantity.ts';
import type { Placed } from '../model/record.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type Context, type Found } from './check.ts';
import { strengthHeld } from '../words/held.ts';

/** A stock named with another strength than it has: which of the two was in the dish is not known. */
export function strengthOfStock(
  { line }: Entry, { agent }: Dose, { fact, stock, isPowder, byStock }: DosePart, { journal }: Context,
): Found | undefined {
  const { name, strength, mass, unmeasured, volume } = fact;
  if (isPowder) return volume && powderByVolume(line, name.text, volume);
  if (stock === undefined || !agent || !byStock) return undefined;
  const written = strength ?? mass;
  const text = written ? printQuantity(written.value) : 'unmeasured';
  const instead = strength ? `${agent.word} ${text}` : name.text;
  return found(line, 'strength-of-stock', written ?? unmeasured ?? fact, {
    stock, agent: agent.word, holds: strengthHeld(journal.solution(stock)!, journal) ?? 'of unknown strength', written: text,
    suggestion: strength
      ? `If you diluted it for this, write a “dilute” record, or name the agent: “${instead}”. If not, correct the number.`
      : `Write the volume that you took: “${name.text} 10 mL”.`,
  }, { fixes: [replacement(fact, instead)] });
}

/** Nobody can take mL of a packet: the stock that was made from it is meant, or mg. */
function powderByVolume(line: Entry['line'], packet: string, volume: Placed<Volume>): Found {
  const { value } = volume.value;
  return found(line, 'powder-by-volume', volume, { packet, volume: printQuantity(volume.value) },
    { fixes: [replacement(volume, printQuantity({ value, unit: 'mg' }))] });
}
