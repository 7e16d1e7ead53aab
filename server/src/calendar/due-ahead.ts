import type { Journal } from '../journal/journal.ts';
import type { Lot } from '../journal/life.ts';
import { meaningOf } from '../model/events.ts';
import type { Due } from './due-sources.ts';
import type { Standing } from './standing.ts';

/** Records of dates to come: a plan that stands in the journal already. */
export function* aheadDue(_journal: Journal, _lot: Lot, { batch, ahead, closed }: Standing): Iterable<Due> {
  if (closed) return;
  for (const event of ahead) {
    const { entry, entry: { record: { keyword, facts } } } = event;
    if (!meaningOf(event).isPlan) continue;
    const written = facts[0] && entry.line.text.slice(facts[0].start).trim();
    yield {
      kind: 'ahead', id: batch.path, at: entry.moment, entry, since: entry.moment, ask: undefined,
      what: written === undefined ? keyword : `${keyword}: ${written}`,
    };
  }
}
