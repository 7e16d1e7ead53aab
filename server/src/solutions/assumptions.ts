/** What a number at the bench takes for granted, to be said beside it. */
import type { StrengthUnit } from '../model/quantity.ts';
import type { Agent } from './agent.ts';
import { molarMass } from './molar-mass.ts';
import { numberText, percentText } from './display.ts';

export type AssumptionId =
  | 'ppm-is-mg-per-l'
  | 'percent-weight-in-volume'
  | 'percent-by-volume'
  | 'peroxide-percent'
  | 'bleach-as-naocl'
  | 'as-salt'
  | 'molar-mass'
  | 'purity-not-given'
  | 'purity-is-of-agent'
  | 'purity-of-salt'
  | 'purity-of-acid'
  | 'volumes-add';

export interface Assumption {
  readonly id: AssumptionId;
  readonly text: string;
}

/** Available chlorine counts a mole of hypochlorite as a mole of Cl2. */
export const chlorinePerHypochlorite = molarMass('Cl2').div(molarMass('NaOCl'));

const constant = {
  'ppm-is-mg-per-l': '1 ppm counts as 1 mg/L, as in dilute water.',
  'percent-weight-in-volume': '% means weight in volume: 1 % is 10 g/L.',
  'percent-by-volume': '% means parts by volume of the liquid as bought: 10 % is 1 part in 10.',
  'peroxide-percent': '% means weight in volume; a bottle may mean weight in weight, about 1 % less at 3 %.',
  'purity-not-given': 'No purity is given, so the powder counts as pure. A weaker powder makes a weaker solution.',
  'volumes-add': 'Volumes of dilute solutions add up.',
} satisfies Partial<Record<AssumptionId, string>>;

export function assumption(id: keyof typeof constant): Assumption {
  return { id, text: constant[id] };
}

/** How the name of the agent is read, wherever a strength of it is compared or worked out. */
export function readingsOf(agent: Agent): Assumption[] {
  if (agent.acid !== undefined) {
    const share = percentText(agent.acid.perSalt);
    return [{ id: 'as-salt', text: `${agent.word} is counted as the salt; ${share} of it is ${agent.acid.word}.` }];
  }
  if (agent.strengthIs === 'by volume') return [assumption('percent-by-volume')];
  if (agent.word !== 'bleach') return [];
  const factor = numberText(chlorinePerHypochlorite.inverse()).text;
  return [{
    id: 'bleach-as-naocl',
    text: `Bleach means NaOCl; if the label says available chlorine, it holds ${factor} times as much NaOCl.`,
  }];
}

export function isMolar(unit: StrengthUnit): boolean {
  return unit === 'mM' || unit === 'uM';
}

function molarMassOf(agent: Agent): Assumption {
  const mass = agent.molarMass === undefined ? '' : `${numberText(agent.molarMass).text} g/mol`;
  const why = {
    computed: 'from standard atomic weights',
    'mean of a mixture': 'the mean of equal parts of its two kinds; another mixture changes it by less than 0.4 %',
    declared: 'as declared in the journal',
  }[agent.molarMassIs];
  return { id: 'molar-mass', text: `Molar mass ${mass}, ${why}.` };
}

/** What a conversion between two units takes for granted; nothing where the units are the same. */
export function assumptionsBetween(from: StrengthUnit, to: StrengthUnit, agent: Agent): Assumption[] {
  if (from === to) return [];
  const units = [from, to];
  const found: Assumption[] = [];
  if (units.includes('ppm') && agent.strengthIs === 'by weight') found.push(assumption('ppm-is-mg-per-l'));
  if (units.includes('%') && agent.strengthIs === 'by weight') found.push(percentOf(agent));
  if (isMolar(from) !== isMolar(to)) found.push(molarMassOf(agent));
  return [...found, ...readingsOf(agent)];
}

function percentOf(agent: Agent): Assumption {
  return assumption(agent.word === 'peroxide' ? 'peroxide-percent' : 'percent-weight-in-volume');
}
