/** What a substance named in a soak or a drop is: an agent, or a stock of one, and how strong. */
import { factsOf, type SubstanceFact } from '../model/record.ts';
import type { Agent } from '../solutions/agent.ts';
import { refused } from '../solutions/outcome.ts';
import { strengthInPpm } from '../solutions/strength.ts';
import type { Dose, Entry } from './life.ts';
import type { Solution } from './solutions.ts';

export interface Shelf {
  readonly agents: ReadonlyMap<string, Agent>;
  readonly solution: (id: string) => Solution | undefined;
}

const notSaid = refused('no-strength', 'No strength is written.');

/** The doses of a `soak`, an `apply` or a `guide`. */
export function dosesOf({ record }: Pick<Entry, 'record'>, shelf: Shelf): Dose[] {
  return factsOf(record, 'substance').map(fact => doseOf(fact, shelf));
}

/** Whether it is the lowest rung of a ladder, written as 0 ppm: seed in it lies in plain water. */
export function isZero({ ppm }: Dose): boolean {
  return ppm.ok && ppm.value.equals(0);
}

function doseOf(fact: SubstanceFact, { agents, solution }: Shelf): Dose {
  const agent = agents.get(fact.name.text);
  if (agent) {
    const ppm = fact.unmeasured ? strengthInPpm('unmeasured', agent) : fact.strength ? strengthInPpm(fact.strength.value, agent) : notSaid;
    return { fact, stock: undefined, agent, ppm };
  }
  const stock = solution(fact.name.text);
  if (stock) return { fact, stock: stock.id, agent: stock.agent, ppm: stock.ppm };
  return { fact, stock: undefined, agent: undefined, ppm: refused('unknown-stock', `“${fact.name.text}” is neither an agent nor a stock.`) };
}
