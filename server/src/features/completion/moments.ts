/** Dates and times for the head of a record: today and yesterday, now, the end of a soak, days ahead for a reminder. */
import { openSoak } from '../../calendar/soaks.ts';
import { standingOf } from '../../calendar/standing.ts';
import { printMoment, printTime, type Moment } from '../../journal/moment.ts';
import { hasDate, isoOf, weekdayOf, type Day } from '../../model/day.ts';
import { meaningOfKeyword } from '../../model/events.ts';
import { keywords, type Keyword } from '../../model/keywords.ts';
import { plannedEnd } from '../../words/stages.ts';
import { dayOfScene, livedIn, type Scene } from './scene.ts';
import type { SpotOf } from './spot.ts';
import type { Suggestion } from './suggestion.ts';

/** Weeks ahead for which reminders are offered. */
const WEEKS = [1, 2, 4];

/** Whether the time of day counts, since it gives the length of a soak. */
export function isTimed(keyword: Keyword): boolean {
  return meaningOfKeyword(keyword)?.isTimed ?? false;
}

/** What is offered depends on whether a date is written already, here or in the `day` line above. */
export function moments({ keyword, dated }: SpotOf<'moment'>, scene: Scene): Suggestion[] {
  const found = dated ? times(keyword, scene) : dates(keyword, scene);
  const seen = new Set<string>();
  return found.filter(({ label }) => !seen.has(label) && seen.add(label));
}

function dates(keyword: Keyword, scene: Scene): Suggestion[] {
  const { now: { day: today }, above } = scene;
  const near: Suggestion[] = [...dateOf(today, 'today'), ...dateOf(today - 1, 'yesterday')];
  if (keywords[keyword].dated === 'own') return [...ahead(scene), ...near];
  const end = keyword === 'lift' ? soakEnd(scene) : undefined;
  // Below a `day` line only a time, or another day, is of use.
  if (above !== undefined && keyword !== 'day') {
    const ends = end && [end.day === above && end.minutes !== undefined
      ? timeOf(end.minutes, endWords) : momentOf(end, endWords)];
    return [...(ends ?? []), ...times(keyword, scene), ...near.filter(({ label }) => label !== isoOf(above))];
  }
  const exact = isTimed(keyword) && scene.now.minutes !== undefined ? [momentOf(scene.now, 'now')] : [];
  return [...(end ? [momentOf(end, endWords)] : []), ...exact, ...near];
}

const endWords = 'the end of its soak';

function times(keyword: Keyword, scene: Scene): Suggestion[] {
  const { now } = scene;
  const day = dayOfScene(scene);
  const end = keyword === 'lift' ? soakEnd(scene) : undefined;
  return [
    ...(end?.day === day && end.minutes !== undefined ? [timeOf(end.minutes, endWords)] : []),
    ...(now.day === day && now.minutes !== undefined ? [timeOf(now.minutes, 'now')] : []),
  ];
}

/** When the soak ends in which the batch lies; one that runs with no end written ends at the limit. */
function soakEnd(scene: Scene): Moment | undefined {
  const lived = livedIn(scene);
  if (!lived) return undefined;
  const { lot, batch, event } = lived;
  // The `lift` that is being written would have ended it.
  const before = { ...batch, events: batch.events.filter(each => each !== event) };
  const day = { day: dayOfScene(scene), minutes: undefined };
  return openSoak(scene.journal, lot, standingOf(before, day), day)?.end;
}

/** Days for a reminder. */
function ahead(scene: Scene): Suggestion[] {
  const { now: { day: today } } = scene;
  const lived = livedIn(scene);
  const stage = lived?.batch.stages.at(-1);
  const end = stage && !stage.end ? plannedEnd(stage) : undefined;
  return [
    ...(end !== undefined && end > today ? dateOf(end, `the end of “${stage!.stage}”`) : []),
    ...WEEKS.flatMap(weeks => dateOf(today + 7 * weeks, weeks === 1 ? 'in a week' : `in ${weeks} weeks`)),
  ];
}

/** None for a day that has no date. */
function dateOf(day: Day, words: string): Suggestion[] {
  return hasDate(day) ? [momentOf({ day, minutes: undefined }, words)] : [];
}

function momentOf(moment: Moment, words: string): Suggestion {
  const label = printMoment(moment);
  const weekday = weekdayOf(moment.day);
  return { kind: 'date', label, detail: `${weekday}, ${words}`, find: `${label} ${words} ${weekday}` };
}

function timeOf(minutes: number, words: string): Suggestion {
  const label = printTime(minutes);
  return { kind: 'date', label, detail: words, find: `${label} ${words}` };
}
