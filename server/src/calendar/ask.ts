/** The record that an item of the due list asks the grower to write. */
import type { Moment } from '../journal/moment.ts';
import { isBefore, printMoment, printTime } from '../journal/moment.ts';
import { isoOf } from '../model/day.ts';
import type { Keyword } from '../model/keywords.ts';
import type { RegimeStage } from './regime-match.ts';
import { printQuantity, printTemperature, type Duration, type Temperature } from '../model/quantity.ts';

export interface Ask {
  readonly keyword: Keyword;
  readonly subject: string;
  /** What stands behind the first comma; empty where the grower is to fill it in, undefined where there is nothing. */
  readonly facts: string | undefined;
  /** Whether the time of day matters: it gives the length of a soak. */
  readonly timed: boolean;
}

/**
 * The record as it is written at a moment.
 *
 * Example: for a lift of VER-24/A on 11 January 2026 at 19:00 'lift VER-24/A 2026-01-11 19:00'; for a count, whose
 * numbers the grower puts in, 'count VER-24/A 2026-01-19, '
 */
export function recordLine(ask: Ask, at: Moment): string {
  return lineOf(ask, ask.timed ? printMoment(at) : isoOf(at.day));
}

/** The same below a `day` line of its day, which gives the date. Example: 'lift VER-24/A 19:00' */
export function recordBelowDay(ask: Ask, { minutes }: Moment): string {
  return lineOf(ask, ask.timed && minutes !== undefined ? printTime(minutes) : undefined);
}

/**
 * The same in words that stay true while the time goes on.
 *
 * Example: 'lift VER-24/A, with the present time'; 'count VER-24/A, …' where the grower puts the numbers in
 */
export function recordWords(ask: Ask): string {
  const line = lineOf({ ...ask, facts: ask.facts === '' ? '…' : ask.facts }, undefined);
  return ask.timed ? `${line}, with the present time` : line;
}

function lineOf({ keyword, subject, facts }: Ask, when: string | undefined): string {
  const head = [keyword, subject, when].filter(word => word !== undefined).join(' ');
  return facts === undefined ? head : `${head}, ${facts}`;
}

/** The later of the moment when something is due and the present: nobody writes today what happened tomorrow. */
export function laterOf(due: Moment, now: Moment): Moment {
  return isBefore(due, now) || (due.day === now.day && due.minutes === undefined) ? now : due;
}

/**
 * Temperature and time span of a stage as facts; undefined where neither is known.
 *
 * Example: stageFacts({ day: 4, night: undefined, unit: 'C' }, { value: 90, unit: 'days' }) is '4 C, 90 days'
 */
export function stageFacts(temperature: Temperature | undefined, duration: Duration | undefined): string | undefined {
  const facts = [temperature && printTemperature(temperature), duration && printQuantity(duration)];
  return facts.filter(fact => fact !== undefined).join(', ') || undefined;
}

/** Example: 'chill 4 C 90 days', as a `regime` record has it */
export function stageName({ stage, temperature, duration }: RegimeStage): string {
  const facts = stageFacts(temperature, duration);
  return facts === undefined ? stage : `${stage} ${facts.replace(', ', ' ')}`;
}

/** Example: isoMoment({ day: 0, minutes: 545 }) is '1970-01-01T09:05' */
export function isoMoment({ day, minutes }: Moment): string {
  return minutes === undefined ? isoOf(day) : `${isoOf(day)}T${printTime(minutes)}`;
}
