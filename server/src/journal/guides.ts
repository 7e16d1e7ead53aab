/** What the grower's books say of plants: the `guide` records, found by a plant's name. */
import type { Duration } from '../model/quantity.ts';
import { plainName, plantKey } from '../model/plant.ts';
import { factOf, factsOf, type JournalRecord, type StageFact } from '../model/record.ts';
import type { JournalLine } from './journal-file.ts';

export interface Guide {
  readonly line: JournalLine;
  readonly record: JournalRecord;
  /** The plant or the genus, as written. */
  readonly plant: string;
  readonly soak: Duration | undefined;
  readonly stages: readonly StageFact[];
  readonly source: string | undefined;
}

export class Guides {
  readonly #byGenus = new Map<string, { readonly words: readonly string[]; readonly guide: Guide }[]>();

  /** `lines` hold the journal's `guide` records, in its order. */
  constructor(lines: readonly JournalLine[]) {
    for (const line of lines) {
      const { record } = line.content;
      if (!record?.subject) continue;
      const guide = {
        line, record, plant: record.subject.text, soak: factOf(record, 'duration')?.value,
        stages: factsOf(record, 'stage'), source: factOf(record, 'source')?.value.text,
      };
      const words = wordsOf(guide.plant);
      const same = this.#byGenus.get(words[0]!);
      if (same) same.push({ words, guide });
      else this.#byGenus.set(words[0]!, [{ words, guide }]);
    }
  }

  /**
   * Those that hold for a plant, the ones that name it most fully first, those for its genus last. A guide for a
   * species holds for its forms, not the other way round.
   */
  of(plant: string | undefined): Guide[] {
    const name = wordsOf(plant ?? '');
    const ofGenus = this.#byGenus.get(name[0]!) ?? [];
    const fitting = ofGenus.filter(({ words }) => words.every((word, n) => word === name[n]));
    return fitting.sort((a, b) => b.words.length - a.words.length).map(({ guide }) => guide);
  }
}

/** Example: genusOf('Veratrum  nigrum') is 'veratrum' */
export function genusOf(plant: string): string {
  return wordsOf(plant)[0]!;
}

/** Case, blanks, the sign of a hybrid genus and the two ways to shorten “subspecies” make no difference. */
function wordsOf(plant: string): string[] {
  return plantKey(plainName(plant)).split(' ');
}
