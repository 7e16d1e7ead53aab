/**
 * What must not meet what, and how long seed may lie in a disinfectant. That bleach gives poisonous gas with acid,
 * alcohol and ammonia, and bursts its vessel with peroxide, is common practice, no source; so are the times, but for
 * bleach: maize did well after half an hour at 2 to 3 %, and less well at 5 % (Rigney & Burnham, Maize Genetics
 * Cooperation Newsletter 13; read in an excerpt).
 */
import type { Duration } from '../model/quantity.ts';
import type { Agent } from './agent.ts';

type Partner = 'acid' | 'alcohol' | 'ammonia' | 'peroxide';
export type Reactive = Partner | 'bleach';

/** As growers call them, in a name or in the words of an `agent` record. */
const words: Readonly<Record<Partner, RegExp>> = {
  acid: /\b(acid|vinegar|acetic|citric|sulphuric|sulfuric|hydrochloric|muriatic)\b/i,
  alcohol: /\b(alcohol|ethanol|isopropanol|propanol|methanol|methylated spirits?|spirits|vodka)\b/i,
  ammonia: /\b(ammonia|ammonium)\b/i,
  peroxide: /\bperoxide\b/i,
};

const makes: Readonly<Record<Partner, string>> = {
  acid: 'chlorine, a poisonous gas',
  alcohol: 'chloroform and other poisonous vapours',
  ammonia: 'chloramines, which are poisonous gases',
  peroxide: 'oxygen so fast that it foams over and can burst the vessel',
};

/** Undefined for what bleach does no harm with. An agent that is not declared is known by its name alone. */
export function reactiveOf(name: string, agent: Agent | undefined): Reactive | undefined {
  if (agent?.cautions.includes('bleach')) return 'bleach';
  if (agent?.cautions.includes('peroxide')) return 'peroxide';
  if (agent?.cautions.includes('acid')) return 'acid';
  // The acids among the agents that need no declaration are hormones by the milligram.
  if (agent && agent.role !== 'declared') return undefined;
  const text = `${name} ${agent?.remark ?? ''}`;
  if (/\b(bleach|hypochlorite)\b/i.test(text)) return 'bleach';
  return (Object.keys(words) as Partner[]).find(partner => words[partner].test(text));
}

/** What two of them make of each other; undefined where they may meet. */
export function dangerOf(a: Reactive | undefined, b: Reactive | undefined): string | undefined {
  const [partner] = a === 'bleach' ? [b] : b === 'bleach' ? [a] : [];
  return partner === undefined || partner === 'bleach' ? undefined : makes[partner];
}

const longest: Readonly<Record<string, Duration>> = {
  bleach: { value: 30, unit: 'min' },
  peroxide: { value: 60, unit: 'min' },
};

/** How long seed may lie in a disinfectant; undefined where nothing is known of it. */
export function longestIn({ word }: Agent): Duration | undefined {
  return longest[word];
}
