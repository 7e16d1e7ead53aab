/** When to begin for a wanted day, when what is begun ends, and what the answer is based on. */
import type { Guide } from '../journal/guides.ts';
import type { Journal } from '../journal/journal.ts';
import { isUndefined, undefinedBecause, type Undefined } from '../measures/measured.ts';
import type { Day } from '../model/day.ts';
import { printQuantity, type Duration } from '../model/quantity.ts';
import { scheduleFor, scheduleFrom, type Around, type Schedule } from './backwards.ts';
import { daysToLeaf, type OwnDays } from './own-days.ts';
import type { RegimeStage } from './regime-match.ts';

/** What fixes the dates: a day by which the stages have ended or first leaves are there, or the day of the start. */
export type Fixed =
  | { readonly by: 'end' | 'leaf'; readonly day: Day }
  | { readonly by: 'sowing' | 'start'; readonly day: Day };

/** Days from germination to a first leaf: as given, or as the own records have it. */
export type LeafDays = { readonly days: number; readonly own: OwnDays | undefined };

export interface WhenAsked {
  readonly stages: readonly RegimeStage[];
  readonly fixed: Fixed;
  readonly soak: Duration | undefined;
  /** Undefined where no leaf is asked for; undefined with its reason: nothing can be said of leaves. */
  readonly leaf: LeafDays | Undefined | undefined;
  readonly today: Day;
}

/** A length of soak that guides give for a plant. */
export interface GuideSoak {
  readonly soak: Duration;
  readonly guides: readonly Guide[];
}

export interface When extends WhenAsked {
  readonly schedule: Schedule | Undefined;
  /** What becomes of it if it is begun today; undefined where the start is not past. */
  readonly begunToday: Schedule | undefined;
}

export function when(asked: WhenAsked): When {
  const { stages, fixed, today } = asked;
  const around = aroundOf(asked);
  const schedule = scheduleOf(asked, around);
  const isWanted = fixed.by === 'end' || fixed.by === 'leaf';
  const isLate = isWanted && !isUndefined(schedule) && startOf(schedule) < today;
  return { ...asked, schedule, begunToday: isLate ? begunOn(today, stages, around) as Schedule : undefined };
}

/** What was wanted by a day: the end of the last stage, or the first leaves. */
export function wantedOf({ end, ready }: Schedule, { by }: Fixed): Day {
  return by === 'leaf' ? ready : end;
}

function aroundOf({ soak, leaf }: WhenAsked): Around {
  return { soak, daysAfter: leaf && !isUndefined(leaf) ? leaf.days : 0 };
}

/** The day on which something has to be done first. */
export function startOf({ soak, sow }: Schedule): Day {
  return soak ?? sow;
}

function scheduleOf({ stages, fixed: { by, day }, leaf }: WhenAsked, around: Around): Schedule | Undefined {
  switch (by) {
    case 'leaf':
      // Dates without them would be those of the end of the regime.
      return !leaf || isUndefined(leaf)
        ? undefinedBecause(`the days from germination to a first leaf are unknown${leaf ? ` (${leaf.undefined})` : ''}`)
        : scheduleFor(day, stages, around);
    case 'end': {
      const bare = scheduleFor(day, stages, { ...around, daysAfter: 0 });
      return isUndefined(bare) ? bare : scheduleFrom(bare.sow, stages, around);
    }
    case 'sowing': return scheduleFrom(day, stages, around);
    case 'start': return begunOn(day, stages, around);
  }
}

function begunOn(day: Day, stages: readonly RegimeStage[], around: Around): Schedule | Undefined {
  const sown = scheduleFrom(day, stages, around);
  if (isUndefined(sown)) return sown;
  return scheduleFrom(day + (sown.sow - startOf(sown)), stages, around);
}

/** What the records of the journal say of the days to a first leaf, rounded up; undefined with the reason. */
export function ownLeafDays(journal: Journal | undefined, plant: string | undefined): LeafDays | Undefined {
  if (plant === undefined || !journal) return undefinedBecause('no plant is named');
  const own = daysToLeaf(journal, plant);
  if (!own) return undefinedBecause(`no count in this journal has a first leaf of ${plant} or its genus`);
  return { days: Math.ceil(own.median), own };
}

/** How long guides soak a plant before its stages; those that name it most fully first, each length once. */
export function guideSoaks(journal: Journal, plant: string | undefined): GuideSoak[] {
  const byLength = new Map<string, { soak: Duration; guides: Guide[] }>();
  for (const guide of journal.guides.of(plant)) {
    const { facts } = guide.record;
    // A soak that is written behind a stage comes after the cold, and so not before the sowing.
    if (!guide.soak || facts.find(({ type }) => type === 'duration' || type === 'stage')?.type === 'stage') continue;
    const length = printQuantity(guide.soak);
    const same = byLength.get(length);
    if (same) same.guides.push(guide);
    else byLength.set(length, { soak: guide.soak, guides: [guide] });
  }
  return [...byLength.values()];
}
