/** The dates of a regime's stages: what was written takes the place of the plan, and pushes what is still to come. */
import type { Stage } from '../journal/life.ts';
import type { Day } from '../model/day.ts';
import { dayAfter, type Duration, type Temperature } from '../model/quantity.ts';
import type { Match, RegimeStage } from './regime-match.ts';

/** `not reached`: the batch was closed, or went over to another regime, before. */
export type StageState = 'done' | 'running' | 'to come' | 'skipped' | 'not reached';

export interface LaidStage {
  /** From 0. */
  readonly number: number;
  readonly stage: 'chill' | 'warm';
  /** As the latest record of the stage says, else as planned. */
  readonly temperature: Temperature | undefined;
  readonly duration: Duration | undefined;
  readonly state: StageState;
  /** As laid out on the day of sowing; undefined behind a stage whose time span is not known. */
  readonly planned: { readonly start: Day | undefined; readonly end: Day | undefined };
  /**
   * The first day, as it was or as it is to be; undefined where it is not known, skipped or not reached. A stage that
   * is late counts as begun today at the earliest, and pushes those that follow.
   */
  readonly start: Day | undefined;
  /** The day on which it is, or was, to end: by its latest record that says how long, else by the plan. */
  readonly due: Day | undefined;
  /** The day on which what came next began; `due` where nothing has come yet. */
  readonly end: Day | undefined;
  /** The records that took the place of the plan, in the order of time. */
  readonly records: readonly Stage[];
}

/** The days that a regime is laid out by. */
export interface Days {
  readonly sown: Day;
  readonly today: Day;
  /** When the batch was closed or went over to another regime. */
  readonly cut: Day | undefined;
}

/** The first stage begins with the sowing, or with a record of its own. */
export function layStages(plan: readonly RegimeStage[], matches: readonly Match[], days: Days): LaidStage[] {
  const stages: LaidStage[] = [];
  const reached = matches.reduce((most, { number }) => Math.max(most, number ?? 0), 0);
  /** The day on which the next stage can begin; `start` as laid out at the sowing. */
  let free: Day | undefined = days.sown;
  let start: Day | undefined = days.sown;
  for (const [number, stage] of plan.entries()) {
    const records = recordsOf(matches, number);
    const duration = records.findLast(({ planned }) => planned)?.planned ?? stage.duration;
    const later = followerOf(records, number, matches);
    // The first stage needs no record; another one without is passed over when a later one has its own.
    const isReplaced = records.length === 0 && (number === 0 ? later?.start.day === days.sown : number < reached);
    const dates = isReplaced
      ? skipped
      : datesOf(records, duration, number === 0 ? days.sown : undefined, free, later, number === plan.length - 1, days);
    const end = endAfter(start, stage.duration);
    // Written out, since thousands of batches are laid out at every change and spreading is slow.
    stages.push({
      number, stage: stage.stage, duration, records, planned: { start, end },
      temperature: records.findLast(({ temperature }) => temperature)?.temperature ?? stage.temperature,
      state: dates.state, start: dates.start, due: dates.due, end: dates.end,
    });
    // A first stage that was skipped gave way to a record of its day, behind which the regime goes on; behind a later
    // one that was skipped comes one with a record of its own.
    if (dates.state !== 'not reached') free = freeAfter(later, dates, days.today);
    start = end;
  }
  return stages;
}

type Dates = Pick<LaidStage, 'state' | 'start' | 'due' | 'end'>;

const skipped: Dates = { state: 'skipped', start: undefined, due: undefined, end: undefined };
const notReached: Dates = { state: 'not reached', start: undefined, due: undefined, end: undefined };

/** `implied`: the day on which it began without a record; `later`: the record that ended it. */
function datesOf(
  records: readonly Stage[], duration: Duration | undefined, implied: Day | undefined, free: Day | undefined,
  later: Stage | undefined, isLast: boolean, { cut, today }: Days,
): Dates {
  const begun = records[0]?.start.day ?? implied;
  const start = begun ?? free;
  if (cut !== undefined && (start === undefined || start >= cut)) return notReached;
  const due = endAfter(records.findLast(({ planned }) => planned)?.start.day ?? start, duration);
  const stop = later?.start.day ?? (isLast ? earlier(due, cut) : cut);
  return { state: begun === undefined ? 'to come' : stateOf(begun, stop, today), start, due, end: stop ?? due };
}

const nothing: readonly Stage[] = [];

function recordsOf(matches: readonly Match[], number: number): readonly Stage[] {
  if (matches.length === 0) return nothing;
  return matches.filter(match => match.number === number).map(({ record }) => record);
}

/** The record that ended a stage. */
function followerOf(records: readonly Stage[], number: number, matches: readonly Match[]): Stage | undefined {
  const last = records.at(-1);
  if (last) return matches[matches.findIndex(({ record }) => record === last) + 1]?.record;
  return number === 0 ? matches[0]?.record : undefined;
}

function endAfter(start: Day | undefined, duration: Duration | undefined): Day | undefined {
  return start === undefined || !duration ? undefined : dayAfter(start, duration);
}

function stateOf(start: Day, stop: Day | undefined, today: Day): StageState {
  if (start > today) return 'to come';
  return stop !== undefined && stop <= today ? 'done' : 'running';
}

function earlier(a: Day | undefined, b: Day | undefined): Day | undefined {
  return a === undefined || b === undefined ? a ?? b : Math.min(a, b);
}

/** Behind a record that is off plan the regime goes on; a later one of the regime tells its start itself. */
function freeAfter(later: Stage | undefined, { end, state }: Dates, today: Day): Day | undefined {
  const day = later ? endAfter(later.start.day, later.planned) : end;
  return day === undefined || state === 'to come' ? day : Math.max(day, today);
}
