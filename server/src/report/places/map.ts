/** The map of what lies where now: bags, shelves and boxes with their slots, and what nobody wrote a place for. */
import { placesNow, type Lying } from '../../calendar/places.ts';
import { isOpen, standingOf, type Standing } from '../../calendar/standing.ts';
import type { Stay } from '../../calendar/stays.ts';
import { treatmentText } from '../../words/treatment.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Batch } from '../../journal/life.ts';
import type { Moment } from '../../journal/moment.ts';
import { isSaidIn } from '../agenda.ts';
import { contentHeld } from '../../words/held.ts';

export interface MapRow {
  /** As written; undefined for a place without a slot. */
  readonly slot: string | undefined;
  /** As written. */
  readonly place: string;
  /** The batch or the stock. */
  readonly id: string;
  readonly plant: string | undefined;
  /** What of the batch lies there: all of it, what was sown, what a sowing left over, or seedlings pricked out. */
  readonly part: Stay['part'];
  /** The same in words, where that is not all of it. */
  readonly what: string | undefined;
  /** What was done to the seed up to now, or what the stock holds. */
  readonly treatment: string;
  readonly since: Moment | undefined;
  readonly stay: Stay;
}

export interface MapContainer {
  /** As written; empty where only slots are named. */
  readonly name: string;
  readonly rows: readonly MapRow[];
}

export interface PlacesMap {
  /** Tells one journal from another where there are several. */
  readonly name: string | undefined;
  readonly now: Moment;
  readonly zone: string | undefined;
  readonly containers: readonly MapContainer[];
  /** Open batches in use of which the journal does not say where they lie. */
  readonly nowhere: readonly Batch[];
}

export interface MapOptions {
  readonly now: Moment;
  readonly name?: string;
  /** Lots and stocks that these files say something of; without it all. */
  readonly files?: readonly string[];
}

export function placesMap(journal: Journal, { now, name, files }: MapOptions): PlacesMap {
  const containers = placesNow(journal, now).map(container => ({
    name: container.name,
    rows: container.places.flatMap(({ slot, stays }) => stays
      .filter(({ id }) => isSaidIn(journal, id, files))
      .map(stay => rowOf(stay, slot, journal, now))),
  })).filter(({ rows }) => rows.length > 0);
  const placed = new Set(containers.flatMap(({ rows }) => rows.map(({ id }) => id)));
  return { name, now, zone: journal.zone, containers, nowhere: nowhereIn(journal, placed, now, files) };
}

function rowOf(stay: Lying, slot: string | undefined, journal: Journal, now: Moment): MapRow {
  const { id, plant, batch, place, part, what, from } = stay;
  // What is written ahead was not done to the seed yet.
  const treatment = batch
    ? treatmentText({ inherited: [], events: standingOf(batch, now).past }, now) : liquidText(journal, id);
  const since = from && Number.isFinite(from.day) ? from : undefined;
  return { slot, place, id, plant, part, what, treatment, since, stay };
}

function liquidText(journal: Journal, id: string): string {
  const solution = journal.solution(id);
  return solution?.agent ? contentHeld(solution, journal) : 'solution';
}

function nowhereIn(
  journal: Journal, placed: ReadonlySet<string>, now: Moment, files: readonly string[] | undefined,
): Batch[] {
  return [...journal.lots()]
    .filter(({ id }) => isSaidIn(journal, id, files))
    .flatMap(({ batches }) => [...batches.values()])
    .filter(batch => !placed.has(batch.path) && isInUse(standingOf(batch, now)));
}

function isInUse(standing: Standing): boolean {
  const { past, sowing } = standing;
  return isOpen(standing) && (sowing !== undefined || past.some(({ type }) => type === 'soak' || type === 'stage'));
}
