/** What the records say of a lot and of each batch of it, in the order of time. Plain data, built in history.ts. */
import type { Agent } from '../solutions/agent.ts';
import type { Exact } from '../solutions/amounts.ts';
import type { Outcome } from '../solutions/outcome.ts';
import type { Day } from '../model/day.ts';
import { meaningOf, type EventKind, type Leaving } from '../model/events.ts';
import type { Duration, Strength, Temperature } from '../model/quantity.ts';
import type { Countable, CountFact, CutClass, DaySpan, JournalRecord, SubstanceFact } from '../model/record.ts';
import type { Doubt } from './doubts.ts';
import type { JournalLine } from './journal-file.ts';
import type { Elapsed, Moment } from './moment.ts';
import type { Stale } from './solutions.ts';

/** A record in its place, dated by itself or by the `day` line above it. */
export interface Entry {
  readonly line: JournalLine;
  readonly record: JournalRecord;
  readonly moment: Moment | undefined;
}

export type DatedEntry = Entry & { readonly moment: Moment };

/** What is past its time, and when something was taken from it all the same. */
export type TakenStale = Stale & { readonly on: Day };

/** What one fact brings into the liquid of a soak or a drop. */
export interface DosePart {
  readonly fact: SubstanceFact;
  /** The stock it was taken from. */
  readonly stock: string | undefined;
  /** It is powder out of a packet of the journal; `stock` names that. */
  readonly isPowder: boolean;
  /** Whether it is a liquid that is poured in. */
  readonly isPoured: boolean;
  /** It adds to the other parts: poured in, or powder that was weighed. Else it speaks of the whole liquid. */
  readonly adds: boolean;
  /** ppm as taken, before anything was mixed. */
  readonly held: Outcome<Exact>;
  /** ppm that it brings into the whole liquid. */
  readonly ppm: Outcome<Exact>;
  /** The same by what its stock holds, where what is written beside the stock says otherwise: `ppm` is then refused. */
  readonly byStock: Outcome<Exact> | undefined;
  /** The bottle was past its time. */
  readonly stale: TakenStale | undefined;
  /** Powder was halved by eye on its way into the bottle. */
  readonly byEye: boolean;
}

/** An agent in the liquid of a soak or a drop, from however many stocks it came. */
export interface Dose {
  /** At least one, in the order written. */
  readonly parts: readonly DosePart[];
  /** That of the first part. */
  readonly fact: SubstanceFact;
  /** The stock it was taken from; undefined where that is none, or more than one. */
  readonly stock: string | undefined;
  /** Undefined where neither an agent nor a stock has that name, or where the stock's own agent is not known. */
  readonly agent: Agent | undefined;
  /** The strength as written, where it is that of the whole liquid. */
  readonly written: Strength | undefined;
  /** Nobody measured it, or a part of it. */
  readonly unmeasured: boolean;
  /** It came from a bottle past its time, of several the oldest one: `ppm` is the most that it can be. */
  readonly stale: TakenStale | undefined;
  /** The powder of a part of it was halved by eye: `ppm` is an estimate. */
  readonly byEye: boolean;
  /** ppm in the whole liquid; refused where nothing was measured or where it cannot be known. */
  readonly ppm: Outcome<Exact>;
}

export interface Soak {
  readonly entry: DatedEntry;
  readonly doses: readonly Dose[];
  readonly start: Moment;
  /** Where the seed came out, or is to come out; undefined while it lies there with no end set. */
  readonly end: Moment | undefined;
  /** What set the end. `next`: the seed went on to something else before, when it came out is not written. */
  readonly endedBy: 'lift' | 'until' | 'duration' | 'next' | undefined;
  /** The record that set the end: a `lift`, or whatever came next. */
  readonly endEntry: DatedEntry | undefined;
  /** How long from start to end; undefined while no end is known, and where it lies before the start. */
  readonly length: Elapsed | undefined;
}

export interface Stage {
  readonly entry: DatedEntry;
  readonly stage: 'chill' | 'warm';
  readonly temperature: Temperature | undefined;
  readonly planned: Duration | undefined;
  readonly start: Moment;
  /** When the next stage, a sowing, or the close of the batch ended it. */
  readonly end: Moment | undefined;
}

