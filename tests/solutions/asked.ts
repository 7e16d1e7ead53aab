/** What somebody asks of the planner, and what it answers. */
import type { Strength, StrengthUnit } from '../../server/src/model/quantity.ts';
import type { MixAnswer, MixPlan, MixRefusal, MixRequest, MixSource } from '../../server/src/solutions/mix-plan.ts';
import { planMix } from '../../server/src/solutions/mix.ts';
import { agent } from './helpers.ts';

export const inPpm = (value: number): Strength => ({ value, unit: 'ppm' });
export function fromStock(value: number, unit: StrengthUnit = 'ppm'): MixSource {
  return { kind: 'stock', strength: { value, unit } };
}

export const powder: MixSource = { kind: 'powder' };

export function ask(
  word: string,
  strength: Strength,
  ml: number,
  source: MixSource,
  rest: Partial<MixRequest> = {},
): MixAnswer {
  return planMix({ agent: agent(word), strength, volume: { value: ml, unit: 'mL' }, source, ...rest });
}

export function plan(...request: Parameters<typeof ask>): MixPlan {
  const answer = ask(...request);
  if (!answer.possible) throw new Error(`refused: ${answer.message}`);
  return answer;
}

export function refusal(...request: Parameters<typeof ask>): MixRefusal {
  const answer = ask(...request);
  if (answer.possible) throw new Error('a plan was not expected');
  return answer;
}

export const steps = (answer: MixPlan): string[] => answer.steps.map(({ text }) => text);
