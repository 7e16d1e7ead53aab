import type { Journal } from '../journal/journal.ts';
import type { Lot } from '../journal/life.ts';
import { printQuantity, type Duration } from '../model/quantity.ts';
import { factOf } from '../model/record.ts';
import type { Due } from './due-sources.ts';
import { runningSoak, type RunningSoak } from './soaks.ts';
import type { Standing } from './standing.ts';

/** The end of the soak that a batch lies in; one without an end of its own ends at the limit. */
export function* soakDue(journal: Journal, lot: Lot, standing: Standing): Iterable<Due> {
  const running = runningSoak(journal, lot, standing);
  // A record written ahead takes the seed out, and is listed itself.
  if (!running || running.endAhead) return;
  const { batch, soak, end } = running;
  yield {
    kind: 'soak', id: batch.path, at: end, entry: soak.entry, since: soak.start, what: inWords(running, journal.limits.soak(lot.plant).value),
    ask: { keyword: 'lift', subject: batch.path, facts: undefined, timed: true },
  };
}

function inWords({ soak, endBy }: RunningSoak, limit: Duration): string {
  const liquid = soak.doses.flatMap(({ parts }) => parts.map(({ fact }) => fact.name.text)).join(', ');
  if (endBy === 'limit') return `lift out of ${liquid}: the limit of ${printQuantity(limit)}, no end is written`;
  const duration = factOf(soak.entry.record, 'duration')?.value;
  return `lift out of ${liquid}${endBy === 'duration' && duration ? ` after ${printQuantity(duration)}` : ''}`;
}
