import { startOf, type When } from '../calendar/when.ts';
import { agoText, daysText } from '../features/words/days.ts';
import { aimText, basisText, stepsOf } from '../features/words/schedules.ts';
import { isUndefined } from '../measures/measured.ts';
import { isoOf } from '../model/day.ts';
import { printable } from './printable.ts';
import { paragraph } from './table.ts';

const WIDTH = 100;

/** A plan from a date for a terminal. */
export function whenText(name: string, plan: When): string {
  const { schedule, begunToday, today, fixed } = plan;
  const title = `${name}, ${aimText(fixed)}`;
  if (isUndefined(schedule)) return `${printable(title)}: cannot be said, ${schedule.undefined}\n`;
  const start = startOf(schedule);
  const steps = stepsOf(schedule, plan).map(({ day, what }) =>
    `  ${isoOf(day)}  ${what}${day === start ? ` (${agoText(day, today)})` : ''}`);
  const late = begunToday && [
    `The time to begin was ${agoText(start, today)}.`,
    `Begun today it is ready on ${isoOf(begunToday.ready)}, ${daysText(begunToday.ready - fixed.day)} too late.`,
  ].join(' ');
  const notes = [...(late === undefined ? [] : [late]), ...basisText(plan)];
  return [...paragraph(printable(title), WIDTH), ...steps, '', ...notes.flatMap(note => paragraph(printable(note), WIDTH)), ''].join('\n');
}
