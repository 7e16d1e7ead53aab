import type { Journal } from '../journal/journal.ts';
import type { Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { printQuantity, type Duration } from '../model/quantity.ts';
import { factOf } from '../model/record.ts';
import type { Due } from './due-sources.ts';
import { openSoak, type RunningSoak } from './soaks.ts';
import type { Standing } from './standing.ts';

/**
 * The end of the soak that a batch lies in; one without an end of its own ends at the limit. Of one that lies too far
 * back to be lifted from, the record of its end is missing, which only the grower can tell.
 */
export function* soakDue(journal: Journal, lot: Lot, standing: Standing, now: Moment): Iterable<Due> {
  const running = openSoak(journal, lot, standing, now);
  // A record written ahead takes the seed out, and is listed itself.
  if (!running || running.endAhead) return;
  const { batch, soak, end } = running;
  yield {
    kind: 'soak', id: batch.path, at: end, entry: soak.entry, since: soak.start,
    what: inWords(running, journal.limits.soak(lot.plant).value, now),
    isEndMissing: running.isForgotten,
    ask: running.isForgotten ? undefined : { keyword: 'lift', subject: batch.path, facts: undefined, timed: true },
  };
}

function inWords({ soak, endBy, isForgotten }: RunningSoak, limit: Duration, now: Moment): string {
  const liquid = soak.doses.flatMap(({ parts }) => parts.map(({ fact }) => fact.name.text)).join(', ');
  if (isForgotten) {
    const begun = `it began ${now.day - soak.start.day} days ago`;
    return endBy === 'limit' ? `soak in ${liquid}: no end recorded; ${begun}` : `soak in ${liquid}: no lift recorded; ${begun}`;
  }
  if (endBy === 'limit') return `lift out of ${liquid}: the limit of ${printQuantity(limit)} is reached; no end recorded`;
  const duration = factOf(soak.entry.record, 'duration')?.value;
  return `lift out of ${liquid}${endBy === 'duration' && duration ? ` after ${printQuantity(duration)}` : ''}`;
}
