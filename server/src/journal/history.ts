/** Folds the records of one lot, in the order of time, into the life of each of its batches. */
import { factOf, factsOf, type CutClass, type JournalRecord } from '../model/record.ts';
import { isRemarkKind } from '../model/keywords.ts';
import { countTotals } from './counting.ts';
import { compareLines } from './journal-file.ts';
import {
  noTotals, type Batch, type BatchEvent, type DatedEntry, type Dose, type Entry, type Lot, type Soak, type Stage,
} from './life.ts';
import { after, elapsed, type Moment } from './moment.ts';

/** What the fold needs to know beyond the lot's own records. */
export interface Surroundings {
  readonly zone: string | undefined;
  readonly dose: (entry: DatedEntry) => Dose[];
}

type Draft<T> = { -readonly [Key in keyof T]: T[Key] extends readonly (infer Item)[] ? Item[] : T[Key] };
type BatchDraft = Omit<Draft<Batch>, 'children' | 'soaks' | 'stages'> & {
  children: BatchDraft[];
  soaks: Draft<Soak>[];
  stages: Draft<Stage>[];
  /** Lies in a soak that nothing has ended yet. */
  soaking: Draft<Soak> | undefined;
};

/** `entries` are all records whose subject is the lot or a batch of it, but for `lot` records; any order. */
export function historyOf(id: string, definition: Entry, entries: readonly Entry[], surroundings: Surroundings): Lot {
  const root = newBatch(id, undefined, definition, factOf(definition.record, 'seeds')?.n.value);
  const batches = new Map<string, BatchDraft>([[id, root]]);
  const twice = makeBatches(root, batches, entries);
  const strays = entries.filter(entry => !batches.has(entry.record.subject?.text ?? ''));
  const undated = entries.filter(entry => !entry.moment && entry.record.keyword !== 'split');
  for (const entry of inOrder(entries)) {
    const batch = batches.get(entry.record.subject?.text ?? '');
    if (batch) happen(batch, entry, batches, surroundings);
  }
  for (const batch of batches.values()) batch.origin = originOf(batch);
  return {
    id, definition, plant: definition.record.plant?.text, collected: factOf(definition.record, 'collected')?.when.value,
    root, batches, strays, undated, twice,
  };
}

function newBatch(path: string, parent: BatchDraft | undefined, made: Entry, seeds: number | undefined): BatchDraft {
  return {
    path, parent, made, seeds, kept: seeds, children: [], events: [], inherited: [], soaks: [], stages: [],
    sowing: undefined, sown: undefined, origin: undefined, totals: noTotals, cut: undefined, closed: undefined,
    place: factOf(made.record, 'at')?.value.text, medium: undefined, soaking: undefined,
  };
}

/** Makes the batches that the `split` records name, whatever their order in the files. */
function makeBatches(root: BatchDraft, batches: Map<string, BatchDraft>, entries: readonly Entry[]): { entry: Entry; path: string; first: Entry }[] {
  const twice: { entry: Entry; path: string; first: Entry }[] = [];
  const splits = entries.filter(({ record }) => record.keyword === 'split').sort((a, b) => compareLines(a.line, b.line));
  const make = (parent: BatchDraft) => {
    for (const entry of splits.filter(({ record }) => record.subject?.text === parent.path)) {
      for (const part of factsOf(entry.record, 'part')) {
        const path = `${parent.path}/${part.name.text}`;
        const first = batches.get(path);
        if (first) {
          twice.push({ entry, path, first: first.made });
          continue;
        }
        const batch = newBatch(path, parent, entry, part.n.value);
        batch.place = undefined;
        parent.children.push(batch);
        batches.set(path, batch);
        make(batch);
      }
    }
  };
  make(root);
  return twice;
}

/**
 * The order of time. Of records of one day, one without a time of day follows the record that stands before it in the
 * file: a diary is written in the order in which things are done. A `split` without a date comes before everything.
 */
