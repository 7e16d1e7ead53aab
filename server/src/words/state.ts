import { outdoorsSince } from '../calendar/outdoors.ts';
import { soakState } from '../calendar/soaks.ts';
import { standingOf } from '../calendar/standing.ts';
import { wentText } from './leaving.ts';
import { noEndText } from './soaks.ts';
import { printMoment, type Moment } from '../journal/moment.ts';
import type { Batch, Soak, Stage } from '../journal/life.ts';
import { isoOf, type Day } from '../model/day.ts';
import { isStep, type Leaving } from '../model/events.ts';
import { dayAfter } from '../model/quantity.ts';
import { stageProgressText } from './stages.ts';

/** Where a batch stands. `days` are those since it came there; of sown seed those since day 0. */
export type BatchState =
  | { readonly kind: 'not begun' }
  | { readonly kind: 'scarified'; readonly since: Day }
  | { readonly kind: 'in soak'; readonly since: Moment; readonly until: Moment | undefined }
  | { readonly kind: 'soaked'; readonly since: Moment }
  | { readonly kind: 'soak without end'; readonly soak: Soak; readonly days: number }
  | { readonly kind: 'sown' | 'outdoors'; readonly since: Day; readonly days: number }
  | { readonly kind: 'in stage'; readonly stage: Stage; readonly days: number; readonly planned: number | undefined }
  | { readonly kind: 'closed'; readonly by: 'cut' | 'discard'; readonly on: Day }
  | { readonly kind: 'gone'; readonly how: Leaving; readonly whither: string | undefined; readonly on: Day };

/** Where a batch stands now, by the last thing that was done to it; what is dated later does not count yet. */
export function stateOf(batch: Batch, now: Moment): BatchState {
  const { past, closed } = standingOf(batch, now);
  if (closed?.type === 'cut' || closed?.type === 'discard') {
    return { kind: 'closed', by: closed.type, on: closed.entry.moment.day };
  }
  if (closed?.type === 'gone') {
    return { kind: 'gone', how: closed.how, whither: closed.whither, on: closed.entry.moment.day };
  }
  const last = past.findLast(isStep);
  switch (last?.type) {
    case 'soak': {
      const { soak, soak: { start, end } } = last;
      const state = soakState(soak, batch, now);
      if (state === 'no end recorded') return { kind: 'soak without end', soak, days: now.day - start.day };
      return end && state === 'out' ? { kind: 'soaked', since: end } : { kind: 'in soak', since: start, until: end };
    }
    case 'scarify': return { kind: 'scarified', since: last.entry.moment.day };
    case 'lift': return { kind: 'soaked', since: last.entry.moment };
    case 'sow': {
      const since = last.entry.moment.day;
      const outdoors = outdoorsSince(past);
      const days = now.day - (batch.sowing?.moment.day ?? since);
      if (outdoors) return { kind: 'outdoors', since: outdoors.moment.day, days };
      // Seed that is sown out of its bag, or once more, keeps its day 0.
      return { kind: 'sown', since, days };
    }
    case 'stage': {
      const { start, planned } = last.stage;
      return {
        kind: 'in stage', stage: last.stage, days: now.day - start.day,
        planned: planned && dayAfter(start.day, planned) - start.day,
      };
    }
    case undefined: return { kind: 'not begun' };
    default: return last satisfies never;
  }
}

/**
 * Example: 'sown, day 63', '4 C for 63 of 90 days', 'closed 2025-12-07 by cut'
 */
export function stateText(state: BatchState, now: Moment): string {
  switch (state.kind) {
    case 'not begun': return state.kind;
    case 'scarified': return `scarified ${isoOf(state.since)}, not sown`;
    case 'in soak': return `in soak since ${printMoment(state.since)}${state.until ? `, out ${printMoment(state.until)}` : ''}`;
    case 'soaked': return `out of soak ${printMoment(state.since)}, not sown`;
    case 'soak without end': return `soaked, ${noEndText(state.soak, now)}`;
    case 'outdoors': return `outdoors since ${isoOf(state.since)}, day ${state.days}`;
    case 'sown': return `sown, day ${state.days}`;
    case 'in stage': return stageProgressText(state.stage, now.day);
    case 'gone': return `${wentText(state)} ${isoOf(state.on)}`;
    case 'closed': return `closed ${isoOf(state.on)} by ${state.by}`;
  }
}
