/** What a suggestion may need to know: the journal, the record as far as it is written, the day it is about. */
import type { Journal } from '../../journal/journal.ts';
import type { JournalLine } from '../../journal/journal-file.ts';
import type { Entry } from '../../journal/life.ts';
import type { Moment } from '../../journal/moment.ts';
import type { Day } from '../../model/day.ts';
import type { Fact, FactOfType, FactType, Span } from '../../model/record.ts';
import { lifeOf, plantOf, type Lived } from '../events.ts';

export interface Scene {
  readonly journal: Journal;
  readonly line: JournalLine;
  /** Undefined on a line that is no record yet. */
  readonly entry: Entry | undefined;
  /** The date that holds where none is written: that of the `day` line above. */
  readonly above: Day | undefined;
  readonly now: Moment;
  /** What stands between the start of what is being written and the cursor. */
  readonly typed: string;
}

/** The day that the record is about; the present one where it has no date yet. */
export function dayOfScene({ entry, above, now }: Pick<Scene, 'entry' | 'above' | 'now'>): Day {
  return entry?.moment?.day ?? above ?? now.day;
}

/** The batch that the record names. */
export function livedIn({ journal, entry }: Scene): Lived | undefined {
  return entry && lifeOf(journal, entry);
}

export function plantIn({ journal, entry }: Scene): string | undefined {
  return entry && plantOf(journal, entry);
}

/** The facts of the record but for that in a segment, which is being written. */
export function otherFacts({ entry }: Scene, segment: Span): readonly Fact[] {
  return entry?.record.facts.filter(({ start, end }) => end < segment.start || start > segment.end) ?? [];
}

/** Those of a type. */
export function othersOf<Type extends FactType>(scene: Scene, segment: Span, type: Type): FactOfType<Type>[] {
  return otherFacts(scene, segment).filter((fact): fact is FactOfType<Type> => fact.type === type);
}

/** Whether what is offered goes with what is typed: it begins so, or a word in it does. Case makes no difference. */
export function fits({ typed }: Pick<Scene, 'typed'>, text: string): boolean {
  return fitsLower(text.toLowerCase(), typed.trim().toLowerCase());
}

/** The same for texts in small letters. */
export function fitsLower(text: string, wanted: string): boolean {
  for (let at = text.indexOf(wanted); at >= 0; at = text.indexOf(wanted, at + 1)) {
    if (at === 0 || !/[\p{L}\p{N}]/u.test(text[at - 1]!)) return true;
  }
  return false;
}
