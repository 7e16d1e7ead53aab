import { isoOf } from '../model/day.ts';
import { daysText } from '../words/days.ts';
import { found, relatedTo, type SolutionCheck } from './check.ts';
import { drawSpan } from './draws.ts';

/** A stock used after its last good day. */
export const stockExpired: SolutionCheck = function* ({ id, entry: made, keeps }, _context, draws) {
  if (!keeps) return;
  for (const { entry } of draws) {
    if (!entry.moment || entry.moment.day <= keeps.until) continue;
    yield found(entry.line, 'stock-expired', drawSpan(entry, id),
      { stock: id, until: isoOf(keeps.until), origin: keeps.origin, days: daysText(entry.moment.day - keeps.until) },
      { related: [relatedTo(made, 'Made up here')] });
  }
};
