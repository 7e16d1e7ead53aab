/** With what the seed of a batch was treated. */
import type { Batch } from '../journal/life.ts';
import type { Agent, Role } from '../solutions/agent.ts';

/** The agents of these roles that it was soaked in, before it was split off included. */
export function agentsOf({ soaks }: Batch, roles: readonly Role[]): Agent[] {
  const agents = soaks.flatMap(({ doses }) => doses.flatMap(({ agent }) => agent ?? []));
  return agents.filter(({ role }) => roles.includes(role));
}
