/** Whatever beside its treatment may bear on how seed germinates; where it differs, a comparison is not a fair one. */
import { SAME_SOWING_DAYS } from '../calendar/together.ts';
import { hasGrown, isDividedWhole } from '../journal/given-out.ts';
import type { Batch, BatchEvent } from '../journal/life.ts';
import type { Day } from '../model/day.ts';
import { factOf } from '../model/record.ts';
import type { Range } from './alike.ts';
import { portionDays } from './course.ts';
import { areSame, isWarmthOfOneUnwritten, moistureApart, stagesOf, type StageStep, type Step } from './steps.ts';
import { minutesWet, roomsApart, spellsOf, type Spell } from './surroundings.ts';
import { isActive, isSameTreatment, type Treatment } from './treatment.ts';
import { mayBeAsWarm, warmthIn, type Warmth } from './warmth.ts';

export interface Conditions {
  readonly dayZero: Day;
  /** The day on which its life began: day 0, but for seed that is looked at from a later soak on. */
  readonly begun: Day;
  /** What it was treated with before the part of its life that is looked at. */
  readonly earlier: Treatment;
  readonly isSown: boolean;
  /** Days from the first to the last portion that was sown. */
  readonly sownWithin: number;
  readonly temperature: Warmth | undefined;
  readonly medium: string | undefined;
  /** One that the journal does not define; the stages of any other are among the stages. */
  readonly regime: string | undefined;
  readonly stages: readonly StageStep[];
  readonly scarified: readonly Step[];
  readonly washed: readonly Step[];
  /** Put outdoors. */
  readonly outdoors: readonly Step[];
  /** It lay in a liquid of some kind, water included. */
  readonly isWet: boolean;
  /** How long in all. */
  readonly wet: Range | undefined;
  readonly rooms: readonly Spell[];
  /** What seed it is the rest of, where some had germinated or rotted before it was split off. */
  readonly restOf: string | undefined;
  /** Drops of a hormone or promoter were given to its seedlings. */
  readonly hasDrops: boolean;
}

/** The conditions of a batch whose life is looked at up to some event. */
export function conditionsOf(batch: Batch, dayZero: Day, events: readonly BatchEvent[]): Conditions {
  const { sowing, inherited } = batch;
  const life = [...inherited, ...events];
  const isPast = (line: unknown) => life.some(({ entry }) => entry.line === line);
  const own = sowing && isPast(sowing.line) ? sowing : undefined;
  const soaks = batch.soaks.filter(({ entry }) => isPast(entry.line));
  return {
    dayZero, begun: dayZero, earlier: [],
    isSown: own !== undefined,
    sownWithin: portionDays(batch, events),
    temperature: own && warmthIn(own.record),
    medium: plain(mediumOf(life)?.replace(DAMP, ' ')),
    regime: plain(undefinedRegime(life)),
    stages: stagesOf(life, dayZero),
    scarified: life.filter(({ type }) => type === 'scarify').map(({ entry }) => (
      { what: 'scarified', warmth: undefined, day: entry.moment.day - dayZero })),
    washed: soaks.flatMap(({ doses, start }) => doses.flatMap(({ agent }) => (
      agent?.role === 'disinfectant' ? [{ what: agent.word, warmth: undefined, day: start.day - dayZero }] : []))),
    outdoors: life.filter(({ entry }) => factOf(entry.record, 'outdoors')).map(({ entry }) => (
      { what: 'outdoors', warmth: undefined, day: entry.moment.day - dayZero })),
    isWet: soaks.length > 0,
    wet: minutesWet(soaks),
    rooms: spellsOf(life, dayZero),
    restOf: restOf(batch),
    hasDrops: life.some(event => event.type === 'apply' && event.doses.some(isActive)),
  };
}

/** Seed is sown in what is damp, whether or not that is written. */
const DAMP = /\b(?:damp|moist|wet)(?:ened)?\b/giu;

/** Where the seed was sown, up to then: a later sowing in something else is of no account. */
function mediumOf(life: readonly BatchEvent[]): string | undefined {
  const event = life.findLast(({ type, entry }) => type === 'sow' && factOf(entry.record, 'in'));
  return event && factOf(event.entry.record, 'in')?.value.text;
}

