/** What stands on the label of a pot or a bag. */
import { inWalkingOrder } from '../../calendar/counting-round.ts';
import { slotOf } from '../../calendar/place-text.ts';
import { placeNow } from '../../calendar/places.ts';
import { isOpen, standingOf, type Standing } from '../../calendar/standing.ts';
import { staysOf } from '../../calendar/stays.ts';
import { treatmentText } from '../../words/treatment.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Lot } from '../../journal/life.ts';
import type { Moment } from '../../journal/moment.ts';
import { isoOf } from '../../model/day.ts';
import { isSaidIn } from '../agenda.ts';

export interface Label {
  readonly id: string;
  readonly plant: string | undefined;
  readonly treatment: string;
  /** Example: 'sown 2026-01-11' */
  readonly date: string | undefined;
  readonly place: string | undefined;
  /** The number of its slot, which is read from afar. */
  readonly slot: string | undefined;
}

export interface LabelOptions {
  readonly now: Moment;
  /** Lots, with all their open batches, and batches; without it all that is sown, soaked or in a stage. */
  readonly ids?: readonly string[];
  /** Lots that these files say something of; without it all. */
  readonly files?: readonly string[];
}

/** In the order in which one walks past the pots. */
export function labelsOf(journal: Journal, { now, ids, files }: LabelOptions): Label[] {
  const stops = [...journal.lots()].filter(({ id }) => isSaidIn(journal, id, files)).flatMap(lot => {
    const standings = [...lot.batches.values()].map(batch => standingOf(batch, now));
    const wanted = standings.filter(each => isWanted(each, lot, ids));
    const stays = wanted.length > 0 ? staysOf(lot) : [];
    return wanted.map(({ batch, past, sowing }) => {
      const place = placeNow(stays, batch.path, now);
      const treatment = treatmentText({ inherited: [], events: past }, now);
      const label = {
        id: batch.path, plant: lot.plant, treatment, date: dateText(lot, sowing?.moment.day), place,
        slot: place === undefined ? undefined : slotOf(place)?.slot,
      };
      return { batch, plant: lot.plant, place, line: '', label };
    });
  });
  const byBatch = new Map(stops.map(({ batch, label }) => [batch, label]));
  return inWalkingOrder(stops).map(({ batch }) => byBatch.get(batch)!);
}

function isWanted(standing: Standing, { id }: Lot, ids: readonly string[] | undefined): boolean {
  const { batch: { path }, past, sowing } = standing;
  if (ids?.includes(path) && path !== id) return true;
  if (!isOpen(standing)) return false;
  if (ids) return ids.includes(id);
  return sowing !== undefined || past.some(({ type }) => type === 'soak' || type === 'stage');
}

function dateText({ collected }: Lot, sown: number | undefined): string | undefined {
  if (sown !== undefined) return `sown ${isoOf(sown)}`;
  return collected && collected.first === collected.last ? `collected ${isoOf(collected.first)}` : undefined;
}
