import type { Journal } from '../journal/journal.ts';
import type { Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { isoOf } from '../model/day.ts';
import { stageFacts, stageName, type Ask } from './ask.ts';
import type { Due } from './due-sources.ts';
import { endingOf, type Ending } from './endings.ts';
import { isAwaited, isCountedWet, isLook } from './looks.ts';
import { isOpen, type Standing } from './standing.ts';

/**
 * The end of the stage that a batch is in, where its time span is known. It asks for the next stage of the regime;
 * without one, for the warm after the cold, or for the sowing where the seed has yet to be sown: but not where it was
 * counted unsown, for a sowing would begin its days anew, after what was counted. After the last stage
 * it asks for a count, and is done when the batch was looked at from that day on. Otherwise a count does not move the
 * seed: the end is owed until a record says where it went on, or until nothing more is to come up.
 */
export function* stageDue(_journal: Journal, _lot: Lot, standing: Standing, now: Moment): Iterable<Due> {
  if (!isOpen(standing) || !isAwaited(standing)) return;
  // A stage or a sowing written ahead is what comes next, and is listed itself.
  if (standing.ahead.some(({ type }) => type === 'stage' || type === 'sow')) return;
  const ending = endingOf(standing, now);
  if (!ending) return;
  const ask = askFor(ending, standing);
  if (ask.keyword === 'count' && standing.past.some(event => isLook(event) && event.entry.moment.day >= ending.end)) return;
  yield {
    kind: 'stage', id: standing.batch.path, at: { day: ending.end, minutes: undefined },
    entry: ending.entry, since: ending.entry.moment, what: inWords(ending), ask,
  };
}

function askFor({ stage, next }: Ending, standing: Standing): Ask {
  const ask = { keyword: 'count', subject: standing.batch.path, facts: '', timed: false } as const;
  if (next) return { ...ask, keyword: next.stage, facts: stageFacts(next.temperature, next.duration) };
  if (stage === 'warm') return ask;
  return { ...ask, keyword: standing.sowing || isCountedWet(standing) ? 'warm' : 'sow', facts: undefined };
}

function inWords({ next, regime, moved, ...stage }: Ending): string {
  const of = regime === undefined ? '' : ` (regime ${regime})`;
  const to = moved ? `; moved on ${isoOf(moved.moment.day)}` : '';
  return next ? `${stageName(stage)} ends, ${stageName(next)} comes next${of}${to}` : `${stageName(stage)} ends${of}${to}`;
}
