/** A solution, and all that it is made from. */
import { factOf } from '../model/record.ts';
import type { Duration } from '../model/quantity.ts';
import type { Agent } from '../solutions/agent.ts';
import type { Left } from '../solutions/ledger.ts';
import type { Entry } from './life.ts';
import type { Limit } from './limits.ts';
import { definedTwice, solutionOf, type Solution, type Source } from './solutions.ts';

/**
 * The solutions on the way from an id to the powder, as far as they are not `known` yet. Dilutions that are made from
 * each other in a circle are marked as such, whichever of them was asked for.
 */
export function solutionChain(
  id: string, definitionsOf: (id: string) => readonly Entry[], known: ReadonlyMap<string, Solution | undefined>,
  agents: ReadonlyMap<string, Agent>, limit: Limit<Duration>,
  takenBy: (entry: Entry, packet: Solution) => Left | undefined,
): Map<string, Solution | undefined> {
  const chain = new Map<string, Entry | undefined>();
  const twice = new Set<string>();
  let next: string | undefined = id;
  while (next !== undefined && !chain.has(next) && !known.has(next)) {
    const [entry, ...others] = definitionsOf(next);
    chain.set(next, entry);
    // The same line again, as where two files were put together, says nothing else.
    if (others.some(({ line }) => line.text.trim() !== entry!.line.text.trim())) twice.add(next);
    next = entry && factOf(entry.record, 'draw')?.stock.text;
  }
  const ids = [...chain.keys()];
  const circle = next !== undefined && chain.has(next) ? ids.indexOf(next) : Infinity;
  const solutions = new Map<string, Solution | undefined>();
  let source: Source = (next === undefined ? undefined : known.get(next)) ?? 'unknown';
  for (let index = ids.length - 1; index >= 0; index--) {
    const made = ids[index]!;
    const entry = chain.get(made);
    const from: Source = index >= circle ? 'circular' : source;
    const first: Solution | undefined = entry && solutionOf(made, entry, agents, from, limit, takenBy);
    const solution: Solution | undefined = first && twice.has(made) ? definedTwice(first) : first;
    solutions.set(made, solution);
    source = solution ?? 'unknown';
  }
  return solutions;
}
