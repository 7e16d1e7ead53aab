import type { Agent } from '../../server/src/solutions/agent.ts';
import { builtInAgents } from '../../server/src/solutions/agents.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
import type { Exact } from '../../server/src/solutions/amounts.ts';
import type { Outcome } from '../../server/src/solutions/outcome.ts';
import { strengthFromPpm, strengthInPpm } from '../../server/src/solutions/strength.ts';
import type { Strength, StrengthUnit } from '../../server/src/model/quantity.ts';

export function agent(word: string): Agent {
  const found = builtInAgents.get(word);
  if (found === undefined) throw new Error(`no agent ${word}`);
  return found;
}

/** The value of an outcome that must not be refused. */
export function valueOf<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(`refused: ${outcome.refusal.message}`);
  return outcome.value;
}

export function codeOf(outcome: Outcome<unknown>): string | undefined {
  return outcome.ok ? undefined : outcome.refusal.code;
}

export function ppm(strength: Strength, word: string): number {
  return toNumber(valueOf(strengthInPpm(strength, agent(word))));
}

export function from(ppmExact: Exact, unit: StrengthUnit, word: string): number {
  return toNumber(valueOf(strengthFromPpm(ppmExact, unit, agent(word))));
}
