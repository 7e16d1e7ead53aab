/** Counts written as what is new, as totals, and back: the history stays the same. */
import type { Journal } from '../../journal/journal.ts';
import { countsOf, type Batch, type CountEvent } from '../../journal/life.ts';
import type { CountFact } from '../../model/record.ts';
import { placeOf } from '../place.ts';
import { oneALine, type Action, type ActionEdit } from './action.ts';

/**
 * Rewrites every count of a batch as totals so far (`=9 germinated`), or as what is new. Undefined where nothing would
 * change, or where a count cannot be read in full or falls: its numbers are not known well enough to be rewritten.
 */
export function rewriteCounts(batch: Batch, as: 'totals' | 'new', journal: Journal): Action | undefined {
  const counts = countsOf(batch);
  if (counts.some(({ entry }) => entry.line.content.problems.length > 0)) return undefined;
  const edits: ActionEdit[] = [];
  for (const event of counts) {
    for (const fact of event.counts) {
      if (fact.total === (as === 'totals')) continue;
      const edit = rewritten(event, fact, as);
      if (!edit) return undefined;
      edits.push(edit);
    }
  }
  if (edits.length === 0) return undefined;
  const title = `Write the counts of ${batch.path} as ${as === 'totals' ? 'totals so far (“=”)' : 'what is new'}`;
  return { title, edits: oneALine(edits, journal) };
}

/** The total is the one that came of the count: what emerged has germinated, whether that is written or not. */
function rewritten({ entry, before, after }: CountEvent, fact: CountFact, as: 'totals' | 'new'): ActionEdit | undefined {
  const number = as === 'totals' ? after[fact.what] : fact.n.value - before[fact.what];
  if (number < 0) return undefined;
  const place = placeOf(entry.line, { start: fact.start, end: fact.n.end });
  return { ...place, text: as === 'totals' ? `=${number}` : String(number) };
}
