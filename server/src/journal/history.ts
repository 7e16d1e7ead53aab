/** Folds the records of one lot, in the order of time, into the life of each of its batches. */
import { isEventKeyword, meaningOf, meaningOfKeyword, type EventMeaning, type Leaving } from '../model/events.ts';
import { factOf, factsOf, type CutClass, type JournalRecord } from '../model/record.ts';
import { batchesOf, partsGivenBy, type BatchDraft, type Draft } from './batches.ts';
import { countTotals } from './counting.ts';
import type { Doubt } from './doubts.ts';
import { hasEstimate, worlds, type World } from './estimates.ts';
import { forgetGuesses, settleByCut } from './guesses.ts';
import { inherit } from './inheritance.ts';
import { isGivenOut } from './given-out.ts';
import {
  originOf, type BatchEvent, type DatedEntry, type Dose, type Entry, type LeaveEvent, type Lot,
  type SplitEvent, type Stage,
} from './life.ts';
import type { Moment } from './moment.ts';
import { inOrder } from './order.ts';
import { giveOut, letGo, sowSeeds, testedOf, unsorted } from './seeds.ts';
import { leaveSeenOut, leaveSoak, liftSoak, showsOut, startSoak } from './soaking.ts';

/** What the fold needs to know beyond the lot's own records. */
export interface Surroundings {
  readonly zone: string | undefined;
  readonly dosesOf: (entry: Entry) => Dose[];
  /** The record that defines a regime. */
  readonly regimeOf: (name: string) => Entry | undefined;
  readonly doubts: readonly Doubt[];
}

/**
 * The life of a lot. `entries` are all records whose subject is the lot or a batch of it, but for `lot` records, in the
 * order of the journal.
 */
export function historyOf(id: string, definition: Entry, entries: readonly Entry[], surroundings: Surroundings): Lot {
  const lot = readLife(id, definition, entries, surroundings, undefined);
  if (!hasEstimate([definition, ...entries])) return lot;
  const others = worlds.map(world => readLife(id, definition, entries, surroundings, world));
  for (const batch of lot.batches.values()) {
    batch.worlds = others.flatMap(other => other.batches.get(batch.path) ?? []);
    forgetGuesses(batch);
    settleByCut(batch);
  }
  return lot;
}

function readLife(
  id: string, definition: Entry, entries: readonly Entry[], surroundings: Surroundings, world: World | undefined,
): Omit<Lot, 'batches'> & { readonly batches: ReadonlyMap<string, BatchDraft> } {
  const { root, batches, twice } = batchesOf(id, definition, entries, world);
  const batchOf = ({ record }: Entry) => batches.get(record.subject?.text ?? '');
  for (const entry of inOrder(entries)) {
    const batch = batchOf(entry);
    if (batch) happen(batch, entry, surroundings);
  }
  for (const batch of batches.values()) {
    leaveSeenOut(batch, surroundings.zone);
    batch.tested = testedOf(batch);
    batch.origin = originOf(batch);
  }
  return {
    id, definition, doubts: surroundings.doubts, plant: definition.record.plant?.text, collected: factOf(definition.record, 'collected')?.when.value,
    zone: surroundings.zone, root, batches, strays: entries.filter(entry => !batchOf(entry)), twice,
  };
}

function happen(batch: BatchDraft, entry: DatedEntry, surroundings: Surroundings): void {
  const event = eventOf(batch, entry, surroundings);
  if (!event) return;
  batch.events.push(event);
  if (event.type !== 'split' && !meaningOf(event).isRemark) batch.handedOn.push(event);
  if (event.type === 'cut') batch.cut = event;
  if (meaningOf(event).closes && !batch.closed) {
    batch.closed = event;
    leaveSoak(batch, entry, surroundings.zone);
    endStage(batch, entry.moment);
  }
}

