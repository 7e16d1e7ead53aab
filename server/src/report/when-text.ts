import type { Schedule } from '../calendar/backwards.ts';
import { startOf, wantedOf, type GuideSoak, type When } from '../calendar/when.ts';
import { agoText, daysText } from '../words/days.ts';
import { aimText, basisText, guideSoakText, stepsOf } from '../words/schedules.ts';
import { isUndefined } from '../measures/measured.ts';
import { isoOf } from '../model/day.ts';
import { printQuantity } from '../model/quantity.ts';
import { plainPage, type Page } from './page.ts';
import { printable } from './printable.ts';
import { paragraph } from './table.ts';

/** A plan from a date for a terminal; `soaks` are those of the guides, where the plan has none. */
export function whenText(name: string, plan: When, soaks: readonly GuideSoak[] = [], page = plainPage): string {
  const { schedule, fixed } = plan;
  const title = `${name}, ${aimText(fixed)}`;
  if (isUndefined(schedule)) return lines(`${title}: no date can be given, because ${schedule.undefined}.`, [], missingText(plan), page);
  const notes = [...lateText(schedule, plan), ...basisText(plan), ...soaks.map(adviceText)];
  return lines(title, datesOf(schedule, plan), notes, page);
}

function lines(title: string, dates: readonly string[], notes: readonly string[], { width }: Page): string {
  const paragraphs = (texts: readonly string[]) => texts.flatMap(text => paragraph(printable(text), width));
  return [...paragraphs([title]), ...dates, ...(notes.length > 0 ? ['', ...paragraphs(notes)] : []), ''].join('\n');
}

function datesOf(schedule: Schedule, plan: When): string[] {
  const start = startOf(schedule);
  return stepsOf(schedule, plan).map(({ day, what }) =>
    `  ${isoOf(day)}  ${what}${day === start ? ` (${agoText(day, plan.today)})` : ''}`);
}

function lateText(schedule: Schedule, { begunToday, today, fixed }: When): string[] {
  if (!begunToday) return [];
  const reached = wantedOf(begunToday, fixed);
  const what = fixed.by === 'leaf' ? 'first leaves appear' : 'it ends';
  return [`The time to start was ${agoText(startOf(schedule), today)}. If you start today, ${what} on ${isoOf(reached)}, ` +
    `${daysText(reached - fixed.day)} too late.`];
}

/** What to say more, so that leaves can be planned for. */
function missingText({ fixed: { by, day }, leaf }: When): string[] {
  return by === 'leaf' && (!leaf || isUndefined(leaf))
    ? [`Give the days with --leaf, or use --plant to name a plant whose counts have them. To plan only for the end of the regime, use --ends-by ${isoOf(day)}.`]
    : [];
}

function adviceText(soak: GuideSoak): string {
  return `This plan has no soak. In your guides the seed is ${guideSoakText(soak)}; add it with --soak "${printQuantity(soak.soak)}".`;
}
