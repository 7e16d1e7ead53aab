import type { Journal } from '../journal/journal.ts';
import type { Batch, DatedEntry, Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import type { Day } from '../model/day.ts';
import { dayAfter } from '../model/quantity.ts';
import { stageFacts, stageName, type Ask } from './ask.ts';
import type { Due } from './due-sources.ts';
import { isLook } from './looks.ts';
import type { RegimeStage } from './regime-match.ts';
import { regimePlan, type RegimePlan } from './regimes.ts';
import { hasCome, isOpen, type Standing } from './standing.ts';

/** A stage that goes on, or the last one of a regime, with the day on which it ends. */
interface Ending extends RegimeStage {
  readonly end: Day;
  readonly entry: DatedEntry;
  readonly next: RegimeStage | undefined;
  readonly regime: string | undefined;
}

/**
 * The end of the stage that a batch is in, where its time span is known. It asks for the next stage of the regime;
 * without one, for the warm after the cold, or for the sowing where the seed has yet to be sown. After the last stage
 * it asks for a count, and is done when the batch was looked at from that day on.
 */
export function* stageDue(journal: Journal, _lot: Lot, standing: Standing, now: Moment): Iterable<Due> {
  if (!isOpen(standing)) return;
  // A stage or a sowing written ahead is what comes next, and is listed itself.
  if (standing.ahead.some(({ type }) => type === 'stage' || type === 'sow')) return;
  const plan = standing.sowing && planNow(standing.batch, journal, now);
  const ending = (plan && endingOfPlan(plan)) ?? endingOfRecord(standing, now, plan);
  if (!ending) return;
  const ask = askFor(ending, standing);
  const looked = standing.past.some(event => isLook(event) && event.entry.moment.day >= ending.end);
  if (ask.keyword === 'count' && looked) return;
  yield {
    kind: 'stage', id: standing.batch.path, at: { day: ending.end, minutes: undefined },
    entry: ending.entry, since: ending.entry.moment, what: inWords(ending), ask,
  };
}

/** The regime that the batch is in; none while the sowing in it is yet to come. */
function planNow(batch: Batch, journal: Journal, now: Moment): RegimePlan | undefined {
  const plan = regimePlan(batch, journal, now);
  return plan && hasCome(plan.sowing.moment, now) ? plan : undefined;
}

function endingOfPlan({ regime, stages, current, next, sowing }: RegimePlan): Ending | undefined {
  const last = stages.at(-1);
  const stage = current ?? (last?.state === 'done' && last.records.at(-1)?.end === undefined ? last : undefined);
  if (stage?.due === undefined) return undefined;
  const { stage: kind, temperature, duration, due, records } = stage;
  return { stage: kind, temperature, duration, end: due, entry: records.at(-1)?.entry ?? sowing, next, regime };
}

function endingOfRecord({ past }: Standing, now: Moment, plan: RegimePlan | undefined): Ending | undefined {
  const event = past.findLast(({ type }) => type === 'stage');
  if (event?.type !== 'stage') return undefined;
  const { stage: { stage, temperature, planned, start, end, entry } } = event;
  if (!planned || (end && hasCome(end, now))) return undefined;
  const { next, regime } = plan ?? {};
  return { stage, temperature, duration: planned, end: dayAfter(start.day, planned), entry, next, regime };
}

function askFor({ stage, next }: Ending, { batch: { path }, sowing }: Standing): Ask {
  const ask = { keyword: 'count', subject: path, facts: '', timed: false } as const;
  if (next) return { ...ask, keyword: next.stage, facts: stageFacts(next.temperature, next.duration) };
  if (stage === 'warm') return ask;
  return { ...ask, keyword: sowing ? 'warm' : 'sow', facts: undefined };
}

function inWords({ next, regime, ...stage }: Ending): string {
  const of = regime === undefined ? '' : ` (regime ${regime})`;
  return next ? `${stageName(stage)} ends, ${stageName(next)} comes next${of}` : `${stageName(stage)} ends${of}`;
}
