/** The next stage of the regime that a batch is in. */
import { stageFacts } from '../../calendar/ask.ts';
import { regimePlan } from '../../calendar/regimes.ts';
import { dayOfScene, livedIn, type Scene } from './scene.ts';
import type { Suggestion } from './suggestion.ts';

/** Temperature and time span together, as two facts. */
export function nextStage(keyword: 'chill' | 'warm', scene: Scene): Suggestion[] {
  const lived = livedIn(scene);
  if (!lived) return [];
  const { batch, event } = lived;
  // The stage that is being written is not the one before it.
  const before = { ...batch, events: batch.events.filter(each => each !== event) };
  const plan = regimePlan(before, { day: dayOfScene(scene), minutes: undefined });
  const next = plan?.next;
  const facts = next?.stage === keyword ? stageFacts(next.temperature, next.duration) : undefined;
  return plan && facts !== undefined
    ? [{ kind: 'fact', label: facts, detail: `next in the regime ${plan.regime}` }] : [];
}
