import type { Dose, Entry } from '../journal/life.ts';
import { printQuantity } from '../model/quantity.ts';
import { factOf } from '../model/record.ts';
import type { Solubility } from '../solutions/agent.ts';
import { showStrength } from '../solutions/display.ts';
import { exceededSolubility } from '../solutions/stock.ts';
import { dissolvedText } from '../words/strengths.ts';
import { found, type Found, type SolutionCheck } from './check.ts';

/** A dose stronger than what dissolves in water. */
export function doseAboveSolubility({ line }: Entry, { agent, fact, ppm, parts }: Dose): Found | undefined {
  // Of a stock it is said where the stock is made up.
  const isStock = parts.some(({ stock }) => stock !== undefined);
  const solubility = agent && ppm.ok && !isStock ? exceededSolubility(ppm.value, agent) : undefined;
  if (!agent || !ppm.ok || !solubility) return undefined;
  const strength = fact.strength ? printQuantity(fact.strength.value) : showStrength(ppm.value, 'ppm').text;
  return found(line, 'above-solubility', fact.strength ?? fact.name, valuesOf(agent.word, strength, solubility));
}

/** A stock with more powder than dissolves in it. */
export const stockAboveSolubility: SolutionCheck = function* ({ entry, agent, ppm, powder }) {
  const substance = factOf(entry.record, 'draw') ?? factOf(entry.record, 'substance');
  if (!agent || !ppm.ok || !powder?.aboveSolubility || !substance) return;
  yield found(entry.line, 'above-solubility', substance,
    valuesOf(agent.word, showStrength(ppm.value, 'ppm').text, powder.aboveSolubility));
};

function valuesOf(agent: string, strength: string, solubility: Solubility): Record<string, string> {
  return { agent, strength, solubility: dissolvedText(solubility), source: solubility.source.text };
}
