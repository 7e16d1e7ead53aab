/** What was counted in a batch beside germination. */
import { countsOf, denominator, type Batch, type Totals } from '../journal/life.ts';
import { countables } from '../model/record.ts';

const beside = countables.filter(what => what !== 'germinated');

/**
 * The totals that are not 0; undefined where all are.
 *
 * Example: 'emerged 5 · rotted 1'
 */
export function totalsText(totals: Totals): string | undefined {
  const found = beside.filter(what => totals[what] > 0).map(what => `${what} ${totals[what]}`);
  return found.length === 0 ? undefined : found.join(' · ');
}

/** The totals, and what is left in the soil or the bag: seed that neither germinated nor rotted. */
export function countedText(batch: Batch): string | undefined {
  if (countsOf(batch).length === 0) return undefined;
  const { totals, cut } = batch;
  const n = denominator(batch);
  const waiting = n === undefined ? undefined : n - totals.germinated - totals.rotted;
  const rest = cut || waiting === undefined || waiting < 0 ? undefined : `neither germinated nor rotted ${waiting}`;
  return [totalsText(totals), rest].filter(text => text !== undefined).join(' · ') || undefined;
}
