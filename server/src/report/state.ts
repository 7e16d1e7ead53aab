import { isBefore, printMoment, type Moment } from '../journal/moment.ts';
import type { Batch, BatchEvent, Stage } from '../journal/life.ts';
import { isoOf, type Day } from '../model/day.ts';
import { dayAfter } from '../model/quantity.ts';
import { stageProgressText } from '../features/words/stages.ts';

/** Where a batch stands. `days` are those since it came there. */
export type BatchState =
  | { readonly kind: 'not begun' }
  | { readonly kind: 'in soak'; readonly since: Moment; readonly until: Moment | undefined }
  | { readonly kind: 'soaked'; readonly since: Moment }
  | { readonly kind: 'sown'; readonly since: Day; readonly days: number }
  | { readonly kind: 'in stage'; readonly stage: Stage; readonly days: number; readonly planned: number | undefined }
  | { readonly kind: 'closed'; readonly by: 'cut' | 'discard'; readonly on: Day };

/** Where a batch stands now, by the last thing that was done to it; what is dated later does not count yet. */
export function stateOf(batch: Batch, now: Moment): BatchState {
  const { closed } = batch;
  if (closed && (closed.type === 'cut' || closed.type === 'discard') && !isBefore(now, closed.entry.moment)) {
    return { kind: 'closed', by: closed.type, on: closed.entry.moment.day };
  }
  const events = [...batch.inherited, ...batch.events];
  const last = events.findLast(event => isStep(event) && !isBefore(now, event.entry.moment));
  switch (last?.type) {
    case 'soak': {
      const { start, end } = last.soak;
      // Without a time of day nobody can say that a soak which ends today is over.
      return !end || !isBefore(end, now) ? { kind: 'in soak', since: start, until: end } : { kind: 'soaked', since: end };
    }
    case 'lift': return { kind: 'soaked', since: last.entry.moment };
    case 'sow': return { kind: 'sown', since: last.entry.moment.day, days: now.day - last.entry.moment.day };
    case 'stage': {
      const { start, planned } = last.stage;
      return {
        kind: 'in stage', stage: last.stage, days: now.day - start.day,
        planned: planned && dayAfter(start.day, planned) - start.day,
      };
    }
    default: return { kind: 'not begun' };
  }
}

function isStep({ type }: BatchEvent): boolean {
  return type === 'soak' || type === 'lift' || type === 'sow' || type === 'stage';
}

/**
 * Example: 'sown, day 63', '4 C for 63 of 90 days', 'closed 2025-12-07 by cut'
 */
export function stateText(state: BatchState, now: Moment): string {
  switch (state.kind) {
    case 'not begun': return state.kind;
    case 'in soak': return `in soak since ${printMoment(state.since)}${state.until ? `, out ${printMoment(state.until)}` : ''}`;
    case 'soaked': return `out of soak ${printMoment(state.since)}, not sown`;
    case 'sown': return `sown, day ${state.days}`;
    case 'in stage': return stageProgressText(state.stage, now.day);
    case 'closed': return `closed ${isoOf(state.on)} by ${state.by}`;
  }
}