/** Totals so far. `germinated` and `emerged` include the seeds that later stages imply. */
export type Totals = Readonly<Record<Countable, number>>;

export const noTotals: Totals = {
  germinated: 0, emerged: 0, leaf: 0, rotted: 0, died: 0, lost: 0, leggy: 0, abnormal: 0, stuck: 0, freed: 0,
};

interface EventBase {
  readonly entry: DatedEntry;
  /** The batch that the record names; for an inherited event an ancestor. */
  readonly batch: Batch;
  /** The event that had closed the batch before this one. */
  readonly closedBy: BatchEvent | undefined;
}

export interface CountEvent extends EventBase {
  readonly type: 'count';
  readonly counts: readonly CountFact[];
  readonly before: Totals;
  readonly after: Totals;
  /** `tested` of the batch when this was counted. */
  readonly tested: number | undefined;
}

export interface CutEvent extends EventBase {
  readonly type: 'cut';
  readonly classes: Readonly<Record<CutClass, number>>;
  /** `tested` and `totals` of the batch when this was done. */
  readonly tested: number | undefined;
  readonly totals: Totals;
  /** Seeds that had not germinated, rotted or been lost; undefined where the number sown is not known. */
  readonly expected: number | undefined;
}

export interface SowEvent extends EventBase {
  readonly type: 'sow';
  /** As written; undefined: all that is left. */
  readonly asked: number | undefined;
  /** Seeds that were there to sow; undefined where that is not known. */
  readonly available: number | undefined;
  /** The seed that was sown before is sown once more: after another treatment, or out of its bag into compost. */
  readonly again: boolean;
  /** The regime that it is sown in, as the journal defines it; undefined where it is in none or none is defined. */
  readonly regime: Entry | undefined;
}

export interface SplitEvent extends EventBase {
  readonly type: 'split';
  readonly asked: number;
  /** Seeds that were there to give out: what germinated, rotted or was lost stays with the batch. */
  readonly left: number | undefined;
  /** `tested` of the batch once they were given out. */
  readonly tested: number | undefined;
}

/** Seed or seedlings that went for good: `leave` some of them, `gone` all. */
export interface LeaveEvent extends EventBase {
  readonly type: 'leave' | 'gone';
  readonly how: Leaving;
  /** Seeds that had not germinated, and seedlings; 0 where none are named. */
  readonly asked: number;
  readonly seedlings: number;
  /** Seeds that were there to give; undefined where that is not known. */
  readonly left: number | undefined;
  /** `tested` of the batch once they had gone. */
  readonly tested: number | undefined;
  /** Where to, in the grower's words. */
  readonly whither: string | undefined;
}

/** With more than its record tells. */
type TellingEvent =
  | CountEvent
  | CutEvent
  | SowEvent
  | SplitEvent
  | LeaveEvent
  | (EventBase & { readonly type: 'soak'; readonly soak: Soak })
  | (EventBase & { readonly type: 'lift'; readonly soak: Soak | undefined })
  | (EventBase & { readonly type: 'stage'; readonly stage: Stage })
  | (EventBase & { readonly type: 'apply'; readonly doses: readonly Dose[] });

type PlainKind = Exclude<EventKind, TellingEvent['type']>;

const telling: Readonly<Record<TellingEvent['type'], true>> = {
  count: true, cut: true, sow: true, split: true, leave: true, gone: true,
  soak: true, lift: true, stage: true, apply: true,
};

export type BatchEvent = TellingEvent | { [Kind in PlainKind]: EventBase & { readonly type: Kind } }[PlainKind];

/** Whether an event carries more than its record tells, so that a hover or a hint has something to add. */
export function tellsMore(event: BatchEvent): event is TellingEvent {
  return Object.hasOwn(telling, event.type);
}

/** The day from which days are counted, and what makes it day 0. */
export interface Origin {
  readonly moment: Moment;
  readonly by: 'sowing' | 'end of the soak' | 'start of the first stage';
}

