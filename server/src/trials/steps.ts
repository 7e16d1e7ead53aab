/** What was done to seed beside its treatment, and on which day: stages, scarifying, washing. */
import { plannedStages } from '../calendar/regimes.ts';
import type { BatchEvent } from '../journal/life.ts';
import type { Day } from '../model/day.ts';
import { factOf } from '../model/record.ts';
import { isSameColdDay, isSameDay } from './alike.ts';
import { mayBeAsWarm, warmthOf, type Warmth } from './warmth.ts';

/** Something done to the seed; the day counts from day 0. */
export interface Step {
  readonly what: string;
  readonly warmth: Warmth | undefined;
  readonly day: number;
}

/**
 * The stages of a life in the order of time, written or planned by a regime, and the sowing that takes seed out of one.
 * A record that goes on with a stage as it was is none of its own.
 */
export function stagesOf(life: readonly BatchEvent[], dayZero: Day): Step[] {
  const planned = plannedStages(life);
  const steps = planned.map(({ stage, temperature, start }): Step => (
    { what: stage, warmth: temperature && warmthOf(temperature), day: start - dayZero }));
  let sown: BatchEvent | undefined;
  let isInStage = false;
  for (const event of life) {
    const { entry } = event;
    const day = entry.moment.day - dayZero;
    const written = factOf(entry.record, 'temperature')?.value;
    const warmth = written && warmthOf(written);
    if (event.type === 'stage') {
      steps.push({ what: event.stage.stage, warmth, day });
      isInStage = true;
    }
    if (event.type === 'sow') {
      const last = sown;
      const isPlanned = planned.some(({ sowing, start }) => sowing === last?.entry && start - dayZero < day);
      if (event.again && (isInStage || isPlanned)) steps.push({ what: 'sown', warmth, day });
      sown = event;
      isInStage = false;
    }
  }
  return steps.sort((a, b) => a.day - b.day).filter((step, i) => !goesOn(step, steps[i - 1]));
}

function goesOn(step: Step, before: Step | undefined): boolean {
  return step.what === before?.what && step.what !== 'sown' && mayBeAsWarm(step.warmth, before.warmth);
}

/** Whether the same was done to two batches up to an age in days from day 0. */
export function areSame(a: readonly Step[], b: readonly Step[], age: number): boolean {
  const n = Math.max(...[a, b].map(steps => steps.filter(({ day }) => day < age).length));
  const [first, second] = [a.slice(0, n), b.slice(0, n)];
  return first.length === second.length && first.every((step, i) => isSameStep(step, second[i]!));
}

function isSameStep(a: Step, b: Step): boolean {
  const isSameStart = a.what === 'chill' ? isSameColdDay(a.day, b.day) : isSameDay(a.day, b.day);
  return a.what === b.what && isSameStart && mayBeAsWarm(a.warmth, b.warmth);
}

/** Whether of a stage that both had the temperature is written for one only. */
export function isWarmthOfOneUnwritten(a: readonly Step[], b: readonly Step[], age: number): boolean {
  return areSame(a, b, age)
    && a.some(({ warmth, day }, i) => day < age && (warmth === undefined) !== (b[i]?.warmth === undefined));
}