function inOrder(entries: readonly Entry[]): DatedEntry[] {
  const placed = entries
    .flatMap(entry => {
      const moment = entry.moment ?? (entry.record.keyword === 'split' ? { day: -Infinity, minutes: 0 } : undefined);
      return moment ? [{ entry: { ...entry, moment }, day: moment.day, minutes: moment.minutes }] : [];
    })
    .sort((a, b) => a.day - b.day || compareLines(a.entry.line, b.entry.line));
  let last = { day: NaN, minutes: 0 };
  const keyed = placed.map(({ entry, day, minutes }) => {
    last = { day, minutes: minutes ?? (last.day === day ? last.minutes : 0) };
    return { entry, ...last };
  });
  return keyed.sort((a, b) => a.day - b.day || a.minutes - b.minutes).map(({ entry }) => entry);
}

function happen(batch: BatchDraft, entry: DatedEntry, batches: ReadonlyMap<string, BatchDraft>, { zone, dose }: Surroundings): void {
  const { record, moment } = entry;
  const base = { entry, batch, closedBy: batch.closed, emptied: batch.children.length > 0 && batch.kept === 0 };
  const add = (event: BatchEvent) => {
    batch.events.push(event);
    if ((event.type === 'cut' || event.type === 'discard') && !batch.closed) close(batch, event);
  };
  const place = factOf(record, 'at')?.value.text;
  if (place !== undefined) batch.place = place;
  switch (record.keyword) {
    case 'split': return add({ ...base, type: 'split', ...split(batch, entry, batches) });
    case 'soak': {
      endSoak(batch, entry, zone);
      const soak = startSoak(entry, dose(entry), zone);
      batch.soaks.push(soak);
      batch.soaking = soak;
      return add({ ...base, type: 'soak', soak });
    }
    case 'lift': {
      const soak = batch.soaking;
      if (soak) setEnd(soak, moment, 'lift', zone, entry);
      batch.soaking = undefined;
      return add({ ...base, type: 'lift', soak });
    }
    case 'sow': {
      endSoak(batch, entry, zone);
      return add({ ...base, type: 'sow', ...sow(batch, entry) });
    }
    case 'chill': case 'warm': {
      endSoak(batch, entry, zone);
      endStage(batch, moment);
      const stage: Draft<Stage> = {
        entry, stage: record.keyword, temperature: factOf(record, 'temperature')?.value,
        planned: factOf(record, 'duration')?.value, start: moment, end: undefined,
      };
      batch.stages.push(stage);
      return add({ ...base, type: 'stage', stage });
    }
    case 'count': {
      const counts = factsOf(record, 'count');
      const before = batch.totals;
      batch.totals = countTotals(before, counts);
      return add({ ...base, type: 'count', counts, before, after: batch.totals });
    }
    case 'cut': {
      const cut = { ...base, type: 'cut' as const, classes: classesOf(record), expected: unsorted(batch) };
      batch.cut = cut;
      return add(cut);
    }
    case 'scarify': case 'move': case 'apply': case 'pot': case 'discard': case 'note': case 'photo': case 'due':
      return add({ ...base, type: record.keyword });
    default:
  }
}

function close(batch: BatchDraft, event: BatchEvent): void {
  batch.closed = event;
  batch.soaking = undefined;
  endStage(batch, event.entry.moment);
}

/** What a batch that is split off takes along: all that was done to the seed, not what was counted. */
function split(batch: BatchDraft, { record }: DatedEntry, batches: ReadonlyMap<string, BatchDraft>): { asked: number; left: number | undefined } {
  const parts = factsOf(record, 'part');
  const asked = parts.reduce((sum, part) => sum + part.n.value, 0);
  const left = unsorted(batch, batch.kept);
  for (const part of parts) {
    const child = batches.get(`${batch.path}/${part.name.text}`);
    if (child?.made.record !== record) continue;
    child.inherited = [...batch.inherited, ...batch.events.filter(event => !isRemarkKind(event.entry.record.keyword))];
    child.soaks.unshift(...batch.soaks);
    child.stages.unshift(...batch.stages);
    child.soaking ??= batch.soaking;
    child.place ??= batch.place;
    child.medium ??= batch.medium;
    if (batch.sowing && !child.sowing) {
      child.sowing = batch.sowing;
      child.sown = child.seeds;
    }
  }
  if (batch.kept !== undefined) batch.kept = Math.max(0, batch.kept - asked);
  if (batch.sown !== undefined) batch.sown = Math.max(0, batch.sown - asked);
  return { asked, left };
}

