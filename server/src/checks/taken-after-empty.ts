import { goneNote } from '../calendar/emptied.ts';
import { isoOf } from '../model/day.ts';
import { found, relatedTo, type SolutionCheck } from './check.ts';
import { drawSpan } from './draws.ts';

/** Something taken from a bottle or a packet on a later day than a note says that it is gone. */
export const takenAfterEmpty: SolutionCheck = function* ({ id }, { journal, now }, draws) {
  const note = draws.length > 0 ? goneNote(id, journal, now) : undefined;
  if (!note) return;
  for (const { entry } of draws) {
    if (!entry.moment || entry.moment.day <= note.moment.day) continue;
    yield found(entry.line, 'taken-after-empty', drawSpan(entry, id),
      { stock: id, date: isoOf(entry.moment.day), emptied: isoOf(note.moment.day) },
      { related: [relatedTo(note, 'The note')] });
  }
};
