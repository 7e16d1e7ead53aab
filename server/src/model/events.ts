/**
 * What each kind of event in the life of a batch means. One row for each kind, so that the compiler names a new one
 * wherever something has to be decided about it: a keyword about a batch has its kind here, a kind its row, and what
 * is said of a kind in words stands in tables of the same keys.
 */
import type { KeywordTable, Keyword } from './keywords.ts';

/** Keywords of records about a batch, or about any id and so about a batch too. */
export type EventKeyword = {
  [Each in Keyword]: KeywordTable[Each]['subject'] extends 'batch' | 'any' ? Each : never
}[Keyword];

/**
 * `stage`: a `chill` or a `warm`. `leave`: some were planted out, given away, sold, sent or lost, and the others stay;
 * `gone`: all that was there. `misplaced`: of a batch all of whose seeds had been given out. `blank`: a `count`
 * behind which nothing is written, as the round of counts leaves it to be filled in, or nothing that can be read. These
 * two change nothing.
 */
export type EventKind = Exclude<EventKeyword, 'chill' | 'warm' | Leaving> | 'stage' | 'leave' | 'gone' | 'misplaced' | 'blank';

/** Seed or seedlings go for good. */
export type Leaving = 'plant' | 'give' | 'sell' | 'send' | 'lose';

export interface EventMeaning {
  /** The grower had the batch in hand and saw what was in it: the time to the next count begins here. */
  readonly isLook: boolean;
  /**
   * What it tells of a soak that the seed was in. `begins`: it goes into another one. `lifted`: it comes out now.
   * `onward`: it goes on to something else. `seen out`: it was out, though a `lift` may still say when. Behind
   * `begins` and these two, when it came out should have been written. `over`: it was out, and no more need be said.
   * `carried`: the vessel may have been moved with the seed in it. `silent`: it may still lie there.
   */
  readonly soak: 'begins' | 'lifted' | 'onward' | 'seen out' | 'over' | 'carried' | 'silent';
  /** What it does to a stage that goes on. A `split` ends it where no seed stays. */
  readonly stage: 'begins' | 'ends' | 'goes on';
  readonly closes: boolean;
  /** A remark, which may follow the close of a batch, and which a batch that is split off does not take along. */
  readonly isRemark: boolean;
  /** Whether a reminder of an earlier day is done with it. */
  readonly answersReminder: boolean;
  /** Whom it is about. `both`: what a count counts says so. */
  readonly about: 'seed' | 'seedlings' | 'both' | 'anything';
  /** It gets the seed wet, or into the stage that wakes it: what was counted before it is a slip. */
  readonly wakes: boolean;
  /** It prepares the seed, so that a sowing behind it may be of seed that had been sown before. */
  readonly treats: boolean;
  /** Batches that were used so or otherwise; a batch that was only divided or written about was not used. */
  readonly uses: boolean;
  /** It brings the batch into another state: soaked, sown, in a stage. */
  readonly isStep: boolean;
  /** What it does to the place where the batch lies, where it names one. */
  readonly place: 'soak' | 'sowing' | 'stage' | 'move' | 'pot' | 'split' | 'end' | 'none';
  /** Dated ahead, it is a plan that falls due. */
  readonly isPlan: boolean;
  /** The time of day gives the length of a soak. */
  readonly isTimed: boolean;
  /** Which batches a new record of it is likeliest about, those first in completion. */
  readonly likeliest: 'in a soak' | 'unsown' | 'ready to sow' | 'in medium' | 'to count' | 'sown' | 'germinated' | 'undivided' | 'any';
}

const remark = {
  isLook: false, soak: 'silent', stage: 'goes on', closes: false, isRemark: true, answersReminder: false, about: 'anything',
  wakes: false, treats: false, uses: false, isStep: false, place: 'none', isPlan: false, isTimed: false, likeliest: 'any',
} as const satisfies EventMeaning;
/** It changes nothing, but neither may it follow the close. */
const nothing = { ...remark, isRemark: false } as const satisfies EventMeaning;