function sow(batch: BatchDraft, entry: DatedEntry): { asked: number | undefined; available: number | undefined } {
  const { record } = entry;
  const asked = factOf(record, 'seeds')?.n.value;
  const left = unsorted(batch, batch.kept);
  const available = left === undefined ? undefined : Math.max(0, left - (batch.sown ?? 0));
  const number = asked ?? available;
  batch.sown = batch.sowing && batch.sown === undefined ? undefined : number === undefined ? undefined : (batch.sown ?? 0) + number;
  batch.sowing ??= entry;
  batch.medium = factOf(record, 'in')?.value.text ?? batch.medium;
  return { asked, available };
}

function startSoak(entry: DatedEntry, doses: Dose[], zone: string | undefined): Draft<Soak> {
  const { record, moment } = entry;
  const soak: Draft<Soak> = { entry, doses, start: moment, end: undefined, endedBy: undefined, endEntry: undefined, length: undefined };
  const until = factOf(record, 'until');
  const duration = factOf(record, 'duration')?.value;
  if (until) setEnd(soak, { day: until.date.day, minutes: until.time?.minutes }, 'until', zone);
  else if (duration) {
    setEnd(soak, after(moment, duration, zone), 'duration', zone);
    const minutes = duration.unit === 'h' ? duration.value * 60 : duration.unit === 'min' ? duration.value : undefined;
    // The length is what was written, whether or not the time of day was.
    if (minutes !== undefined) soak.length = { least: minutes, most: minutes, wallClock: false };
  }
  return soak;
}

function setEnd(soak: Draft<Soak>, end: Moment, by: NonNullable<Soak['endedBy']>, zone: string | undefined, entry?: DatedEntry): void {
  soak.end = end;
  soak.endedBy = by;
  soak.endEntry = entry;
  soak.length = elapsed(soak.start, end, zone);
}

/** The seed goes on to something else: a soak with a planned end counts as ended by then, another one is left open. */
function endSoak(batch: BatchDraft, next: DatedEntry, zone: string | undefined): void {
  const soak = batch.soaking;
  batch.soaking = undefined;
  if (!soak || soak.end) return;
  setEnd(soak, next.moment, 'next', zone, next);
  soak.length = { ...(soak.length!), least: 0 };
}

function endStage(batch: BatchDraft, at: Moment): void {
  const stage = batch.stages.at(-1);
  if (stage && !stage.end) stage.end = at;
}

/** Seeds of a batch that have neither germinated nor rotted nor been lost. */
function unsorted({ sowing, sown, kept, totals }: BatchDraft, base = sowing ? sown : kept): number | undefined {
  return base === undefined ? undefined : base - totals.lost - totals.germinated - totals.rotted;
}

function classesOf(record: JournalRecord): Record<CutClass, number> {
  const classes = { fresh: 0, hard: 0, dead: 0, empty: 0 };
  for (const { what, n } of factsOf(record, 'cut')) classes[what] += n.value;
  return classes;
}

function originOf({ sowing, soaks, stages }: BatchDraft): Batch['origin'] {
  if (sowing) return { moment: sowing.moment, by: 'sowing' };
  const soak = soaks.at(-1);
  if (soak?.end) return { moment: soak.end, by: 'end of the soak' };
  const stage = stages[0];
  return stage && { moment: stage.start, by: 'start of the first stage' };
}
