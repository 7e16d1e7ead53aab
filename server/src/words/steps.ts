/** What was done to a batch, step by step, with the stages of its regime that nobody wrote down among them. */
import { plannedStages } from '../calendar/regimes.ts';
import type { Batch, BatchEvent } from '../journal/life.ts';
import type { Day } from '../model/day.ts';
import { plannedText } from './stages.ts';

/** The texts of its events in the order of time, what it took along first; each planned stage stands on its day. */
export function stepsText(
  { inherited, events }: Pick<Batch, 'inherited' | 'events'>, today: Day | undefined,
  textsOf: (event: BatchEvent) => readonly string[],
): string[] {
  const all = [...inherited, ...events];
  const planned = plannedStages(all);
  let next = 0;
  const before = (day: Day): string[] => {
    const from = next;
    while (next < planned.length && planned[next]!.start < day) next++;
    return planned.slice(from, next).map(stage => plannedText(stage, today));
  };
  const steps = all.flatMap(event => [...before(event.entry.moment.day), ...textsOf(event)]);
  return [...steps, ...before(Infinity)];
}
