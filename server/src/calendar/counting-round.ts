/** Count what is there to count: a line for each open batch, ready for its numbers. */
import type { Journal } from '../journal/journal.ts';
import type { Batch, Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { isLeftOff } from './left-off.ts';
import { isCounted, isLeftInCold } from './looks.ts';
import { order, whereSeedNow, whereText } from './places.ts';
import { standingOf, type Standing } from './standing.ts';
import { staysOf } from './stays.ts';

export interface RoundStop {
  readonly batch: Batch;
  readonly plant: string | undefined;
  /** As written, several with “and” between them; undefined where the journal does not say where it lies. */
  readonly place: string | undefined;
  /** The record but for its numbers, to stand below a `day` line: `count VER-24/A, `. */
  readonly line: string;
}

/**
 * The batches that can still change, in the order in which one walks past them: by place, then by id; those of unknown
 * place at the end. What has been counted today is left out, and so is what has a line of today
 * that is still to be filled in, and what was left off.
 */
export function countingRound(journal: Journal, now: Moment): RoundStop[] {
  return inWalkingOrder([...journal.lots()].flatMap(lot => stopsOf(lot, now)));
}

/** The same of unsown seed in the cold, of which no count is due because nobody counted it yet. */
export function roundInCold(journal: Journal, now: Moment): RoundStop[] {
  return inWalkingOrder([...journal.lots()].flatMap(lot => stopsOf(lot, now, inCold)));
}

/** What neither round has because it was left off; only for who asks for it. */
export function roundLeftOff(journal: Journal, now: Moment): RoundStop[] {
  return inWalkingOrder([...journal.lots()].flatMap(lot => stopsOf(lot, now, leftOff)));
}

type IsStop = (standing: Standing, now: Moment) => boolean;

const lookedAfter: IsStop = (standing, now) => isCounted(standing) && !isLeftOff(standing, now);
const inCold: IsStop = (standing, now) => isLeftInCold(standing) && !isLeftOff(standing, now);
const leftOff: IsStop = (standing, now) => (isCounted(standing) || isLeftInCold(standing)) && isLeftOff(standing, now);

/** The batches of one lot, in no order. */
export function stopsOf(lot: Lot, now: Moment, isStop = lookedAfter): RoundStop[] {
  const open = [...lot.batches.values()].map(batch => standingOf(batch, now))
    .filter(standing => isStop(standing, now) && !standing.past.some(({ type, entry }) => (type === 'count' || type === 'blank') && entry.moment.day === now.day));
  const stays = open.length > 0 ? staysOf(lot) : [];
  return open.map(({ batch }) => ({
    batch, plant: lot.plant, place: whereText(whereSeedNow(stays, batch.path, now)), line: `count ${batch.path}, `,
  }));
}

export function inWalkingOrder(stops: readonly RoundStop[]): RoundStop[] {
  return stops.toSorted((a, b) =>
    Number(a.place === undefined) - Number(b.place === undefined)
    || order().compare(a.place?.toLowerCase() ?? '', b.place?.toLowerCase() ?? '') || order().compare(a.batch.path, b.batch.path));
}
