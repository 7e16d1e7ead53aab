import type { Journal } from '../../journal/journal.ts';
import type { Lot } from '../../journal/life.ts';
import type { Day } from '../../model/day.ts';

/** What is worked out of each lot for a day, lots in no order; kept until the lot or the day changes. */
export function lotMemo<Value>(work: (lot: Lot, day: Day) => Value): (journal: Journal, day: Day) => Value[] {
  const known = new WeakMap<Lot, { readonly day: Day; readonly value: Value }>();
  return (journal, day) => {
    const values: Value[] = [];
    for (const id of journal.ids()) {
      const lot = journal.lot(id);
      if (!lot) continue;
      let found = known.get(lot);
      if (found?.day !== day) known.set(lot, found = { day, value: work(lot, day) });
      values.push(found.value);
    }
    return values;
  };
}
