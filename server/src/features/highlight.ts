/** The other places in one file where the thing at a position is named. */
import type { Journal } from '../journal/journal.ts';
import type { Position } from '../text/line-store.ts';
import { isNamed, occurrencesOf, type Occurrence } from './occurrences.ts';
import { thingAt } from './thing.ts';

export function highlightsAt(journal: Journal, file: string, position: Position): Occurrence[] {
  const thing = thingAt(journal, file, position);
  return thing && isNamed(thing) ? occurrencesOf(journal, thing).filter(({ place }) => place.file === file) : [];
}
