/** With what the seed of a batch was treated. */
import { isZero } from '../journal/doses.ts';
import type { Batch, Dose } from '../journal/life.ts';
import type { Agent, Role } from '../solutions/agent.ts';
import { isDropsOnSeed } from '../trials/drops-on-seed.ts';

/** The agents of these roles that its seed was soaked in or given as drops, before it was split off included. */
export function agentsOf(batch: Batch, roles: readonly Role[]): Agent[] {
  const drops = [...batch.inherited, ...batch.events].filter(event => isDropsOnSeed(batch, event));
  return [...batch.soaks, ...drops].flatMap(({ doses }) => agentsIn(doses, roles));
}

/** The agents of these roles in a soak; of 0 ppm there is none in it. */
export function agentsIn(doses: readonly Dose[], roles: readonly Role[]): Agent[] {
  return doses.flatMap(dose => (dose.agent && roles.includes(dose.agent.role) && !isZero(dose) ? [dose.agent] : []));
}
