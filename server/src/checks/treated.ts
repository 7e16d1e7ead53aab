/** With what the seed of a batch was treated. */
import { isZero } from '../journal/doses.ts';
import type { Batch, Dose } from '../journal/life.ts';
import type { Agent, Role } from '../solutions/agent.ts';

/** The agents of these roles that it was soaked in, before it was split off included. */
export function agentsOf({ soaks }: Batch, roles: readonly Role[]): Agent[] {
  return soaks.flatMap(({ doses }) => agentsIn(doses, roles));
}

/** The agents of these roles in a soak; of 0 ppm there is none in it. */
export function agentsIn(doses: readonly Dose[], roles: readonly Role[]): Agent[] {
  return doses.flatMap(dose => (dose.agent && roles.includes(dose.agent.role) && !isZero(dose) ? [dose.agent] : []));
}