/** A regime of which the journal does not say the stages. */
function undefinedRegime(life: readonly BatchEvent[]): string | undefined {
  const event = life.findLast(each =>
    each.type === 'sow' && each.regime === undefined && factOf(each.entry.record, 'regime'));
  return event && factOf(event.entry.record, 'regime')?.value.text;
}

function plain(text: string | undefined): string | undefined {
  return text?.toLowerCase().replace(/\s+/g, ' ').trim();
}

function restOf({ inherited, made, parent }: Batch): string | undefined {
  const last = inherited.findLast(event => event.type === 'count');
  if (last?.type !== 'count' || !hasGrown(last.after)) return undefined;
  if (parent && last.batch === parent && isDividedWhole(parent)) return undefined;
  // Parts of one split are rests of the same seed.
  return `${parent?.path ?? ''} ${made.moment?.day ?? ''}`;
}

export interface Differences {
  /** What differs, in plain words. */
  readonly differing: readonly string[];
  /** What differs, and matters less as the record stands; each the end of a sentence. */
  readonly minor: readonly string[];
  /** What is written for one of the two only, so that nobody can say. */
  readonly unwritten: readonly string[];
}

/** What differs between two batches up to an age in days; what was done later cannot have mattered by then. */
export function differencesOf(a: Conditions, b: Conditions, age: number): Differences {
  const [differing, minor, unwritten]: [string[], string[], string[]] = [[], [], []];
  const hold = (name: string, x: unknown, y: unknown, isSame: boolean) => {
    if (x !== undefined && y !== undefined) {
      if (!isSame) differing.push(name);
    } else if (x !== y) unwritten.push(name);
  };
  hold('temperature', a.temperature, b.temperature, mayBeAsWarm(a.temperature, b.temperature));
  hold('medium', a.medium, b.medium, a.medium === b.medium);
  const { apart, isAsWarm, isUnwritten } = roomsApart(a.rooms, b.rooms, age);
  // Where a thermometer says that it was as warm, the place matters less.
  if (apart !== undefined && isAsWarm) minor.push(`the sides were in different places: ${apart}`);
  else if (apart !== undefined) differing.push(`place (${apart})`);
  else if (isUnwritten) unwritten.push('place');
  if (isWarmthOfOneUnwritten(a.stages, b.stages, age)) unwritten.push('temperature of a stage');
  const moisture = moistureApart(a.stages, b.stages, age);
  if (moisture === 'unwritten') unwritten.push('moisture of the seed in a stage');
  if (a.regime !== b.regime || !areSame(a.stages, b.stages, age)) differing.push('warm and cold stages');
  else if (moisture === 'one-dry') differing.push('warm and cold stages (one side was still dry)');
  if (!areSame(a.scarified, b.scarified, age)) differing.push('scarification');
  if (!areSame(a.washed, b.washed, age)) differing.push('disinfection');
  if (!areSame(a.outdoors, b.outdoors, age)) differing.push('standing outdoors');
  if (a.isSown !== b.isSown) differing.push('sowing (one side was never sown)');
  else if (areApart(a, b)) {
    differing.push(Math.abs(a.begun - b.begun) > AGED_DAYS ? 'sowing date and age of the seed' : 'sowing date');
  }
  if (!isSameTreatment(a.earlier, b.earlier)) differing.push('earlier soaks');
  if (a.restOf !== b.restOf) {
    const which = a.restOf !== undefined && b.restOf !== undefined ? 'both sides are rests' : 'one side is the rest';
    differing.push(`the seed (${which} of seed that had started to germinate or rot)`);
  }
  return { differing, minor, unwritten };
}

/** Dry seed that is sown so many days later is older seed, not only later sown. Common practice, no source. */
const AGED_DAYS = 90;

function areApart(a: Conditions, b: Conditions): boolean {
  return [a.dayZero - b.dayZero, a.begun - b.begun, a.sownWithin - b.sownWithin]
    .some(days => Math.abs(days) > SAME_SOWING_DAYS);
}
