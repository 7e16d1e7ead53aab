/** What is due: from the journal and the present to a list, the overdue first. */
import type { Journal } from '../journal/journal.ts';
import { elapsed, isOver, type Moment } from '../journal/moment.ts';
import type { Day } from '../model/day.ts';
import { once } from '../model/once.ts';
import { isoMoment, laterOf, recordLine } from './ask.ts';
import { dueOfBatch, dueOfThings, type Due } from './due-sources.ts';
import { isLeftOff, PAST_DAYS } from './left-off.ts';
import { whereNow, whereSeedNow, whereText } from './places.ts';
import { standingOf } from './standing.ts';
import { staysOf } from './stays.ts';

/** `long ago`: undone for more than PAST_DAYS. It is put apart, so that it hides nothing that can be done. */
export const dueGroups = ['overdue', 'today', 'this week', 'later', 'long ago'] as const;
export type DueGroup = (typeof dueGroups)[number];

export interface DueItem extends Due {
  /** Stable from one revision to the next, and unique in the list. */
  readonly key: string;
  readonly plant: string | undefined;
  readonly day: Day;
  readonly minutes: number | undefined;
  readonly group: DueGroup;
  /** 0 for what is not overdue, and for what is so since an hour of today. */
  readonly overdueDays: number;
  /** Undefined where one of the times of day is not known. */
  readonly overdueMinutes: number | undefined;
  /** Where the batch lies; `place` in words, undefined where that is not known. */
  readonly places: readonly string[];
  readonly place: string | undefined;
  /** `ask` as a line: at the due moment, or at the present where that has passed. */
  readonly action: string | undefined;
}

/** Days that begin with today and are called this week. */
const WEEK = 7;

/** What can still be acted on: all that is due but what is put apart. */
export function due(journal: Journal, now: Moment): DueItem[] {
  return everythingDue(journal, now).filter(item => !isLongAgo(item));
}

/** What nobody acted on for so long that it is put apart. */
export function isLongAgo({ group }: DueItem): boolean {
  return group === 'long ago';
}

/**
 * All that is due, the overdue first, then by time; what has no time of day stands at the head of its day. Records of
 * dates later than the present have not happened yet and are listed as plans. At the end stands what is long ago: the
 * counts of batches that were left off, and all else that has been overdue for more than PAST_DAYS.
 */
export function everythingDue(journal: Journal, now: Moment): DueItem[] {
  const items: DueItem[] = [];
  const keys = new Map<string, number>();
  for (const lot of journal.lots()) {
    for (const batch of lot.batches.values()) {
      const where = once(() => whereNow(staysOf(lot), batch.path, now));
      const whereSeed = once(() => whereSeedNow(staysOf(lot), batch.path, now));
      const standing = standingOf(batch, now);
      const isLeft = once(() => isLeftOff(standing, now));
      for (const each of dueOfBatch(journal, lot, standing, now)) {
        const isSeed = each.kind === 'count' || each.kind === 'stage';
        const places = each.id === batch.path ? (isSeed ? whereSeed() : where()) : whereNow(staysOf(lot), each.id, now);
        const item = itemOf(each, keyOf(each, keys), lot.plant, places, journal.zone, now);
        items.push(each.kind === 'count' && isLeft() ? { ...item, group: 'long ago' } : item);
      }
    }
  }
  for (const each of dueOfThings(journal, now)) {
    items.push(itemOf(each, keyOf(each, keys), undefined, [], journal.zone, now));
  }
  return items.sort(inDueOrder);
}

/** The order of the list, for items of several journals too: by what the clock of each says. */
export function inDueOrder(a: DueItem, b: DueItem): number {
  return ranks[a.group] - ranks[b.group] || a.day - b.day || (a.minutes ?? -1) - (b.minutes ?? -1);
}

const ranks: Readonly<Record<DueGroup, number>> = { overdue: 0, today: 1, 'this week': 2, later: 3, 'long ago': 4 };

function itemOf(
  { kind, what, id, at, entry, since, ask, isEndMissing }: Due, key: string,
  plant: string | undefined, places: readonly string[],
  zone: string | undefined, now: Moment,
): DueItem {
  const late = isOver(at, now, zone);
  const isLong = kind !== 'count' && now.day - at.day > PAST_DAYS;
  const timed = late && at.minutes !== undefined && now.minutes !== undefined;
  return {
    kind, what, id, at, entry, since, ask, isEndMissing, key, plant, places, place: whereText(places),
    day: at.day, minutes: at.minutes,
    group: isLong ? 'long ago' : late ? 'overdue' : at.day === now.day ? 'today' : at.day - now.day < WEEK ? 'this week' : 'later',
    overdueDays: Math.max(0, now.day - at.day),
    overdueMinutes: timed ? elapsed(at, now, zone).least : undefined,
    action: ask && recordLine(ask, laterOf(at, now)),
  };
}

/** Two of one kind that came on one day, without times of day, are told apart by their order. */
function keyOf({ kind, id, since }: Due, keys: Map<string, number>): string {
  const key = `${kind}/${id}/${isoMoment(since)}`;
  const n = (keys.get(key) ?? 0) + 1;
  keys.set(key, n);
  return n === 1 ? key : `${key}/${n}`;
}
