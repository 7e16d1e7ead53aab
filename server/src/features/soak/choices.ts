/** What can be chosen from when several batches are to be soaked alike. */
import type { Journal } from '../../journal/journal.ts';
import type { DatedEntry } from '../../journal/life.ts';
import type { Moment } from '../../journal/moment.ts';
import { printQuantity } from '../../model/quantity.ts';
import { factOf } from '../../model/record.ts';
import { stocks } from '../completion/substances.ts';
import { batchesToSoak } from '../completion/subjects.ts';

export const WATER = 'water';

interface Choice {
  readonly id: string;
  /** What there is to know of it, in words. */
  readonly text: string;
}

export interface Liquid extends Choice {
  readonly kind: 'stock' | 'water';
  /** Whether its strength is known, so that it can be diluted. */
  readonly isKnown: boolean;
}

export interface SoakChoices {
  /** Open batches that are in no soak: dry seed of the lot in hand first, then the likeliest. */
  readonly batches: readonly Choice[];
  /** Bottles that something is left of, then water. */
  readonly liquids: readonly Liquid[];
  /** How long the last soak was to be, as the journal has it: '24 h'. Undefined where no soak says. */
  readonly long: string | undefined;
}

export function soakChoices(journal: Journal, now: Moment, lot: string | undefined): SoakChoices {
  const bottles = stocks({ journal, now, entry: undefined, above: undefined, typed: '' }, 'dilute');
  return {
    batches: batchesToSoak(journal, now, lot).map(({ label, detail = '' }): Choice => ({ id: label, text: detail })),
    liquids: [
      ...bottles.map(({ label, detail = '' }): Liquid => (
        { id: label, text: detail, kind: 'stock', isKnown: journal.solution(label)?.ppm.ok === true })),
      { id: WATER, text: '', kind: 'water', isKnown: false },
    ],
    long: lastLong(journal),
  };
}

function lastLong(journal: Journal): string | undefined {
  let last: DatedEntry | undefined;
  for (const { batches } of journal.lots()) {
    for (const { soaks } of batches.values()) {
      for (const { entry } of soaks) {
        if (factOf(entry.record, 'duration') && (!last || entry.moment.day >= last.moment.day)) last = entry;
      }
    }
  }
  const fact = last && factOf(last.record, 'duration');
  return fact && printQuantity(fact.value);
}
