/** What is written of a batch after its end, and whether the cut test at its end adds up. */
import type { SeedRange } from '../model/estimate.ts';
import { meaningOf } from '../model/events.ts';
import { cutClasses, type Countable } from '../model/record.ts';
import { otherwise, rangeOver, testedAt } from './estimates.ts';
import type { Batch, BatchEvent, CutEvent } from './life.ts';

interface AfterClose {
  readonly event: BatchEvent;
  readonly closedBy: BatchEvent;
}

/** Something is done to seed that was thrown away or cut open. Of the seedlings of a cut batch there is more to say. */
export function* afterItsClose({ events }: Batch): Iterable<AfterClose> {
  for (const event of events) {
    const { closedBy } = event;
    if (!closedBy || meaningOf(event).isRemark || event.type === 'misplaced') continue;
    if (closedBy.type === 'cut' && isOfSeedlings(event)) continue;
    yield { event, closedBy };
  }
}

const ofSeed: readonly Countable[] = ['germinated', 'rotted', 'lost'];

/** Whether a record can be about seedlings alone, which a cut test of the seed leaves alive. */
function isOfSeedlings(event: BatchEvent): boolean {
  const { about } = meaningOf(event);
  if (about !== 'both') return about !== 'seed';
  return event.type !== 'count' || ofSeed.every(what => event.after[what] === event.before[what]);
}

/** A cut test that sorts more or fewer seeds than had neither germinated nor rotted nor been lost. */
interface WrongCut {
  readonly event: CutEvent;
  readonly sum: number;
  readonly tested: SeedRange;
  readonly expected: SeedRange;
}

/**
 * Cut tests that no number of its seeds makes right. A second one comes after the close, and what cannot be read may be
 * what is missing.
 */
export function* wrongCuts(batch: Batch): Iterable<WrongCut> {
  for (const event of batch.events) {
    if (event.type !== 'cut' || event.closedBy || batch.unread) continue;
    const expected = rangeOver([event, ...otherwise(batch, event)], each => each.expected);
    const tested = testedAt(batch, event);
    if (!expected || !tested) continue;
    const sum = cutClasses.reduce((total, what) => total + event.classes[what], 0);
    if (sum < expected.least || sum > expected.most) yield { event, sum, tested, expected };
  }
}
