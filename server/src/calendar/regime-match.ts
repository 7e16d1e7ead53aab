/** Which stage of a regime each written `chill` and `warm` record stands for. */
import type { Stage } from '../journal/life.ts';
import type { Day } from '../model/day.ts';
import { dayAfter, printTemperature, type Duration, type Temperature } from '../model/quantity.ts';
import { factsOf, type JournalRecord, type StageFact } from '../model/record.ts';

/** A stage as a `regime` record names it. */
export interface RegimeStage {
  readonly stage: 'chill' | 'warm';
  readonly temperature: Temperature | undefined;
  readonly duration: Duration | undefined;
}

/** The stages of a `regime` or a `guide` record, in order. */
export function stagesOf(record: JournalRecord): RegimeStage[] {
  return factsOf(record, 'stage').map(stageOf);
}

export function stageOf({ stage, temperature, duration }: StageFact): RegimeStage {
  return { stage, temperature: temperature?.value, duration: duration?.value };
}

export interface Match {
  readonly record: Stage;
  /** Number of the stage, from 0; undefined for a record that is off plan. */
  readonly number: number | undefined;
}

/**
 * The written stages against the planned ones, both in the order of time. A record stands for the next stage of its
 * kind that is still to come; what lies between is skipped. One of the same kind as the stage that goes on (a change of
 * temperature, or the first stage written down late) goes on with it, unless the next stage of that kind is nearer: by
 * its temperature where the two follow each other, else by its planned start. A record of a kind that does not come
 * any more is off plan. Common practice, no source.
 */
export function matchStages(plan: readonly RegimeStage[], records: readonly Stage[], sown: Day): Match[] {
  let current = 0;
  let start: Day | undefined = sown;
  return records.map(record => {
    const number = numberOf(record, plan, current, start);
    if (number !== undefined) {
      current = number;
      start = record.start.day;
    }
    return { record, number };
  });
}

function numberOf(
  record: Stage, plan: readonly RegimeStage[], current: number, start: Day | undefined,
): number | undefined {
  const found = plan.findIndex(({ stage }, number) => number > current && stage === record.stage);
  const next = found < 0 ? undefined : found;
  const now = plan[current];
  if (now?.stage !== record.stage) return next;
  if (next === undefined) return current;
  if (next === current + 1) {
    const matches = (planned: RegimeStage | undefined) => printed(planned?.temperature) === printed(record.temperature);
    if (matches(now) !== matches(plan[next])) return matches(now) ? current : next;
  }
  const planned = startOf(plan, current, start, next);
  if (planned === undefined || start === undefined) return next === current + 1 ? next : current;
  return Math.abs(record.start.day - start) <= Math.abs(record.start.day - planned) ? current : next;
}

function startOf(
  plan: readonly RegimeStage[], current: number, start: Day | undefined, number: number,
): Day | undefined {
  return plan.slice(current, number).reduce<Day | undefined>(
    (day, { duration }) => (day === undefined || !duration ? undefined : dayAfter(day, duration)), start);
}

function printed(temperature: Temperature | undefined): string | undefined {
  return temperature && printTemperature(temperature);
}
