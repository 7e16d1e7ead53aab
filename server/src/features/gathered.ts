/** What is worked out of all that a journal names, kept up to date with it: an edit costs what it touches. */
import type { Journal } from '../journal/journal.ts';
import type { Lot } from '../journal/life.ts';
import type { Touched } from '../journal/touched.ts';
import type { Day } from '../model/day.ts';

export interface Gathering<Part, Whole> {
  readonly begin: () => Whole;
  /** What an id adds; undefined where it adds nothing. */
  readonly part: (id: string, journal: Journal, day: Day) => Part | undefined;
  readonly add: (whole: Whole, part: Part, id: string) => void;
  readonly take: (whole: Whole, part: Part, id: string) => void;
}

/** The day of what does not change with the day. */
export const EVER: Day = 0;

interface State<Part, Whole> {
  readonly touched: () => Touched;
  day: Day | undefined;
  readonly parts: Map<string, Part>;
  whole: Whole;
}

/** The whole of a journal on a day. Nobody but the gathering may change it. */
export function gathered<Part, Whole>(
  { begin, part, add, take }: Gathering<Part, Whole>,
): (journal: Journal, day: Day) => Whole {
  const known = new WeakMap<Journal, State<Part, Whole>>();

  function follow(state: State<Part, Whole>, id: string, journal: Journal, day: Day): void {
    const before = state.parts.get(id);
    if (before !== undefined) take(state.whole, before, id);
    const after = part(id, journal, day);
    if (after === undefined) state.parts.delete(id);
    else {
      state.parts.set(id, after);
      add(state.whole, after, id);
    }
  }

  return (journal, day) => {
    let state = known.get(journal);
    if (!state) known.set(journal, state = { touched: journal.follow(), day, parts: new Map(), whole: begin() });
    const { all, ids } = state.touched();
    const isNew = all || state.day !== day;
    if (isNew) {
      state.day = day;
      state.parts.clear();
      state.whole = begin();
    }
    for (const id of isNew ? journal.ids() : ids) follow(state, id, journal, day);
    return state.whole;
  };
}

/** What is worked out of a lot for a day, kept until one of them changes. */
export function lotMemo<Value>(work: (lot: Lot, day: Day) => Value): (lot: Lot, day: Day) => Value {
  const known = new WeakMap<Lot, { readonly day: Day; readonly value: Value }>();
  return (lot, day) => {
    let found = known.get(lot);
    if (found?.day !== day) known.set(lot, found = { day, value: work(lot, day) });
    return found.value;
  };
}

type PartOf<Item> = (id: string, journal: Journal, day: Day) => readonly Item[];

/** All items in no order. */
export function allOf<Item>(part: PartOf<Item>): (journal: Journal, day: Day) => Item[] {
  const gather = gathered<readonly Item[], Map<string, readonly Item[]>>({
    begin: () => new Map(),
    part: notEmpty(part),
    add: (whole, items, id) => whole.set(id, items),
    take: (whole, _, id) => whole.delete(id),
  });
  return (journal, day) => [...gather(journal, day).values()].flat();
}

interface Sorted {
  readonly sort: string;
}

/** A text to sort by, in which 9 stands before 10. */
export function numbered(text: string): string {
  return text.replace(/\d+/g, digits => digits.padStart(9, '0'));
}

/** All items in the order of `sort`. */
export function inOrderOf<Item extends Sorted>(
  part: PartOf<Item>,
): (journal: Journal, day: Day) => readonly Item[] {
  return gathered<readonly Item[], Item[]>({
    begin: () => [],
    part: notEmpty(part),
    add: (whole, items) => items.forEach(item => whole.splice(placeOf(item, whole), 0, item)),
    take: (whole, items) => items.forEach(item => whole.splice(whole.indexOf(item, placeOf(item, whole)), 1)),
  });
}

/** The index of the first that does not stand before an item. */
function placeOf({ sort }: Sorted, all: readonly Sorted[]): number {
  let [low, high] = [0, all.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (all[middle]!.sort < sort) low = middle + 1;
    else high = middle;
  }
  return low;
}

function notEmpty<Item>(part: PartOf<Item>): Gathering<readonly Item[], unknown>['part'] {
  return (id, journal, day) => {
    const items = part(id, journal, day);
    return items.length === 0 ? undefined : items;
  };
}
