/** A plan from a date as plain data for other programs; the README describes the shape. */
import type { Schedule } from '../calendar/backwards.ts';
import type { GuideSoak, When } from '../calendar/when.ts';
import { isUndefined } from '../measures/measured.ts';
import { isoOf } from '../model/day.ts';
import { temperatureData } from './json.ts';

/** Version of the shape; it grows when something in it changes its meaning or goes, not when something comes. */
export const WHEN_SHAPE = 1;

/** `soaks`: those that guides give for the plant. */
export function whenData(
  { fixed: { by, day }, today, leaf, schedule, begunToday }: When, soaks: readonly GuideSoak[] = [],
): object {
  return {
    today: isoOf(today),
    fixed: { by, date: isoOf(day) },
    daysToLeaf: !leaf || isUndefined(leaf) ? leaf ?? null : { days: leaf.days, own: leaf.own ?? null },
    schedule: isUndefined(schedule) ? schedule : scheduleData(schedule),
    begunToday: begunToday ? scheduleData(begunToday) : null,
    guideSoaks: soaks.map(({ soak, guides }) => ({
      duration: soak,
      guides: guides.map(({ plant, source, line }) =>
        ({ plant, source: source ?? null, file: line.store.name, line: line.number + 1 })),
    })),
  };
}

function scheduleData({ soak, sow, stages, end, ready }: Schedule): object {
  return {
    soak: soak === undefined ? null : isoOf(soak), sow: isoOf(sow),
    stages: stages.map(({ stage, temperature, duration, start, end: last }) => ({
      stage, temperature: temperatureData(temperature), duration: duration ?? null,
      start: isoOf(start), end: isoOf(last),
    })),
    end: isoOf(end), ready: isoOf(ready),
  };
}
