import { everythingDue, type DueItem } from '../calendar/due.ts';
import type { Journal } from '../journal/journal.ts';
import type { Moment } from '../journal/moment.ts';

interface Kept extends Moment {
  readonly revision: number;
  readonly items: readonly DueItem[];
}

const kept = new WeakMap<Journal, Kept>();

/** All that is due, long ago too, worked out once for a revision of the journal and a minute, whoever asks. */
export function dueNow(journal: Journal, { day, minutes }: Moment): readonly DueItem[] {
  const { revision } = journal;
  const known = kept.get(journal);
  if (known?.revision === revision && known.day === day && known.minutes === minutes) return known.items;
  const items = everythingDue(journal, { day, minutes });
  kept.set(journal, { revision, day, minutes, items });
  return items;
}
