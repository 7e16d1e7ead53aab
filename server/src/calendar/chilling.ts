/** Cold so far against cold wanted. */
import type { Batch, Stage } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import type { Day } from '../model/day.ts';
import { celsius, dayAfter, type Duration, type Temperature } from '../model/quantity.ts';
import type { LaidStage } from './regime-dates.ts';
import { regimePlan, type RegimePlan } from './regimes.ts';
import { hasCome } from './standing.ts';

/** An amount of cold. */
export interface Cold {
  /** Undefined where the time span of a stage is not known. */
  readonly days: number | undefined;
  /** Hours within 0 to 10 C; undefined where the temperature or the time span of a stage is not known. */
  readonly hours: number | undefined;
}

export interface Chilling {
  /** In all chill stages of the batch up to now. */
  readonly soFar: Cold;
  /** In all chill stages of its regime, those written in their place, and those that are off plan. */
  readonly wanted: Cold;
  /** The same for the chill stage that goes on. */
  readonly current: { readonly soFar: Cold; readonly wanted: Cold } | undefined;
  /** A stage has two temperatures, of the day and of the night: each was taken for 12 hours. */
  readonly halfDays: boolean;
}

/** A span of cold at one temperature. */
interface Span {
  readonly temperature: Temperature | undefined;
  readonly days: number | undefined;
}

/** A chill stage: what it gave so far, and what it is to give. */
interface Winter {
  readonly had: readonly Span[];
  readonly wanted: readonly Span[];
  readonly running: boolean;
}

const LEAST = 0;
const MOST = 10;

/**
 * Hours of a day that lie within 0 to 10 C, both included: all 24 at one temperature within, none outside; of a day and
 * a night temperature each counts for 12 hours, because the record does not say how long the day is. Common practice,
 * no source.
 *
 * Example: chillHoursOf({ day: 12, night: 4, unit: 'C' }) is 12
 */
export function chillHoursOf({ day, night, unit }: Temperature): number {
  const within = (value: number) => {
    // Beyond any thermometer's digits: 32 F is 0 C and not a rounding below it.
    const degrees = Math.round(celsius(value, unit) * 1e6) / 1e6;
    return degrees >= LEAST && degrees <= MOST;
  };
  return (within(day) ? 12 : 0) + (within(night ?? day) ? 12 : 0);
}

/**
 * The cold that a batch has had and is to have. Days are whole days of the calendar, from the day on which a stage
 * begins to the day on which the next one does; hours are these days, each with its hours within 0 to 10 C. Undefined
 * for a batch that was not chilled and is not to be.
 */
export function chilling(batch: Batch, now: Moment): Chilling | undefined {
  const winters = wintersOf(batch, regimePlan(batch, now), now);
  if (winters.length === 0) return undefined;
  const amounts = (some: readonly Winter[]) => ({
    soFar: sum(some.flatMap(({ had }) => had)), wanted: sum(some.flatMap(({ wanted }) => wanted)),
  });
  const running = winters.findLast(winter => winter.running);
  const spans = winters.flatMap(({ had, wanted }) => [...had, ...wanted]);
  return {
    ...amounts(winters), current: running && amounts([running]),
    halfDays: spans.some(({ temperature: t }) => t?.night !== undefined && t.night !== t.day),
  };
}

function sum(spans: readonly Span[]): Cold {
  let days: number | undefined = 0;
  let hours: number | undefined = 0;
  for (const { temperature, days: more } of spans) {
    const perDay = temperature && chillHoursOf(temperature);
    days = days === undefined || more === undefined ? undefined : days + more;
    hours = hours === undefined || more === undefined || perDay === undefined ? undefined : hours + more * perDay;
  }
  return { days, hours };
}

function wintersOf(batch: Batch, plan: RegimePlan | undefined, now: Moment): Winter[] {
  const laid = plan?.stages.filter(({ stage }) => stage === 'chill') ?? [];
  const placed = new Set(laid.flatMap(({ records }) => records));
  const others = batch.stages.filter(stage => stage.stage === 'chill' && !placed.has(stage));
  return [...inARow(others).map(stages => ofRecords(stages, now)), ...laid.map(stage => ofPlan(stage, now))];
}

/** Records that follow each other at once are one stage: with another temperature, or for longer than was planned. */
function inARow(stages: readonly Stage[]): Stage[][] {
  const rows: Stage[][] = [];
  for (const stage of stages) {
    const row = rows.at(-1);
    if (row?.at(-1)?.end?.day === stage.start.day) row.push(stage);
    else rows.push([stage]);
  }
  return rows;
}

/** What the last of them says of its length holds; those before it lasted until the next one. */
function ofRecords(stages: readonly Stage[], now: Moment): Winter {
  const running = stages.some(({ start, end }) => hasCome(start, now) && !(end && hasCome(end, now)));
  const wanted = stages.map(({ temperature, planned, start }, n) => {
    const next = stages[n + 1];
    return { temperature, days: next ? next.start.day - start.day : lengthOf(start.day, planned) };
  });
  return { had: stages.flatMap(stage => spanOf(stage, stage.temperature, now)), wanted, running };
}

function ofPlan({ records, temperature, duration, start, due, end, planned, state }: LaidStage, now: Moment): Winter {
  const first = records[0]?.temperature ?? temperature;
  const had = records.length > 0
    ? records.flatMap(record => spanOf(record, record.temperature ?? first, now))
    // The first stage, which began with the sowing and has no record of its own.
    : state === 'running' || state === 'done'
      ? [{ temperature, days: (state === 'done' ? end! : now.day) - start! }] : [];
  const days = start === undefined || due === undefined ? lengthOf(planned.start ?? now.day, duration) : due - start;
  return { had, wanted: wantedOf(records, first, days) ?? [{ temperature, days }], running: state === 'running' };
}

/** Of a stage whose temperature was changed: each in its time, the last one to the end. */
function wantedOf(
  records: readonly Stage[], first: Temperature | undefined, days: number | undefined,
): Span[] | undefined {
  if (records.length < 2 || days === undefined) return undefined;
  let left = days;
  return records.map(({ temperature = first, start }, n) => {
    const next = records[n + 1];
    const length = next ? Math.min(left, next.start.day - start.day) : left;
    left -= length;
    return { temperature, days: length };
  });
}

function spanOf({ start, end }: Stage, temperature: Temperature | undefined, now: Moment): Span[] {
  if (!hasCome(start, now)) return [];
  return [{ temperature, days: Math.min(end?.day ?? now.day, now.day) - start.day }];
}

function lengthOf(start: Day, duration: Duration | undefined): number | undefined {
  return duration && dayAfter(start, duration) - start;
}
