/** What can be written at a position of a journal, the likeliest first. */
import type { Journal } from '../../journal/journal.ts';
import type { Moment } from '../../journal/moment.ts';
import type { Position } from '../../text/line-store.ts';
import { amounts } from './units.ts';
import { facts } from './facts.ts';
import { wordsBehind } from './likely-amounts.ts';
import { severalLines } from './lines.ts';
import { isTimed, moments } from './moments.ts';
import { plants } from './plants.ts';
import { fits, type Scene } from './scene.ts';
import { spotAt, type Spot } from './spot.ts';
import { starts } from './starts.ts';
import { subjects } from './subjects.ts';
import { MOST, type Completions, type Suggestion } from './suggestion.ts';
import { plainText } from './template.ts';
import { values } from './values.ts';

/** What made the editor ask: the character just typed, or nothing that was typed. */
export type Trigger = ' ' | ',' | '/' | undefined;

/** Undefined where nothing can be offered. `now` is the present in the journal's zone. */
export function completionsAt(
  journal: Journal, file: string, { line: number, character }: Position, now: Moment, trigger?: Trigger,
): Completions | undefined {
  const journalFile = journal.files.get(file);
  if (!journalFile || number < 0 || number >= journalFile.text.lineCount) return undefined;
  const line = journalFile.text.at(number);
  const cursor = Math.min(Math.max(character, line.text.startsWith('\ufeff') ? 1 : 0), line.text.length);
  const spot = spotAt(line, cursor);
  const day = journalFile.dayOf(line);
  if (!spot || isNuisance(spot, trigger, day !== undefined)) return undefined;
  const typed = line.text.slice(spot.start, cursor);
  const above = line.content.record?.date ? undefined : day;
  const scene: Scene = { journal, line, entry: journal.entryAt(line), above, now, typed };
  const all = offered(spot, scene);
  // A fact stands off from its comma.
  const behindComma = line.text[spot.start - 1] === ',';
  const items = all.slice(0, MOST).map(item => (behindComma ? behindGap(item) : item));
  const { start, end } = spot;
  // What is offered changes with the digits that are typed.
  const incomplete = all.length >= MOST || isNumber(spot);
  return items.length === 0 ? undefined : { start, end, cursor, items, incomplete };
}

function offered(spot: Spot, scene: Scene): Suggestion[] {
  switch (spot.kind) {
    case 'start': return [...starts(spot, scene), ...(spot.alone ? severalLines(scene) : [])];
    case 'subject': return subjects(spot.keyword, scene);
    case 'plant': return plants(scene);
    case 'moment': return moments(spot, scene);
    case 'fact': return facts(spot, scene);
    case 'value': return values(spot, scene);
    case 'amount': return amounts(spot, scene).filter(({ label }) => fits(scene, label));
    case 'behind': return wordsBehind(spot, scene).filter(({ label }) => fits(scene, label));
  }
}

/** Where a number comes, or one is begun. */
function isNumber(spot: Spot): boolean {
  return spot.kind === 'amount' || (spot.kind === 'fact' && (spot.keyword === 'count' || spot.keyword === 'cut'));
}

/**
 * Below a `day` line most records have no date: whoever types a blank wants a comma next. Where the time of day counts,
 * it is offered all the same.
 */
function isNuisance(spot: Spot, trigger: Trigger, hasDay: boolean): boolean {
  return spot.kind === 'moment' && trigger === ' ' && hasDay && !isTimed(spot.keyword);
}

function behindGap(item: Suggestion): Suggestion {
  const write = item.write ?? [item.label];
  return { ...item, write: [' ', ...write], plain: ` ${item.plain ?? plainText(write)}` };
}
