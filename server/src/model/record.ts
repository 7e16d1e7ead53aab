/** What one line says, by itself. Columns are UTF-16 units within the line; `end` is exclusive. */
import type { Day } from './day.ts';
import type { Estimate } from './estimate.ts';
import type { Duration, Mass, MolarMassUnit, Quantity, Strength, Temperature, Volume } from './quantity.ts';
import type { Keyword } from './keywords.ts';

export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A word or a text as written, with where it stands. */
export interface Written extends Span {
  readonly text: string;
}

/** A value read from the line, with where it stands. */
export interface Placed<Value> extends Span {
  readonly value: Value;
}

export interface WrittenDate extends Span {
  readonly day: Day;
}

/** Minutes since midnight, wall clock. */
export interface WrittenTime extends Span {
  readonly minutes: number;
}

/** The first and the last day that a date of less precision can mean. */
export interface DaySpan {
  readonly first: Day;
  readonly last: Day;
}

const stages = ['germinated', 'emerged', 'leaf'] as const;
const fates = ['rotted', 'died', 'lost'] as const;
const qualities = ['leggy', 'abnormal', 'stuck', 'freed'] as const;
export const cutClasses = ['fresh', 'hard', 'dead', 'empty'] as const;

/** What a `count` counts. */
export const countables = [...stages, ...fates, ...qualities] as const;
export type Countable = (typeof countables)[number];
export type CutClass = (typeof cutClasses)[number];

/** What the percentage on a label is of, for an agent that is sold as acid and as salt. */
export const purityForms = ['acid', 'salt'] as const;
export type PurityForm = (typeof purityForms)[number];

/** Dormancy classes of Baskin & Baskin 2004, Seed Sci Res 14:1-16. */
export const dormancies = ['PD', 'MD', 'MPD', 'PY', 'PY+PD'] as const;

interface FactOf<Type extends string> extends Span {
  readonly type: Type;
}

/** One member of the union for each of several types that hold the same. */
type EachOf<Types extends string, Rest> = Types extends string ? FactOf<Types> & Readonly<Rest> : never;

/** A fact that is a text behind a word: `from own garden`, `at bag 3 slot 2`. */
export type TextFact = EachOf<'from' | 'at' | 'stored' | 'in' | 'source' | 'text' | 'path' | 'whither', { value: Written }>;

/** An agent or a stock with what is said of it: a strength, a volume, a mass of powder, or that it was unmeasured. */
export interface SubstanceFact extends FactOf<'substance'> {
  readonly name: Written;
  readonly strength?: Placed<Strength>;
  readonly volume?: Placed<Volume>;
  readonly mass?: Placed<Mass>;
  /** How often the packet was halved by eye. */
  readonly halved?: Placed<number>;
  readonly unmeasured?: Span;
}

/** What is taken out of a stock (a volume), or of a packet of powder (a mass, or a part halved by eye). */
export interface DrawFact extends FactOf<'draw'> {
  readonly stock: Written;
  readonly volume?: Placed<Volume>;
  readonly mass?: Placed<Mass>;
  readonly halved?: Placed<number>;
}

export interface CountFact extends FactOf<'count'> {
  readonly what: Countable;
  readonly n: Placed<number>;
  /** Written with `=`: the total so far, not what is new. */
  readonly total: boolean;
}

export interface StageFact extends FactOf<'stage'> {
  readonly stage: 'warm' | 'chill';
  readonly temperature?: Placed<Temperature>;
  readonly duration?: Placed<Duration>;
}

/** The day on which a trial is to be judged: one of the calendar, or so many days from day 0. */
export type JudgeDayFact = FactOf<'on'> & ({ readonly date: WrittenDate } | { readonly age: Placed<number> });

/** A number of seeds that was counted, or an estimate: one of the two. */
export interface HowMany {
  readonly n?: Placed<number>;
  readonly estimate?: Placed<Estimate>;
}

export type Fact =
  | EachOf<'seedlings' | 'drops', { n: Placed<number> }>
  | (FactOf<'seeds'> & HowMany)
  | (FactOf<'part'> & HowMany & { readonly name: Written })
  | EachOf<'bought', { when: Placed<DaySpan> }>
  /** `harvests`: of two in one packet; `when` takes in both. */
  | EachOf<'collected', { when: Placed<DaySpan>; harvests?: readonly DaySpan[] }>
  | EachOf<'dormancy' | 'regime' | 'for' | 'replaces', { value: Written }>
  | TextFact
  | SubstanceFact
  | CountFact
  | StageFact
  | EachOf<'cut', { what: CutClass; n: Placed<number> }>
  | EachOf<'duration' | 'keeps', { value: Duration }>
  | FactOf<'outdoors'>
  | EachOf<'look', { date: WrittenDate }>
  | EachOf<'until', { date: WrittenDate; time?: WrittenTime }>
  | JudgeDayFact
  | EachOf<'volume' | 'to', { value: Volume }>
  | EachOf<'mass', { value: Mass }>
  | EachOf<'temperature', { value: Temperature }>
  | EachOf<'strength' | 'solubility', { value: Strength }>
  | EachOf<'purity', { percent: number; form?: PurityForm }>
  | DrawFact
  | EachOf<'molarMass', { value: Quantity<MolarMassUnit> }>;

export type FactType = Fact['type'];

export type FactOfType<Type extends FactType> = Extract<Fact, { readonly type: Type }>;

export interface JournalRecord {
  readonly keyword: Keyword;
  readonly keywordSpan: Span;
  /** The lot, batch, stock, regime, agent, zone or plant that the record is about. */
  readonly subject: Written | undefined;
  /** The plant's name on a `lot`. */
  readonly plant: Written | undefined;
  readonly date: WrittenDate | undefined;
  readonly time: WrittenTime | undefined;
  readonly facts: readonly Fact[];
  /** What begins facts that could not be read: an agent, a stock or a packet, of which something is said or taken. */
  readonly unread: readonly Written[];
  /** Something on the line could not be read: what was read stands, what is missing tells nothing. */
  readonly broken: boolean;
}

/** Of the many records of which all was read. */
export const noneUnread: readonly Written[] = [];

/** The first fact of a type. */
export function factOf<Type extends FactType>(record: JournalRecord, type: Type): FactOfType<Type> | undefined {
  return record.facts.find((fact): fact is FactOfType<Type> => fact.type === type);
}

/** All facts of a type, in the order written. */
export function factsOf<Type extends FactType>(record: JournalRecord, type: Type): FactOfType<Type>[] {
  return record.facts.filter((fact): fact is FactOfType<Type> => fact.type === type);
}
