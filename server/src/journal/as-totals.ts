/** Counts that read like totals so far, though they are written as what is new. */
import { accounted, countsOf, hasTotal, type Batch, type CountEvent } from './life.ts';

/** Counts that never fall, from which on they look like totals. Common practice, no source. */
const RISING = 3;
/** The least share of the seed that they must come to as new numbers. Common practice, no source. */
const MOST_OF_IT = 2 / 3;

/** What a count says of germinated seed. */
export function germinatedBy({ counts }: CountEvent): number {
  return counts.find(({ what }) => what === 'germinated')?.n.value ?? 0;
}

/**
 * The last count of a batch, where all are of germinated seed alone, rise, and come to most of the seed; undefined
 * where they do not read like totals. More than there is is another error.
 */
export function lastOfTotals(batch: Batch): CountEvent | undefined {
  const counts = countsOf(batch);
  const last = counts.at(-1);
  const { tested } = batch;
  if (!last || tested === undefined || counts.some(hasTotal) || accounted(last.after) > tested) return undefined;
  const ofGerminated = counts.filter(({ counts: facts }) => facts.some(({ what }) => what === 'germinated'));
  const numbers = ofGerminated.map(germinatedBy);
  const found = numbers.filter(n => n > 0);
  const isRising = numbers.every((n, i) => i === 0 || n >= numbers[i - 1]!);
  if (found.length < RISING || !isRising || new Set(found).size < 3) return undefined;
  return last.after.germinated >= MOST_OF_IT * tested ? last : undefined;
}
