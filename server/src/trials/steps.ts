/** What was done to seed beside its treatment, and on which day: stages, scarifying, washing. */
import { plannedStages } from '../calendar/regimes.ts';
import type { BatchEvent } from '../journal/life.ts';
import type { Day } from '../model/day.ts';
import { isSameColdDay, isSameDay } from './alike.ts';
import { mayBeAsWarm, warmthIn, warmthOf, type Warmth } from './warmth.ts';

/** Something done to the seed; the day counts from day 0. */
export interface Step {
  readonly what: string;
  readonly warmth: Warmth | undefined;
  readonly day: number;
}

/** A warm or cold stage, or the sowing that ended one. */
export interface StageStep extends Step {
  /** `moist`: soaked or sown before. `dry`: soaked only after it. Undefined where nothing says which. */
  readonly moisture: 'moist' | 'dry' | undefined;
}

/**
 * The stages of a life in the order of time, written or planned by a regime, and the sowing that takes seed out of one.
 * A record that goes on with a stage as it was is none of its own.
 */
export function stagesOf(life: readonly BatchEvent[], dayZero: Day): StageStep[] {
  const planned = plannedStages(life);
  const steps = planned.map(({ stage, temperature, start }): StageStep => (
    { what: stage, warmth: temperature && warmthOf(temperature), day: start - dayZero, moisture: 'moist' }));
  const lastSoak = life.findLastIndex(({ type }) => type === 'soak');
  let sown: BatchEvent | undefined;
  let isInStage = false;
  let isMoist = false;
  for (const [i, event] of life.entries()) {
    const { entry } = event;
    const day = entry.moment.day - dayZero;
    const warmth = warmthIn(entry.record);
    if (event.type === 'stage') {
      const moisture = isMoist ? 'moist' : lastSoak > i ? 'dry' : undefined;
      steps.push({ what: event.stage.stage, warmth, day, moisture });
      isInStage = true;
    }
    if (event.type === 'sow') {
      const last = sown;
      const isPlanned = planned.some(({ sowing, start }) => sowing === last?.entry && start - dayZero < day);
      if (event.again && (isInStage || isPlanned)) steps.push({ what: 'sown', warmth, day, moisture: 'moist' });
      sown = event;
      isInStage = false;
    }
    isMoist ||= event.type === 'sow' || event.type === 'soak';
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

/**
 * Seed that is dry takes no heed of cold, so whether it was moist is held side by side, of the stages up to an age.
 * `one-dry`: that of one was, in a stage that the other had moist. `unwritten`: it may have been.
 */
export function moistureApart(a: readonly StageStep[], b: readonly StageStep[], age: number): 'one-dry' | 'unwritten' | undefined {
  const apart = a.flatMap((step, i) => {
    const other = b[i];
    return step.day < age && other && step.moisture !== other.moisture ? [[step.moisture, other.moisture]] : [];
  }).filter(pair => pair.includes('moist'));
  if (apart.some(pair => pair.includes('dry'))) return 'one-dry';
  return apart.length > 0 ? 'unwritten' : undefined;
}
