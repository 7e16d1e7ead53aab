/** The end of the stage that a batch is in: by what was written, else by its regime. */
import type { Batch, DatedEntry } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import type { Day } from '../model/day.ts';
import { dayAfter } from '../model/quantity.ts';
import type { RegimeStage } from './regime-match.ts';
import { regimePlan, type RegimePlan } from './regimes.ts';
import { hasCome, type Standing } from './standing.ts';

/** A stage that goes on, or the last one of a regime, with the day on which it ends. */
export interface Ending extends RegimeStage {
  readonly end: Day;
  readonly entry: DatedEntry;
  readonly next: RegimeStage | undefined;
  readonly regime: string | undefined;
  /**
   * The last `move` since the record of the stage, once the stage is over time: what comes next may have begun with it,
   * which only the grower can say.
   */
  readonly moved: DatedEntry | undefined;
}

/** Undefined where the time span of the stage is not known, and where the batch is in none. */
export function endingOf(standing: Standing, now: Moment): Ending | undefined {
  const plan = standing.sowing && planNow(standing.batch, now);
  // A sowing took the seed out of its regime: nothing of that is owed any more.
  const left = plan?.cut !== undefined && hasCome(plan.cut.moment, now);
  const goesOn = left ? undefined : plan;
  const ending = (goesOn && endingOfPlan(goesOn)) ?? endingOfRecord(standing, now, goesOn);
  return ending && { ...ending, moved: ending.end > now.day ? undefined : movedSince(ending.entry, standing) };
}

function movedSince({ moment }: DatedEntry, { past }: Standing): DatedEntry | undefined {
  return past.findLast(({ type, entry }) => type === 'move' && entry.moment.day > moment.day)?.entry;
}

/** The regime that the batch is in; none while the sowing in it is yet to come. */
function planNow(batch: Batch, now: Moment): RegimePlan | undefined {
  const plan = regimePlan(batch, now);
  return plan && hasCome(plan.sowing.moment, now) ? plan : undefined;
}

type Unmoved = Omit<Ending, 'moved'>;

function endingOfPlan({ regime, stages, current, next, sowing }: RegimePlan): Unmoved | undefined {
  const last = stages.at(-1);
  const stage = current ?? (last?.state === 'done' && last.records.at(-1)?.end === undefined ? last : undefined);
  if (stage?.due === undefined) return undefined;
  const { stage: kind, temperature, duration, due, records } = stage;
  return { stage: kind, temperature, duration, end: due, entry: records.at(-1)?.entry ?? sowing, next, regime };
}

function endingOfRecord({ past }: Standing, now: Moment, plan: RegimePlan | undefined): Unmoved | undefined {
  const event = past.findLast(({ type }) => type === 'stage');
  if (event?.type !== 'stage') return undefined;
  const { stage: { stage, temperature, planned, start, end, entry } } = event;
  if (!planned || (end && hasCome(end, now))) return undefined;
  const { next, regime } = plan ?? {};
  return { stage, temperature, duration: planned, end: dayAfter(start.day, planned), entry, next, regime };
}
