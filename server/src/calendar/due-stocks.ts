import type { Journal } from '../journal/journal.ts';
import type { Moment } from '../journal/moment.ts';
import { isoOf } from '../model/day.ts';
import type { Due } from './due-sources.ts';
import { emptiedAt } from './emptied.ts';
import { hasCome } from './standing.ts';

/** The last good day of each stock that is not used up. Done when a note about it is dated on that day or later. */
export function* stocksDue(journal: Journal, now: Moment): Iterable<Due> {
  for (const solution of journal.solutions()) {
    const { id, entry, keeps } = solution;
    if (!keeps || !entry.moment || !hasCome(entry.moment, now)) continue;
    if (emptiedAt(solution, journal, now)) continue;
    const noted = journal.mentionsOf(id).some(({ record, moment }) =>
      record.keyword === 'note' && record.subject?.text === id && moment && moment.day >= keeps.until && hasCome(moment, now));
    if (noted) continue;
    yield {
      kind: 'stock', id, entry, since: entry.moment, at: { day: keeps.until, minutes: undefined },
      what: `${keeps.until < now.day ? 'was good' : 'good'} until ${isoOf(keeps.until)}; replace it ${keeps.until < now.day ? 'now' : 'then'}`,
      ask: { keyword: 'note', subject: id, facts: 'thrown away', timed: false },
    };
  }
}
