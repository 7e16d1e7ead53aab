/** Other names under which growers and labels know the agents. */
import type { Agent } from './agent.ts';

/** Besides the name and the formula of each. */
const otherNames: Readonly<Record<string, readonly string[]>> = {
  GA3: ['GA', 'GA-3', 'gibberellin'],
  GA3K: ['KGA3', 'K-GA3', 'GA3-K'],
  'GA4+7': ['GA4/7', 'GA47', 'GA4', 'GA7'],
  BA: ['BAP', '6-BA', '6-BAP', 'benzyladenine'],
  peroxide: ['hydrogenperoxide'],
  bleach: ['hypochlorite', 'javel'],
  smoke: ['smokewater'],
};

/**
 * The word for an agent that is called otherwise; case makes no difference. Undefined where no agent is known by it.
 *
 * Example: wordFor('H2O2', builtInAgents) is 'peroxide'
 */
export function wordFor(name: string, agents: ReadonlyMap<string, Agent>): string | undefined {
  const wanted = name.toLowerCase();
  for (const agent of agents.values()) {
    const names = [agent.word, agent.name, agent.formula, ...(otherNames[agent.word] ?? [])];
    if (names.some(each => each?.toLowerCase() === wanted)) return agent.word;
  }
  return undefined;
}
