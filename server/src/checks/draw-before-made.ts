import { isBefore } from '../journal/moment.ts';
import { isoOf } from '../model/day.ts';
import { found, relatedTo, type SolutionCheck } from './check.ts';
import { doesTo, drawSpan } from './draws.ts';

/** Something taken from a stock, or measured of it, before there was any. */
export const drawBeforeMade: SolutionCheck = function* ({ id, form, entry: made }, { journal }) {
  if (!made.moment) return;
  for (const { entry } of journal.accountOf(id)) {
    if (!entry.moment || !isBefore(entry.moment, made.moment)) continue;
    yield found(entry.line, 'draw-before-made', drawSpan(entry, id),
      { does: doesTo(entry), stock: id, date: isoOf(entry.moment.day), made: isoOf(made.moment.day), what: form === 'powder' ? 'the packet is dated' : 'it was made up' },
      { related: [relatedTo(made, form === 'powder' ? 'The packet' : 'Made up here')] });
  }
};
