/** Options that several commands take, and how texts become what they stand for. */
import { InvalidArgumentError, Option } from 'commander';
import type { Moment } from '../../journal/moment.ts';
import { delimiters, type Delimiter } from '../../import/answers.ts';
import { momentOf } from '../../lsp/clock.ts';
import { privates, type Private } from '../../model/privates.ts';
import { winterNamed, type Winter } from '../../model/winter.ts';

export const PATHS_NEEDED = 'files (*.germ) or folders, with their subfolders';
export const PATHS = `${PATHS_NEEDED}; without any, the current folder`;

export function today(text: string): Moment {
  const moment = momentOf(text);
  if (!moment) throw new InvalidArgumentError('Write a date such as 2026-01-12, or a date and a time such as 2026-01-12T08:00.');
  return moment;
}

export function winter(text: string): Winter {
  const named = winterNamed(text);
  if (!named) throw new InvalidArgumentError('Write a winter such as 2025/26, or a year such as 2026.');
  return named;
}

export function markerSize(text: string): number {
  if (!/^\d{1,2}$/.test(text) || Number(text) < 7) throw new InvalidArgumentError('Write a number from 7 to 99.');
  return Number(text);
}

export function wholeDays(text: string): number {
  if (!/^\d{1,5}$/.test(text)) throw new InvalidArgumentError('Write a whole number of days.');
  return Number(text);
}

export function delimiter(text: string): Delimiter {
  const found = delimiters.find(each => each === (text === 'tab' ? '\t' : text));
  if (found === undefined) throw new InvalidArgumentError('Write "," or ";" or tab.');
  return found;
}

export const wholeFrom = (least: number, most: number) => (text: string): number => {
  const number = Number(text);
  if (/^\d+$/.test(text) && number >= least && number <= most) return number;
  throw new InvalidArgumentError(`Write a whole number from ${least} to ${most}.`);
};

/** One more id, for an option that may be repeated. */
export function oneMoreId(id: string, before: readonly string[] | undefined): readonly string[] {
  return [...(before ?? []), id];
}

/** One more of what is private, for an option that may be repeated. */
export function oneMore(text: string, before: readonly Private[] | undefined): readonly Private[] {
  const known = privates.find(each => each === text);
  if (!known) throw new InvalidArgumentError(`Write one of ${privates.join(', ')}.`);
  return [...(before ?? []), known];
}

export const todayOption = (): Option => new Option(
  '--today <date>', 'use this as today (2026-01-12) or now (2026-01-12T08:00) instead of the clock').argParser(today);

export const asOfOption = (): Option => new Option(
  '--as-of <date>', 'the journal as it was on this day, without later records').argParser(today).conflicts('today');

export const formatOption = (formats: readonly string[]): Option =>
  new Option('--format <name>', 'how to print it').choices(formats).default('text');
