/** Strengths: above the limit, above what dissolves, or in a unit that was probably not meant. */
import type { Dose, Entry } from '../journal/life.ts';
import { found, type Context, type Found, type LotCheck, type SolutionCheck } from './check.ts';
import { compareDoses } from '../solutions/comparison.ts';
import { showStrength } from '../solutions/display.ts';
import { exceededSolubility } from '../solutions/stock.ts';
import { unitSlip } from '../solutions/slips.ts';
import { printQuantity } from '../model/quantity.ts';
import { replacement } from '../syntax/reader.ts';
import { listed } from '../syntax/nearest.ts';

/** Each dose gets one of the three: a slip whose meaning is evident explains the others away. */
export const doses: LotCheck = function* ({ batches, plant }, context) {
  for (const batch of batches.values()) {
    for (const { type, entry } of batch.events) {
      if (type !== 'soak' && type !== 'apply') continue;
      for (const dose of context.journal.dosesOf(entry)) {
        const unit = slip(entry, dose);
        const problem = unit && unit.problem.fixes.length > 0
          ? unit
          : tooMuchToDissolve(entry, dose) ?? unit ?? aboveLimit(entry, dose, plant, context);
        if (problem) yield problem;
      }
    }
  }
};

function slip({ line }: Entry, { agent, fact }: Dose): Found | undefined {
  if (!agent || !fact.strength) return undefined;
  const slip = unitSlip(fact.strength.value, agent);
  if (!slip) return undefined;
  const readings = slip.readings.map(printQuantity);
  const meant = readings.length > 0 ? `Did you mean ${listed(readings, 'or')}? ` : '';
  return found(line, 'strength-slip', fact.strength,
    { agent: agent.word, strength: printQuantity(fact.strength.value), suggestion: `${meant}Growers use ${slip.usual} of it.` },
    readings.map(text => replacement(fact.strength!, text)));
}

function tooMuchToDissolve({ line }: Entry, { agent, fact, ppm }: Dose): Found | undefined {
  const solubility = agent && ppm.ok ? exceededSolubility(ppm.value, agent) : undefined;
  if (!agent || !solubility || !ppm.ok) return undefined;
  const text = fact.strength ? printQuantity(fact.strength.value) : showStrength(ppm.value, 'ppm').text;
  return found(line, 'above-solubility', fact.strength ?? fact.name,
    { agent: agent.word, strength: text, solubility: showStrength(solubility.ppm.div(1000), 'g/L').text, source: solubility.source.text });
}

function aboveLimit({ line }: Entry, { agent, fact, ppm, stock }: Dose, plant: string | undefined, { journal }: Context): Found | undefined {
  const limit = agent && ppm.ok ? journal.limits.strength(agent, plant) : undefined;
  if (!agent || !limit || !ppm.ok) return undefined;
  const of = agent.limit && agent.acid ? journal.agents.get(agent.limit.of) ?? agent : agent;
  const comparison = compareDoses({ agent, strength: { value: ppm.value.valueOf(), unit: 'ppm' } }, { agent: of, strength: limit.value });
  if (!comparison.comparable || comparison.order <= 0) return undefined;
  const strength = fact.strength ? printQuantity(fact.strength.value) : `${showStrength(ppm.value, 'ppm').text} (stock ${stock ?? ''})`;
  return found(line, 'dose-above-limit', fact.strength ?? fact.name,
    { agent: agent.word, strength, limit: printQuantity(limit.value), origin: limit.origin });
}

export const stockSolubility: SolutionCheck = function* ({ entry, agent, ppm, powder }) {
  const solubility = powder?.aboveSolubility;
  const substance = entry.record.facts.find(fact => fact.type === 'substance');
  if (!agent || !solubility || !ppm.ok || !substance) return;
  yield found(entry.line, 'above-solubility', substance, {
    agent: agent.word, strength: showStrength(ppm.value, 'ppm').text,
    solubility: showStrength(solubility.ppm.div(1000), 'g/L').text, source: solubility.source.text,
  });
};
