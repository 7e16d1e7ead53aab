/** The batches that a lot was divided into, as they are filled with their life. */
import { meaningOfKeyword } from '../model/events.ts';
import { factOf, factsOf, type HowMany, type JournalRecord } from '../model/record.ts';
import { amountIn, boundIn, type Bound, type World } from './estimates.ts';
import { noTotals, type Batch, type BatchEvent, type DatedEntry, type Entry, type Lot, type Soak, type Stage } from './life.ts';

export type Draft<T> = { -readonly [Key in keyof T]: T[Key] };

export type BatchDraft = Omit<Draft<Batch>, 'parent' | 'children' | 'parts' | 'events' | 'inherited' | 'soaks' | 'stages'> & {
  /** The end of its estimates that counts; undefined: none. */
  readonly bound: Bound | undefined;
  parent: BatchDraft | undefined;
  children: BatchDraft[];
  parts: Map<JournalRecord, BatchDraft[]>;
  events: BatchEvent[];
  inherited: BatchEvent[];
  /** Of its events those that a batch split off inherits: what was done to the seed, not what else was split off. */
  handedOn: BatchEvent[];
  soaks: Draft<Soak>[];
  stages: Draft<Stage>[];
  /** The soak that it lies in, as far as the records so far tell. */
  soaking: Draft<Soak> | undefined;
  /** The first record that saw the seed while, as far as is written, it lay there. */
  seenOut: DatedEntry | undefined;
  /** Seeds that had germinated, and that had rotted or been lost, when it was first sown. */
  atSowing: { readonly germinated: number; readonly spoilt: number };
  /** Soaked, scarified, or put into a stage since it was last sown. */
  treated: boolean;
};

interface Batches {
  readonly root: BatchDraft;
  /** By path, each before its children. */
  readonly batches: Map<string, BatchDraft>;
  /** Parts whose name was given out before. */
  readonly twice: Lot['twice'];
}

const noWorlds: readonly Batch[] = [];

/** Makes the batches that the `split` records name, whatever their dates. `entries` are in the order of the journal. */
export function batchesOf(
  id: string, definition: Entry, entries: readonly Entry[], world: World | undefined,
): Batches {
  const seeds = factOf(definition.record, 'seeds');
  const root = newBatch(id, undefined, definition, seeds, world);
  const batches = new Map<string, BatchDraft>([[id, root]]);
  const twice: { entry: Entry; path: string; first: Entry }[] = [];
  const splits = splitsByPath(entries);
  // A row of work instead of recursion: nobody limits how deep batches are nested.
  const work = [root];
  for (let parent = work.pop(); parent; parent = work.pop()) {
    batches.set(parent.path, parent);
    const children = new Map<string, BatchDraft>();
    for (const entry of splits.get(parent.path) ?? []) {
      for (const part of factsOf(entry.record, 'part')) {
        const path = `${parent.path}/${part.name.text}`;
        const first = children.get(path);
        if (!first) children.set(path, newBatch(path, parent, entry, part, world));
        // Within one record the reader of the line has said so already.
        else if (first.made.record !== entry.record) twice.push({ entry, path, first: first.made });
      }
    }
    parent.children = [...children.values()];
    for (const child of parent.children) {
      const { record } = child.made;
      const together = parent.parts.get(record);
      if (together) together.push(child);
      else parent.parts.set(record, [child]);
    }
    for (const child of parent.children.toReversed()) work.push(child);
  }
  markUnread(batches, entries);
  return { root, batches, twice };
}

function newBatch(
  path: string, parent: BatchDraft | undefined, made: Entry, howMany: HowMany | undefined,
  world: World | undefined,
): BatchDraft {
  const bound = boundIn(world, path);
  const seeds = howMany && amountIn(howMany, bound);
  return {
    path, parent, made, bound, worlds: noWorlds, seeds, kept: seeds,
    children: [], parts: new Map(), events: [], inherited: [], handedOn: [], soaks: [], stages: [],
    sowing: undefined, sown: undefined, tested: undefined, thinned: false, origin: undefined, totals: noTotals,
    cut: undefined, closed: undefined, medium: undefined, unread: false,
    soaking: undefined, seenOut: undefined, atSowing: { germinated: 0, spoilt: 0 }, treated: false,
  };
}

function splitsByPath(entries: readonly Entry[]): Map<string, Entry[]> {
  const splits = new Map<string, Entry[]>();
  for (const entry of entries) {
    const { keyword, subject } = entry.record;
    if (keyword !== 'split' || !subject) continue;
    const same = splits.get(subject.text);
    if (same) same.push(entry);
    else splits.set(subject.text, [entry]);
  }
  return splits;
}

function markUnread(batches: ReadonlyMap<string, BatchDraft>, entries: readonly Entry[]): void {
  for (const entry of entries) {
    if (!isUnread(entry)) continue;
    const batch = batches.get(entry.record.subject?.text ?? '');
    if (batch) batch.unread = true;
  }
  for (const batch of batches.values()) if (batch.parent?.unread) batch.unread = true;
}

/** Whether a record tells less of the seed than was written; a remark tells nothing of it, read or unread. */
function isUnread({ record, moment }: Entry): boolean {
  if (meaningOfKeyword(record.keyword)?.isRemark) return false;
  return record.broken || (!moment && record.keyword !== 'split');
}

/** The parts of a `split` that were given out by it; not those whose name another record had given out. */
export function partsGivenBy(record: JournalRecord, batch: BatchDraft): readonly BatchDraft[] {
  return batch.parts.get(record) ?? [];
}
