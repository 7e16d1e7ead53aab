/** Strengths to choose from for an agent: what the grower's books say for the plant, then what is common. */
import type { Journal } from '../../journal/journal.ts';
import { printQuantity, type Strength } from '../../model/quantity.ts';
import { factsOf } from '../../model/record.ts';
import type { Agent } from '../../solutions/agent.ts';
import { compareDoses } from '../../solutions/comparison.ts';
import { exceededSolubility } from '../../solutions/stock.ts';
import { strengthInPpm } from '../../solutions/strength.ts';

export interface NamedStrength {
  readonly text: string;
  readonly value: Strength;
  readonly from: string;
}

/** Usual doses, the middle one first. Common practice, no source. */
const usual: Readonly<Record<string, readonly string[]>> = {
  'GA3': ['500 ppm', '250 ppm', '100 ppm', '1000 ppm'], 'GA3K': ['500 ppm', '250 ppm', '100 ppm', '1000 ppm'],
  'GA4+7': ['250 ppm', '100 ppm', '500 ppm'], 'KNO3': ['0.2 %', '0.1 %'], 'ethephon': ['100 ppm', '250 ppm'],
  'kinetin': ['10 ppm', '50 ppm'], 'BA': ['10 ppm', '50 ppm'], 'thiourea': ['0.5 %', '1 %'], 'smoke': ['10 %', '5 %'],
  'peroxide': ['3 %', '1 %'], 'bleach': ['1 %', '0.5 %'],
};

/** The likeliest first; none twice, none above the limit that holds for the plant, and none that does not dissolve. */
export function strengthsFor(agent: Agent, plant: string | undefined, journal: Journal): NamedStrength[] {
  const guides = journal.guides.of(plant).flatMap(({ record, plant: of, source }) =>
    factsOf(record, 'substance').filter(({ name, strength }) => strength && name.text === agent.word)
      .map(({ strength }) => ({ text: printQuantity(strength!.value), value: strength!.value, from: `guide for ${of}${source === undefined ? '' : `: ${source}`}` })));
  const common = (usual[agent.word] ?? []).map(text => ({ text, value: strengthOf(text), from: 'common practice' }));
  const limit = journal.limits.strength(agent, plant);
  const of = limit && (journal.agents.get(limit.of) ?? agent);
  const isWithin = (strength: Strength) => {
    if (doesNotDissolve(strength, agent)) return false;
    const comparison = limit && of && compareDoses({ agent, strength }, { agent: of, strength: limit.value });
    return !comparison?.comparable || comparison.order <= 0;
  };
  const seen = new Set<string>();
  return [...guides, ...common].filter(({ text, value }) => isWithin(value) && !seen.has(text) && seen.add(text));
}

/** Whether it is more than dissolves in water. */
export function doesNotDissolve(strength: Strength, agent: Agent): boolean {
  const ppm = strengthInPpm(strength, agent);
  return ppm.ok && exceededSolubility(ppm.value, agent) !== undefined;
}

function strengthOf(text: string): Strength {
  const [value, unit] = text.split(' ');
  return { value: Number(value), unit: unit as Strength['unit'] };
}
