/** `sow ... regime NAME`: the dates of all stages, as planned at the sowing and as they have turned out since. */
import type { Batch, BatchEvent, DatedEntry, Entry, Stage } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import type { Day } from '../model/day.ts';
import { meaningOf } from '../model/events.ts';
import { factOf } from '../model/record.ts';
import { layStages, type LaidStage } from './regime-dates.ts';
import { matchStages, stagesOf, type RegimeStage } from './regime-match.ts';
import { hasCome } from './standing.ts';

export interface RegimePlan {
  readonly regime: string;
  readonly definition: Entry;
  readonly sowing: DatedEntry;
  readonly stages: readonly LaidStage[];
  /** The stage that goes on; undefined before the sowing, at the end, and while the batch is off plan. */
  readonly current: LaidStage | undefined;
  readonly next: LaidStage | undefined;
  /** Records of stages that the regime does not have there, in the order of time. */
  readonly offPlan: readonly Stage[];
  /** The end of the last stage: as it was, or the earliest that can still be reached. */
  readonly end: Day | undefined;
  /** The sowing in another regime, or the close of the batch, that cut it short. */
  readonly cutShort: DatedEntry | undefined;
  /** The sowing that took the seed out of it, or the close of the batch, whether or not stages were left. */
  readonly cut: DatedEntry | undefined;
}

/**
 * The regime that a batch is in: that of the last sowing that has come, else of the first that is written ahead.
 * Undefined for a batch that was sown in none, and where the journal does not define it.
 */
export function regimePlan(batch: Batch, now: Moment): RegimePlan | undefined {
  const plans = regimePlans(batch, now);
  return plans.findLast(({ sowing }) => hasCome(sowing.moment, now)) ?? plans[0];
}

/** The regimes of a batch, in the order of its sowings. */
export function regimePlans(batch: Batch, now: Moment): RegimePlan[] {
  const events = batch.inherited.length === 0 ? batch.events : [...batch.inherited, ...batch.events];
  const closing = batch.closed && hasCome(batch.closed.entry.moment, now) ? batch.closed.entry : undefined;
  return sowingsOf(events).map(({ base, records, following }) => layOut(base, records, now, following ?? closing));
}

interface RegimeSowing {
  readonly base: Pick<RegimePlan, 'regime' | 'definition' | 'sowing'>;
  /** The stages that were written while it was in the regime. */
  readonly records: readonly Stage[];
  /** The sowing that took the seed out of it: into another regime, or out of its bag into compost. */
  readonly following: DatedEntry | undefined;
}

function sowingsOf(events: readonly BatchEvent[]): RegimeSowing[] {
  const sowings = events.filter(event => event.type === 'sow');
  return sowings.flatMap(({ entry, regime: definition }, i) => {
    if (!definition) return [];
    const following = sowings.slice(i + 1)
      .find(({ again, entry: { record } }) => again || factOf(record, 'regime'))?.entry;
    const regime = factOf(entry.record, 'regime')!.value.text;
    return [{ base: { regime, definition, sowing: entry }, records: recordsOf(events, entry, following), following }];
  });
}

/** A stage of a regime that nobody wrote down, on the days that it has by the plan. */
export interface PlannedStage extends RegimeStage {
  /** The sowing in the regime. */
  readonly sowing: DatedEntry;
  /** From 0, in the regime. */
  readonly number: number;
  readonly start: Day;
  /** Undefined where its time span is not written. */
  readonly end: Day | undefined;
}

/**
 * The stages of the regimes among events, in the order of time, but for those that have records. What is written moves
 * the plan; that time goes by does not. Those that the close, or a sowing out of the regime, cut off are none.
 */
export function plannedStages(events: readonly BatchEvent[]): PlannedStage[] {
  const closing = events.find(event => meaningOf(event).closes)?.entry;
  return sowingsOf(events).flatMap(({ base: { definition, sowing }, records, following }) => {
    const sown = sowing.moment.day;
    const plan = stagesOf(definition.record);
    const cut = (following ?? closing)?.moment.day;
    return layStages(plan, matchStages(plan, records, sown), { sown, today: -Infinity, cut: undefined })
      .filter(({ records: own, state }) => own.length === 0 && state !== 'skipped' && state !== 'not reached')
      .flatMap(({ number, stage, temperature, duration, start, due }) => (
        start === undefined || (cut !== undefined && start >= cut)
          ? []
          : [{ sowing, number, stage, temperature, duration, start, end: earlier(due, cut) }]));
  });
}

/** Whether the time of a stage that nobody wrote down is over by a day. */
export function isPassed({ end }: PlannedStage, today: Day): boolean {
  return end !== undefined && end <= today;
}

function earlier(a: Day | undefined, b: Day | undefined): Day | undefined {
  return a === undefined || b === undefined ? a ?? b : Math.min(a, b);
}

/** Those from the day of the sowing on: seed sown and put into the fridge on one day is chilled from then on. */
function recordsOf(events: readonly BatchEvent[], from: DatedEntry, to: DatedEntry | undefined): Stage[] {
  const stages: Stage[] = [];
  for (const event of events) {
    const { day } = event.entry.moment;
    if (event.type === 'stage' && day >= from.moment.day && (!to || day < to.moment.day)) stages.push(event.stage);
  }
  return stages;
}

function layOut(
  base: Pick<RegimePlan, 'regime' | 'definition' | 'sowing'>,
  records: readonly Stage[], now: Moment, cut: DatedEntry | undefined,
): RegimePlan {
  const { definition, sowing: { moment: { day: sown } } } = base;
  const plan = stagesOf(definition.record);
  const matches = matchStages(plan, records, sown);
  const stages = layStages(plan, matches, { sown, today: now.day, cut: cut?.moment.day });
  return {
    regime: base.regime, definition, sowing: base.sowing, stages,
    current: stages.find(({ state }) => state === 'running'),
    next: stages.find(({ state }) => state === 'to come'),
    offPlan: matches.filter(({ number }) => number === undefined).map(({ record }) => record),
    end: stages.at(-1)?.end,
    cutShort: stages.some(({ state }) => state === 'not reached') ? cut : undefined, cut,
  };
}
