/** The batch that a place is about: what is offered on a batch is offered wherever it is named. */
import type { Journal } from '../journal/journal.ts';
import type { Position } from '../text/line-store.ts';
import { thingAt } from './thing.ts';

/**
 * The path of the batch whose name, or whose seeds, the position is in; of a lot its id. Undefined elsewhere on a line.
 *
 * Example: 'VER-24/A' anywhere in the name of `count VER-24/A, 3` and on `3`; on `A 24 seeds` of `split VER-24` too
 */
export function batchPathAt(journal: Journal, file: string, position: Position): string | undefined {
  const thing = thingAt(journal, file, position);
  const subject = thing?.entry.record.subject;
  switch (thing?.kind) {
    case 'lot': case 'batch':
      // In the name that the record is about, each part of it means all of it.
      if (thing.place.start === subject?.start) return subject.text;
      return 'path' in thing ? thing.path : thing.id;
    case 'count': return subject?.text;
    case 'fact': return thing.fact.type === 'part' && subject ? `${subject.text}/${thing.fact.name.text}` : undefined;
    default: return undefined;
  }
}
