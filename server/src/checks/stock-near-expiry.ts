import { ledger } from '../journal/draws.ts';
import { isoOf } from '../model/day.ts';
import { isPositive } from '../solutions/amounts.ts';
import { shelfLife } from '../solutions/expiry.ts';
import { daysText } from '../words/days.ts';
import { found, type SolutionCheck } from './check.ts';
import { subjectOf } from './spans.ts';

/** A stock that is good for a short time only, as long as something is left of it. */
export const stockNearExpiry: SolutionCheck = function* (solution, { journal, now }) {
  const { id, entry, keeps } = solution;
  if (!keeps || !entry.moment || entry.moment.day > now.day) return;
  const { state, daysLeft } = shelfLife(now.day, entry.moment.day, keeps.until);
  if (state !== 'near') return;
  const { left } = ledger(solution, journal.accountOf(id));
  if (left && !isPositive(left.most)) return;
  yield found(entry.line, 'stock-near-expiry', subjectOf(entry),
    { stock: id, until: isoOf(keeps.until), days: daysText(daysLeft), origin: keeps.origin });
};
