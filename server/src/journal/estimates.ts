/**
 * Seeds that nobody counted. The life of a lot is read with such numbers unknown, so that nothing takes a guess for a
 * count; and it is read again as it would be with the least and with the most of each, which gives the range of
 * everything that hangs on them.
 */
import type { SeedRange } from '../model/estimate.ts';
import type { HowMany } from '../model/record.ts';
import type { Batch, BatchEvent, CountEvent, CutEvent, Entry, LeaveEvent, SplitEvent } from './life.ts';

export type Bound = keyof SeedRange;

/**
 * Which end is taken for the numbers of batches, by how deep they are divided. What is given out of a batch is no
 * longer in it, so a batch has the least of seed where its own number is least and those of its parts are most.
 */
export interface World {
  readonly even: Bound;
  readonly odd: Bound;
}

export const worlds: readonly World[] = (['least', 'most'] as const)
  .flatMap(even => (['least', 'most'] as const).map(odd => ({ even, odd })));

/** The end that is taken for the number of a batch; undefined where no estimate counts. */
export function boundIn(world: World | undefined, path: string): Bound | undefined {
  const depth = path.split('/').length - 1;
  return world && (depth % 2 === 0 ? world.even : world.odd);
}

/** The end for what leaves a batch: least stays of it where most has left. */
export function opposite(bound: Bound | undefined): Bound | undefined {
  return bound && (bound === 'least' ? 'most' : 'least');
}

/** The number, or that end of an estimate; undefined where neither is to be had. */
export function amountIn({ n, estimate }: HowMany, bound: Bound | undefined): number | undefined {
  if (n) return n.value;
  return bound && estimate && estimate.value.kind !== 'half' ? estimate.value[bound] : undefined;
}

export function hasEstimate(entries: readonly Entry[]): boolean {
  return entries.some(({ record: { facts } }) => (
    facts.some(fact => (fact.type === 'seeds' || fact.type === 'part') && fact.estimate !== undefined)));
}

/** What a number of a batch lies within; undefined where it is not known. One that is known is a range of itself. */
export function rangeOf(batch: Batch, what: 'seeds' | 'kept' | 'sown' | 'tested'): SeedRange | undefined {
  return rangeOver([batch, ...batch.worlds], each => each[what]);
}

/** The same of the seeds that a count, or a cut test, was of, or that were tested still once some had left. */
export function testedAt(batch: Batch, event: CountEvent | CutEvent | SplitEvent | LeaveEvent): SeedRange | undefined {
  return rangeOver([event, ...otherwise(batch, event)], ({ tested }) => tested);
}

/** An event as it would be with the ends of the estimates; none where nothing in its lot is estimated. */
export function otherwise<Event extends BatchEvent>(batch: Batch, { entry: { line }, type }: Event): Event[] {
  return batch.worlds.flatMap(({ events }) => (
    events.find((each): each is Event => each.entry.line === line && each.type === type) ?? []));
}

/** The first is as it was read, the others as they would be. */
export function rangeOver<Of>(all: readonly Of[], numberOf: (each: Of) => number | undefined): SeedRange | undefined {
  const [own, ...others] = all.map(numberOf);
  if (own !== undefined) return { least: own, most: own };
  const known = others.flatMap(number => number ?? []);
  return others.length > 0 && known.length === others.length
    ? { least: Math.min(...known), most: Math.max(...known) } : undefined;
}