export interface Batch {
  /** `VER-24/A`; the lot itself is the batch `VER-24`. */
  readonly path: string;
  readonly parent: Batch | undefined;
  readonly children: readonly Batch[];
  /** Its children by the `split` that gave them out; none under one whose names were all given out before. */
  readonly parts: ReadonlyMap<JournalRecord, readonly Batch[]>;
  /** The `split` that made it; for the lot itself its `lot` record. */
  readonly made: Entry;
  /** Seeds it was given; undefined where the lot says no number. */
  readonly seeds: number | undefined;
  /** Seeds that stayed after what was split off. */
  readonly kept: number | undefined;
  /** Its own events in the order of time; what it inherits stands in `inherited`. */
  readonly events: readonly BatchEvent[];
  /** What had happened to the seed before it was split off. A soak or a stage that went on has its own end here. */
  readonly inherited: readonly BatchEvent[];
  readonly soaks: readonly Soak[];
  readonly stages: readonly Stage[];
  /** The first sowing; inherited where the batch was split off after it. */
  readonly sowing: DatedEntry | undefined;
  /** Seeds sown; undefined where nothing was sown or the number is not known. */
  readonly sown: number | undefined;
  /**
   * Seeds that its counts are about: those sown, with any that had germinated, rotted or been lost before; where
   * nothing was sown, those that stayed. Undefined where the number is not known.
   */
  readonly tested: number | undefined;
  /** Seed that had not germinated was split off after counting began: a share of what stayed would say nothing. */
  readonly thinned: boolean;
  readonly origin: Origin | undefined;
  readonly totals: Totals;
  readonly cut: CutEvent | undefined;
  readonly closed: BatchEvent | undefined;
  readonly medium: string | undefined;
  /**
   * A record of it, or of a batch that it comes from, could not be read in full or has no date. What seems to be
   * missing may be what could not be read. A remark (`note`, `photo`, `due`) is none of these.
   */
  readonly unread: boolean;
  /** It with the ends of the estimates of its lot (see estimates.ts); none where nothing there is estimated. */
  readonly worlds: readonly Batch[];
}

export interface Lot {
  readonly id: string;
  readonly definition: Entry;
  /** Of the lot or its batches, from lines that are not among their records. */
  readonly doubts: readonly Doubt[];
  readonly plant: string | undefined;
  readonly collected: DaySpan | undefined;
  readonly zone: string | undefined;
  readonly root: Batch;
  /** All batches by path, the lot itself first, each before its children. */
  readonly batches: ReadonlyMap<string, Batch>;
  /** Records of this lot that name a batch that was never split off. */
  readonly strays: readonly Entry[];
  /** Parts whose name was given out before: each with the part that has the name. */
  readonly twice: readonly { readonly entry: Entry; readonly path: string; readonly first: Entry }[];
}

/**
 * Seeds that percentages are taken of: those tested, less those lost. Undefined where the number is not known, where
 * more were counted than there are, and where seed was picked out while it was tested.
 */
export function denominator({ tested, thinned, totals }: Batch): number | undefined {
  if (tested === undefined || thinned || accounted(totals) > tested) return undefined;
  return tested - totals.lost;
}

/** Seeds of which it is known what became of them. */
export function accounted({ germinated, rotted, lost }: Totals): number {
  return germinated + rotted + lost;
}

/** Day 0 of seed with these in its life: the first sowing, else the end of the last soak, else the first stage. */
export function originOf({ sowing, soaks, stages }: Pick<Batch, 'sowing' | 'soaks' | 'stages'>): Origin | undefined {
  if (sowing) return { moment: sowing.moment, by: 'sowing' };
  const last = soaks.at(-1);
  if (last?.end && last.length) return { moment: last.end, by: 'end of the soak' };
  const stage = stages[0];
  return stage && { moment: stage.start, by: 'start of the first stage' };
}

/** Days from day 0; undefined without one. */
export function dayNumber(batch: Batch, { day }: Moment): number | undefined {
  return batch.origin && day - batch.origin.moment.day;
}

/** The counts of a batch in the order of time. */
export function countsOf(batch: Batch): CountEvent[] {
  return batch.events.filter((event): event is CountEvent => event.type === 'count');
}

/** Whether a count says a total so far; most say what is new. */
export function hasTotal({ counts }: CountEvent): boolean {
  return counts.some(({ total }) => total);
}

/** Whether anything ever happened to a batch but that it was divided or written about. */
export function isUsed({ events }: Batch): boolean {
  return events.some(event => meaningOf(event).uses);
}