/** Changes the batch as the record says, and makes the event of it. */
function eventOf(
  batch: BatchDraft, entry: DatedEntry, { zone, dosesOf, regimeOf }: Surroundings,
): BatchEvent | undefined {
  const { record, record: { keyword } } = entry;
  const closedBy = batch.closed;
  if (!isEventKeyword(keyword)) return undefined;
  if (isGivenOut(batch) && keyword !== 'split' && !meaningOfKeyword(keyword).isRemark) {
    return { type: 'misplaced', entry, batch, closedBy };
  }
  if (keyword === 'count' && tellsNothing(entry)) return { type: 'blank', entry, batch, closedBy };
  prepare(batch, entry, meaningOfKeyword(keyword), zone);
  switch (keyword) {
    case 'split': {
      const { asked, left } = split(batch, entry, zone);
      return { type: keyword, entry, batch, closedBy, asked, left, tested: testedOf(batch) };
    }
    case 'soak': return { type: keyword, entry, batch, closedBy, soak: soak(batch, entry, dosesOf(entry), zone) };
    case 'lift': return { type: keyword, entry, batch, closedBy, soak: liftSoak(batch, entry, zone) };
    case 'sow': {
      batch.medium = factOf(record, 'in')?.value.text ?? batch.medium;
      const { asked, available, again } = sowSeeds(batch, entry);
      const named = factOf(record, 'regime')?.value.text;
      const regime = named === undefined ? undefined : regimeOf(named);
      return { type: keyword, entry, batch, closedBy, asked, available, again, regime };
    }
    case 'chill': case 'warm':
      return { type: 'stage', entry, batch, closedBy, stage: startStage(batch, entry, keyword) };
    case 'count': {
      const counts = factsOf(record, 'count');
      const before = batch.totals;
      const after = batch.totals = countTotals(before, counts);
      return { type: keyword, entry, batch, closedBy, counts, before, after, tested: testedOf(batch) };
    }
    case 'cut': {
      const { totals } = batch;
      const tested = testedOf(batch);
      const expected = unsorted(batch, tested);
      return { type: keyword, entry, batch, closedBy, classes: classesOf(record), tested, totals, expected };
    }
    case 'apply': return { type: keyword, entry, batch, closedBy, doses: dosesOf(entry) };
    case 'plant': case 'give': case 'sell': case 'send': case 'lose':
      return leave(batch, entry, keyword);
    default: return { type: keyword, entry, batch, closedBy };
  }
}

/** What the record means to the soak and the stage that the seed was in. The close has its own order, see `happen`. */
function prepare(batch: BatchDraft, entry: DatedEntry, meaning: EventMeaning, zone: string | undefined): void {
  if (meaning.soak === 'begins' || meaning.soak === 'onward') leaveSoak(batch, entry, zone);
  else if (meaning.soak !== 'lifted' && batch.soaking && showsOut(meaning, batch.soaking, entry.moment)) batch.seenOut ??= entry;
  if (!meaning.closes && meaning.stage !== 'goes on') endStage(batch, entry.moment);
  if (meaning.treats) batch.treated = true;
}

/** No number is written, or none that could be read: that is not a look that found nothing. */
function tellsNothing({ line, record }: DatedEntry): boolean {
  if (record.facts.length > 0) return false;
  if (record.broken) return true;
  const head = record.time ?? record.date ?? record.subject ?? record.keywordSpan;
  return /^[\s,]*$/.test(line.text.slice(head.end));
}

/** Where neither seeds nor seedlings are named all went; so they did where no seed is left in the end. */
function leave(batch: BatchDraft, entry: DatedEntry, how: Leaving): LeaveEvent {
  const closedBy = batch.closed;
  const fact = factOf(entry.record, 'whither');
  const whither = fact && entry.line.text.slice(fact.start, fact.value.end);
  const seedlings = factOf(entry.record, 'seedlings')?.n.value;
  const seeds = factOf(entry.record, 'seeds');
  const { asked, left } = seeds ? letGo(batch, seeds) : { asked: 0, left: unsorted(batch, batch.kept) };
  const isAll = seedlings === undefined && (!seeds || batch.kept === 0) && !entry.record.broken;
  return {
    type: isAll ? 'gone' : 'leave', how, entry, batch, closedBy, asked, left, tested: testedOf(batch),
    seedlings: seedlings ?? 0, whither,
  };
}

function split(batch: BatchDraft, entry: DatedEntry, zone: string | undefined): Pick<SplitEvent, 'asked' | 'left'> {
  const { asked, left, fromSown } = giveOut(batch, entry);
  for (const child of partsGivenBy(entry.record, batch)) inherit(child, batch, fromSown);
  if (isGivenOut(batch)) {
    leaveSoak(batch, entry, zone);
    endStage(batch, entry.moment);
  }
  return { asked, left };
}

function soak(batch: BatchDraft, entry: DatedEntry, doses: Dose[], zone: string | undefined): BatchDraft['soaks'][number] {
  const started = startSoak(entry, doses, zone);
  batch.soaks.push(started);
  batch.soaking = started;
  return started;
}

function startStage(batch: BatchDraft, entry: DatedEntry, stage: Stage['stage']): Stage {
  const { record, moment } = entry;
  const started: Draft<Stage> = {
    entry, stage, temperature: factOf(record, 'temperature')?.value, planned: factOf(record, 'duration')?.value,
    start: moment, end: undefined,
  };
  batch.stages.push(started);
  return started;
}

function endStage(batch: BatchDraft, at: Moment): void {
  const stage = batch.stages.at(-1);
  if (stage && !stage.end) stage.end = at;
}

function classesOf(record: JournalRecord): Record<CutClass, number> {
  const classes = { fresh: 0, hard: 0, dead: 0, empty: 0 };
  for (const { what, n } of factsOf(record, 'cut')) classes[what] += n.value;
  return classes;
}
