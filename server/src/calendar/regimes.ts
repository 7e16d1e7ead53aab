/** `sow ... regime NAME`: the dates of all stages, as planned at the sowing and as they have turned out since. */
import type { Batch, BatchEvent, DatedEntry, Entry, Stage } from '../journal/life.ts';
import type { Journal } from '../journal/journal.ts';
import type { Moment } from '../journal/moment.ts';
import type { Day } from '../model/day.ts';
import { factOf } from '../model/record.ts';
import { layStages, type LaidStage } from './regime-dates.ts';
import { matchStages, stagesOf } from './regime-match.ts';
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
}

/**
 * The regime that a batch is in: that of the last sowing that has come, else of the first that is written ahead.
 * Undefined for a batch that was sown in none, and where the journal does not define it.
 */
export function regimePlan(batch: Batch, journal: Journal, now: Moment): RegimePlan | undefined {
  const plans = regimePlans(batch, journal, now);
  return plans.findLast(({ sowing }) => hasCome(sowing.moment, now)) ?? plans[0];
}

/** The regimes of a batch, in the order of its sowings. */
export function regimePlans(batch: Batch, journal: Journal, now: Moment): RegimePlan[] {
  const events = batch.inherited.length === 0 ? batch.events : [...batch.inherited, ...batch.events];
  const sowings = events.filter(({ type, entry }) => type === 'sow' && factOf(entry.record, 'regime'));
  if (sowings.length === 0) return [];
  const closing = batch.closed && hasCome(batch.closed.entry.moment, now) ? batch.closed.entry : undefined;
  return sowings.flatMap(({ entry }, i) => {
    const regime = factOf(entry.record, 'regime')!.value.text;
    const definition = journal.definitionsOf(regime).find(({ record }) => record.keyword === 'regime');
    if (!definition) return [];
    const following = sowings[i + 1]?.entry;
    const records = recordsOf(events, entry, following);
    return [layOut({ regime, definition, sowing: entry }, records, now, following ?? closing)];
  });
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
    cutShort: stages.some(({ state }) => state === 'not reached') ? cut : undefined,
  };
}
