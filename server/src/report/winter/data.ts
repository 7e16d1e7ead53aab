/** A winter in review as plain data for other programs; syntaxes/json.md describes the shape. */
import { isoMoment } from '../../calendar/ask.ts';
import { treatmentText } from '../../words/treatment.ts';
import { groupLabel } from '../../words/trials.ts';
import { rangeOf } from '../../journal/estimates.ts';
import { isoOf } from '../../model/day.ts';
import type { SeedRange } from '../../model/estimate.ts';
import type { Contest } from '../../trials/lot-trial.ts';
import type { Group } from '../../trials/groups.ts';
import type { LotReview, Packet, Waiting, WinterReview } from './review.ts';

/** Version of the shape; it grows when something in it changes its meaning or goes, not when something comes. */
export const WINTER_SHAPE = 1;

export function winterData({ winter, now, lots, waiting, earlier, forgotten, packets, others }: WinterReview): object {
  return {
    now: isoMoment(now),
    winter: { name: winter.name, first: isoOf(winter.first), last: isoOf(winter.last) },
    lots: lots.map(lotData),
    waiting: waiting.map(waitingData), waitingFromEarlier: earlier.map(waitingData),
    forgotten,
    left: packets.map(packetData), leftOfOthers: others.map(packetData),
  };
}

function lotData({ lot, batches, contests, ready, errors }: LotReview): object {
  return {
    id: lot.id, plant: lot.plant ?? null, errors,
    batches: batches.map(batch => (
      { batch: batch.path, ...numbersData({ seeds: rangeOf(batch, 'tested') }), treatment: treatmentText(batch) })),
    contests: contests.map(contestData),
    ready: ready ? {
      batches: pathsOf(ready.group), germinated: ready.readiness.x, of: ready.readiness.n,
      interval: ready.readiness.interval, halfByDay: ready.readiness.halfBy,
    } : null,
  };
}

function contestData({ treated, untreated, verdict: { verdict, rule, sentence } }: Contest): object {
  return {
    treatment: groupLabel(treated), treated: pathsOf(treated), untreated: untreated ? pathsOf(untreated) : null,
    verdict, rule, sentence,
  };
}

function pathsOf({ batches }: Group): string[] {
  return batches.map(({ batch }) => batch.path);
}

function waitingData({ lot, batch, begun, seeds }: Waiting): object {
  return { batch: batch.path, plant: lot.plant ?? null, since: isoOf(begun), ...numbersData({ seeds }) };
}

function packetData({ lot, unsown, waiting, contests }: Packet): object {
  return {
    id: lot.id, plant: lot.plant ?? null, ...numbersData({ notSown: unsown, waiting }),
    verdicts: [...new Set(contests.map(({ verdict }) => verdict.verdict))],
  };
}

/** Numbers that are known; of those that were estimated null, and the range beside them. */
function numbersData(ranges: Readonly<Record<string, SeedRange | undefined>>): object {
  const all = Object.entries(ranges);
  const guessed = all.filter(([, range]) => range && range.least !== range.most);
  return {
    ...Object.fromEntries(all.map(([name, range]) => [name, range && range.least === range.most ? range.least : null])),
    ...(guessed.length > 0 && { estimated: Object.fromEntries(guessed) }),
  };
}
