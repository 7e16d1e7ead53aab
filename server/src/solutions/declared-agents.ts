/** The built-in agents together with those that a journal declares. */
import type { Strength } from '../model/quantity.ts';
import type { Agent, FigureSource } from './agent.ts';
import { builtInAgents, plain } from './agents.ts';
import { exact, isPositive } from './amounts.ts';
import { strengthInPpm } from './strength.ts';

export interface AgentDeclaration {
  readonly word: string;
  /** g/mol */
  readonly molarMass?: number | undefined;
  readonly solubility?: Strength | undefined;
  readonly text?: string | undefined;
}

const journal: FigureSource = { kind: 'journal', text: 'declared in the journal' };

/**
 * All agents by their words. A declaration of a built-in word changes what it states and leaves the rest;
 * of two of the same word the later one counts. A molar mass or solubility that is not above zero is left
 * out.
 */
export function agentsWith(declarations: readonly AgentDeclaration[]): ReadonlyMap<string, Agent> {
  if (declarations.length === 0) return builtInAgents;
  const agents = new Map(builtInAgents);
  for (const declaration of declarations) {
    const { word } = declaration;
    const base = builtInAgents.get(word) ?? { ...plain, word, name: word, role: 'declared' };
    agents.set(word, declared(declaration, base));
  }
  return agents;
}

function declared({ molarMass, solubility, text }: AgentDeclaration, base: Agent): Agent {
  const withMass: Agent = molarMass !== undefined && molarMass > 0
    ? { ...base, molarMass: exact(molarMass), molarMassIs: 'declared' }
    : base;
  const ppm = solubility === undefined ? undefined : strengthInPpm(solubility, withMass);
  const dissolves = ppm?.ok === true && isPositive(ppm.value);
  return {
    ...withMass,
    solubility: dissolves ? { ppm: ppm.value, source: journal } : base.solubility,
    remark: text,
  };
}
