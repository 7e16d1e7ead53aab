/** Numbers of seeds and seedlings that cannot be right, whatever else is known of them. */
import type { Countable, CountFact } from '../model/record.ts';
import { otherwise } from './estimates.ts';
import { hasTotal, type CountEvent, type LeaveEvent, type SowEvent, type SplitEvent } from './life.ts';

const qualities = ['died', 'leggy', 'abnormal', 'stuck', 'freed'] as const;
const laterStages = ['emerged', 'leaf'] as const;

/** Totals with `=` that are lower than what was counted before. */
export function* fallingTotals({ counts, before }: CountEvent): Iterable<{ fact: CountFact; before: number }> {
  for (const fact of counts) {
    const known = before[fact.what];
    if (fact.total && fact.n.value < known) yield { fact, before: known };
  }
}

interface TooMany {
  readonly what: Countable;
  readonly n: number;
  readonly germinated: number;
}

/** More seedlings of one kind than have germinated; said of the count that made it so. */
export function* tooManySeedlings(count: CountEvent): Iterable<TooMany> {
  if (!mayBeTooMany(count)) return;
  const { counts, before, after } = count;
  for (const what of qualities) {
    const n = after[what];
    if (n > after.germinated && n !== before[what]) yield { what, n, germinated: after.germinated };
  }
  // A total in the same record is not raised by what the later stages imply: the two contradict each other.
  const stated = counts.find(({ what, total }) => what === 'germinated' && total);
  const later = stated && laterStages.find(what => after[what] > stated.n.value);
  if (later) yield { what: later, n: after[later], germinated: stated.n.value };
}

/** A glance that spares most counts the rest. */
function mayBeTooMany(count: CountEvent): boolean {
  return hasTotal(count) || qualities.some(what => count.after[what] > count.after.germinated);
}

type Giving = SplitEvent | LeaveEvent;

/**
 * A record that gives out more seeds than there are, as the ends of all estimates have it the least wrong; undefined
 * where it may be right.
 */
export function givenTooMany(event: Giving): (Giving & { readonly left: number }) | undefined {
  const cases = [event, ...otherwise(event.batch, event)];
  const sums = cases.filter(isKnown);
  // Where seeds were estimated, the life as it was read does not know them.
  if (event.closedBy || sums.length < Math.max(1, cases.length - 1)) return undefined;
  if (sums.some(({ asked, left }) => asked <= left)) return undefined;
  return sums.reduce((a, b) => (b.asked - b.left < a.asked - a.left ? b : a));
}

function isKnown(event: Giving): event is Giving & { readonly left: number } {
  return event.left !== undefined && event.batch.seeds !== undefined;
}

/** More seeds are sown than are there. Seed that is sown again after another treatment is the same seed. */
export function isSownTooMany({ batch, asked, available, closedBy }: SowEvent): boolean {
  if (available === undefined || batch.unread || closedBy) return false;
  return asked === undefined ? available <= 0 : asked > available;
}
