/** Where seed lay, and how long it was wet: what a careful reader asks of two sides beside their treatment. */
import { SAME_SOWING_DAYS } from '../calendar/together.ts';
import type { Batch, BatchEvent } from '../journal/life.ts';
import { meaningOf } from '../model/events.ts';
import { factOf } from '../model/record.ts';
import type { Range } from './alike.ts';
import { areAsWarm, warmthIn, type Warmth } from './warmth.ts';

/** What holds seed says nothing of how warm or light it is there, and neither does a number. */
const VESSELS = /\b(?:bag|jar|tray|pot|dish|slot|box|row|cell|module|plug|pan|tin|envelope|vial|no)s?\b|[\d.#/-]+/giu;

/** Nor does whether a shelf is the upper or the lower one: it has no more than a number to tell it by. */
const WHICH = /(?:\b(?:upper|lower|top|middle|bottom|left|right|front|back)\b\s*)+(?=(?:shel(?:f|ves)|drawers?|racks?)\b)/giu;

/**
 * A place without its vessel and without what tells one shelf or number from the next.
 *
 * Example: roomOf('heated mat tray 4') is 'heated mat'; of 'tray 4' and 'bag 3 slot 1' it is undefined
 */
export function roomOf(place: string): string | undefined {
  const room = place.toLowerCase().replace(/["“”]/g, '').replace(VESSELS, ' ').replace(WHICH, ' ').replace(/\s+/g, ' ').trim();
  return room.length > 0 ? room : undefined;
}

/** A time in one room, as warm as one record says. */
export interface Spell {
  /** Undefined where no place is written, or only a vessel. */
  readonly room: string | undefined;
  readonly warmth: Warmth | undefined;
  /** The day from day 0 on which it began; it lasts until the next. */
  readonly day: number;
  /** A `move` brought it there. */
  readonly isMoved: boolean;
}

/** Where seed lay, in the order of time; the vessel of a soak is no room. */
export function spellsOf(life: readonly BatchEvent[], dayZero: number): readonly Spell[] {
  const spells: Spell[] = [];
  let isUp = false;
  for (const event of life) {
    if (event.type === 'count') isUp = event.after.germinated > 0;
    const { entry: { record, moment } } = event;
    const at = factOf(record, 'at')?.value.text;
    const room = at === undefined ? undefined : roomOf(at);
    const warmth = warmthIn(record);
    const day = moment.day - dayZero;
    const last = spells.at(-1);
    const { place } = meaningOf(event);
    if (place === 'sowing') spells.push({ room, warmth, day, isMoved: false });
    // Without a place it goes on where it was.
    if (place === 'stage') spells.push({ room, isMoved: false, ...(at === undefined && last), warmth, day });
    // What is pricked out has germinated, and the seed stays where it was; before any has, the pot is moved as it is.
    const isPotMoved = place === 'pot' && !isUp && !factOf(record, 'seedlings');
    if ((place === 'move' || isPotMoved) && at !== undefined) {
      const isThere = room !== undefined && room === last?.room;
      // A temperature is that of the room where it was measured.
      spells.push({ room, warmth: isThere ? last.warmth : undefined, day, isMoved: true });
    }
  }
  return spells;
}

/** How the rooms of two sides differ by an age in days from day 0. */
export interface RoomsApart {
  /** In words; undefined where they are the same. */
  readonly apart: string | undefined;
  /** The same warmth was written for both while they were apart. */
  readonly isAsWarm: boolean;
  /** The room of one side only is known for a time. */
  readonly isUnwritten: boolean;
}

/**
 * Compares the rooms of two sides day by day. A time apart that had begun by the age counts as a whole: seed that is
 * moved a day after the other was not kept otherwise, seed that never follows was.
 */
export function roomsApart(a: readonly Spell[], b: readonly Spell[], age: number): RoomsApart {
  const begun = [...a.map(spell => ({ spell, isFirst: true })), ...b.map(spell => ({ spell, isFirst: false }))]
    .sort((p, q) => p.spell.day - q.spell.day);
  let [x, y]: (Spell | undefined)[] = [];
  let [apart, unwritten, isAsWarm, hasBegun] = [0, 0, true, false];
  for (const [i, { spell, isFirst }] of begun.entries()) {
    if (isFirst) x = spell;
    else y = spell;
    const { day } = spell;
    const length = (begun[i + 1]?.spell.day ?? Infinity) - day;
    if (length === 0) continue;
    hasBegun = x !== undefined && x.room !== y?.room && (hasBegun || day < age);
    if (!hasBegun || !x || !y) continue;
    const [known, other] = x.room === undefined ? [y, x] : [x, y];
    // Wherever the other lies, it was not brought there.
    if (other.room === undefined && (!known.isMoved || other.isMoved)) unwritten += length;
    else {
      apart += length;
      isAsWarm &&= day >= age || areAsWarm(x.warmth, y.warmth);
    }
  }
  const text = apart > SAME_SOWING_DAYS ? roomsText(a, b, age) : undefined;
  return { apart: text, isAsWarm, isUnwritten: unwritten > SAME_SOWING_DAYS };
}

/** With days where the words alone would be the same. */
function roomsText(a: readonly Spell[], b: readonly Spell[], age: number): string {
  const [first, second] = [a, b].map(spells => roomsBy(spells, age));
  const [x, y] = [first!, second!].map(rooms => rooms.map(({ room }) => room).join(', then '));
  if (x !== y) return `${x!} against ${y!}`;
  const [from, to] = [first!, second!].map(rooms => rooms
    .map(({ room, day }, i) => (i === 0 ? room : `from day ${day} ${room}`)).join(', then '));
  return `${from!}, against ${to!}`;
}

/** One after the other, without those left on the day. */
function roomsBy(spells: readonly Spell[], age: number): { readonly room: string; readonly day: number }[] {
  return spells
    .filter(({ day }, i) => day < age && spells[i + 1]?.day !== day)
    .map(({ room = 'unknown', day }) => ({ room, day }))
    .filter(({ room }, i, all) => all[i - 1]?.room !== room);
}

/** Minutes in all of its soaks together; undefined where the length of one is not known, or where it had none. */
export function minutesWet(soaks: Batch['soaks']): Range | undefined {
  if (soaks.length === 0) return undefined;
  const all = { least: 0, most: 0 };
  for (const { length, endedBy } of soaks) {
    if (!length || endedBy === 'next') return undefined;
    all.least += length.least;
    all.most += length.most;
  }
  return all;
}
