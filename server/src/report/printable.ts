import { TURNING } from '../model/turning.ts';

/** Controls, and the marks that turn the direction of what follows: a journal must not steer the terminal. */
const UNPRINTABLE = new RegExp(`[\\p{Cc}${TURNING}]`, 'gu');

/** Text from a journal, or a file's name, as one line for a terminal. */
export function printable(text: string): string {
  return text.replace(UNPRINTABLE, '\uFFFD');
}

/** Of these, those that JSON leaves as they are. */
const LEFT_BY_JSON = new RegExp(`[\\u007f-\\u009f${TURNING}]`, 'g');

/** A value as JSON for programs, which does not steer a terminal that shows it either; the strings in it stay whole. */
export function printableJson(value: unknown): string {
  const text = JSON.stringify(value, undefined, 2)
    .replace(LEFT_BY_JSON, unit => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);
  return `${text}\n`;
}