const table = {
  split: {
    ...nothing, answersReminder: true, about: 'seed', place: 'split', isPlan: true, likeliest: 'undivided',
  },
  soak: {
    isLook: false, soak: 'begins', stage: 'goes on', closes: false, isRemark: false, answersReminder: true, about: 'seed',
    wakes: true, treats: true, uses: true, isStep: true, place: 'soak', isPlan: true, isTimed: true, likeliest: 'unsown',
  },
  lift: {
    isLook: false, soak: 'lifted', stage: 'goes on', closes: false, isRemark: false, answersReminder: true, about: 'seed',
    wakes: false, treats: false, uses: true, isStep: true, place: 'none', isPlan: true, isTimed: true, likeliest: 'in a soak',
  },
  scarify: {
    isLook: false, soak: 'seen out', stage: 'goes on', closes: false, isRemark: false, answersReminder: true, about: 'seed',
    wakes: false, treats: true, uses: true, isStep: true, place: 'none', isPlan: true, isTimed: false, likeliest: 'unsown',
  },
  sow: {
    isLook: true, soak: 'onward', stage: 'ends', closes: false, isRemark: false, answersReminder: true, about: 'seed',
    wakes: true, treats: false, uses: true, isStep: true, place: 'sowing', isPlan: true, isTimed: false, likeliest: 'ready to sow',
  },
  stage: {
    isLook: true, soak: 'onward', stage: 'begins', closes: false, isRemark: false, answersReminder: true, about: 'seed',
    wakes: true, treats: true, uses: true, isStep: true, place: 'stage', isPlan: true, isTimed: false, likeliest: 'in medium',
  },
  move: {
    isLook: false, soak: 'carried', stage: 'goes on', closes: false, isRemark: false, answersReminder: true, about: 'anything',
    wakes: false, treats: false, uses: true, isStep: false, place: 'move', isPlan: true, isTimed: false, likeliest: 'any',
  },
  apply: {
    isLook: false, soak: 'seen out', stage: 'goes on', closes: false, isRemark: false, answersReminder: true, about: 'seedlings',
    wakes: false, treats: false, uses: true, isStep: false, place: 'none', isPlan: true, isTimed: false, likeliest: 'germinated',
  },
  // A count to come is a slip and no plan.
  count: {
    isLook: true, soak: 'seen out', stage: 'goes on', closes: false, isRemark: false, answersReminder: false, about: 'both',
    wakes: false, treats: false, uses: true, isStep: false, place: 'none', isPlan: false, isTimed: false, likeliest: 'to count',
  },
  cut: {
    isLook: true, soak: 'over', stage: 'ends', closes: true, isRemark: false, answersReminder: true, about: 'seed',
    wakes: false, treats: false, uses: true, isStep: false, place: 'end', isPlan: true, isTimed: false, likeliest: 'sown',
  },
  pot: {
    isLook: true, soak: 'seen out', stage: 'goes on', closes: false, isRemark: false, answersReminder: true, about: 'seedlings',
    wakes: false, treats: false, uses: true, isStep: false, place: 'pot', isPlan: true, isTimed: false, likeliest: 'germinated',
  },
  leave: {
    isLook: true, soak: 'seen out', stage: 'goes on', closes: false, isRemark: false, answersReminder: true, about: 'both',
    wakes: false, treats: false, uses: true, isStep: false, place: 'none', isPlan: true, isTimed: false, likeliest: 'germinated',
  },
  gone: {
    isLook: true, soak: 'over', stage: 'ends', closes: true, isRemark: false, answersReminder: true, about: 'anything',
    wakes: false, treats: false, uses: true, isStep: false, place: 'end', isPlan: true, isTimed: false, likeliest: 'germinated',
  },
  discard: {
    isLook: true, soak: 'over', stage: 'ends', closes: true, isRemark: false, answersReminder: true, about: 'anything',
    wakes: false, treats: false, uses: true, isStep: false, place: 'end', isPlan: true, isTimed: false, likeliest: 'sown',
  },
  // It says what is to be looked at, and when; the seed may have been given out to batches by then.
  judge: { ...remark, likeliest: 'sown' },
  note: { ...remark, answersReminder: true },
  photo: remark,
  due: remark,
  misplaced: { ...nothing, uses: true },
  blank: nothing,
} as const satisfies Record<EventKind, EventMeaning>;

/**
 * Those events to whose meaning a question says yes, as the compiler knows them: it names a new kind of them wherever
 * they are told apart, and no other kind.
 */
type Those<Event, Question extends keyof EventMeaning> = Extract<Event, { readonly type: {
  [Kind in EventKind]: (typeof table)[Kind][Question] extends true ? Kind : never
}[EventKind]; }>;

const meanings: Readonly<Record<EventKind, EventMeaning>> = table;

const eventKeywords = {
  split: 'split', soak: 'soak', lift: 'lift', scarify: 'scarify', sow: 'sow', chill: 'stage', warm: 'stage', move: 'move',
  apply: 'apply', count: 'count', cut: 'cut', pot: 'pot', plant: 'leave', give: 'leave', sell: 'leave', send: 'leave', lose: 'leave',
  discard: 'discard', judge: 'judge', note: 'note', photo: 'photo', due: 'due',
} as const satisfies Record<EventKeyword, EventKind>;

export function isEventKeyword(keyword: Keyword): keyword is EventKeyword {
  return Object.hasOwn(eventKeywords, keyword);
}

/** What an event means, by its kind. */
export function meaningOf({ type }: { readonly type: EventKind }): EventMeaning {
  return meanings[type];
}

/** Whether it brings the batch into another state. */
export function isStep<Event extends { readonly type: EventKind }>(event: Event): event is Those<Event, 'isStep'> {
  return meaningOf(event).isStep;
}

/** Whether it prepares the seed. */
export function isTreatment<Event extends { readonly type: EventKind }>(event: Event): event is Those<Event, 'treats'> {
  return meaningOf(event).treats;
}

/** What a record of a keyword means to the batch that it names; undefined where it is about no batch. */
export function meaningOfKeyword(keyword: EventKeyword): EventMeaning;
export function meaningOfKeyword(keyword: Keyword): EventMeaning | undefined;
export function meaningOfKeyword(keyword: Keyword): EventMeaning | undefined {
  return isEventKeyword(keyword) ? meanings[eventKeywords[keyword]] : undefined;
}

/** Kinds that a question about their meaning picks out. */
export function kindsWhere(holds: (meaning: EventMeaning) => boolean): EventKind[] {
  return (Object.keys(table) as EventKind[]).filter(kind => holds(meanings[kind]));
}
