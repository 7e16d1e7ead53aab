import { goneNote } from '../calendar/emptied.ts';
import { isoOf } from '../model/day.ts';
import { isPositive } from '../solutions/amounts.ts';
import { isFound } from '../solutions/ledger.ts';
import { found, relatedTo, type SolutionCheck } from './check.ts';
import { doesTo, drawSpan } from './draws.ts';

/** Something taken from a bottle or a packet on a later day than a note says that it is gone. */
export const takenAfterEmpty: SolutionCheck = function* ({ id }, { journal, now }) {
  const account = journal.accountOf(id).filter(({ amount }) => !isFound(amount) || isPositive(amount.found));
  const note = account.length > 0 ? goneNote(id, journal, now) : undefined;
  if (!note) return;
  for (const { entry } of account) {
    if (!entry.moment || entry.moment.day <= note.moment.day) continue;
    yield found(entry.line, 'taken-after-empty', drawSpan(entry, id),
      { does: doesTo(entry), stock: id, date: isoOf(entry.moment.day), emptied: isoOf(note.moment.day) },
      { related: [relatedTo(note, 'The note')] });
  }
};
