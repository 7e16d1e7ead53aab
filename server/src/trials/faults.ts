/** Batches that no verdict may rest on, because a record of theirs cannot be right, or is lost. */
import { afterItsClose, wrongCuts } from '../journal/closing.ts';
import type { Batch, BatchEvent, Lot } from '../journal/life.ts';
import { isSeenAhead, saysWhatWasSeen } from '../journal/seen.ts';
import { missingBatches, parentOf } from '../journal/strays.ts';
import { overtaken } from '../journal/taken.ts';
import { fallingTotals, givenTooMany, isSownTooMany, tooManySeedlings } from '../journal/wrong-numbers.ts';
import { undefinedBecause, type Undefined } from '../measures/measured.ts';
import { isoOf, type Day } from '../model/day.ts';
import { rangeText } from '../model/estimate.ts';
import { meaningOfKeyword } from '../model/events.ts';

export type Faults = ReadonlyMap<Batch, Undefined>;

interface Known {
  /** The last day of a look that is written; the faults are the same on all days from then on. */
  readonly last: Day;
  readonly today: Day;
  readonly faults: Faults;
}

const memo = new WeakMap<Lot, Known>();

/** The batches of a lot that have such a record, each with the first reason; one object while they are the same. */
export function faultyBatches(lot: Lot, today: Day): Faults {
  const known = memo.get(lot);
  if (known && Math.min(today, known.last) === Math.min(known.today, known.last)) return known.faults;
  const batches = [...lot.batches.values()];
  const shared = sharedFaults(lot);
  const faults = new Map(batches.flatMap(batch => {
    const why = ownFault(batch, today) ?? sharedFault(batch, shared);
    return why === undefined ? [] : [[batch, undefinedBecause(why)] as const];
  }));
  const last = batches.flatMap(({ events }) => events.filter(saysWhatWasSeen))
    .reduce((day, { entry }) => Math.max(day, entry.moment.day), -Infinity);
  memo.set(lot, { last, today, faults });
  return faults;
}

/** What the numbers of a record cannot be. */
function wrongNumber(event: BatchEvent): string | undefined {
  switch (event.type) {
    case 'count': {
      // The day in words only where it is said: a lot has many counts.
      const day = () => isoOf(event.entry.moment.day);
      const [fall] = fallingTotals(event);
      if (fall) return `its total of ${fall.fact.what} falls from ${fall.before} to ${fall.fact.n.value} on ${day()}`;
      const [many] = tooManySeedlings(event);
      return many && `${many.n} ${many.what} are more than the ${many.germinated} that had germinated by ${day()}`;
    }
    case 'sow': return isSownTooMany(event) ? 'more of its seeds were sown than it has' : undefined;
    case 'split': case 'leave': return givenTooMany(event) ? 'more of its seeds were taken out than it has' : undefined;
    default: return undefined;
  }
}

function ownFault(batch: Batch, today: Day): string | undefined {
  if (batch.unread) return 'a record of it, or of the seed it was split from, has an error';
  const ahead = batch.events.find(event => isSeenAhead(event, today));
  if (ahead) {
    const { entry: { record, moment } } = ahead;
    return `its “${record.keyword}” of ${isoOf(moment.day)} is dated after today (${isoOf(today)})`;
  }
  const wrong = batch.events.map(wrongNumber).find(why => why !== undefined);
  if (wrong !== undefined) return wrong;
  const [taken] = overtaken(batch);
  if (taken) return `${taken.n} ${taken.what} are more than its counts have (${taken.germinated})`;
  const [late] = afterItsClose(batch);
  if (late) {
    const { event: { entry }, closedBy } = late;
    const end = closedBy.entry;
    return `its “${entry.record.keyword}” of ${isoOf(entry.moment.day)} comes after it was closed by `
      + `“${end.record.keyword}” on ${isoOf(end.moment.day)}`;
  }
  const [cut] = wrongCuts(batch);
  return cut && `its cut test counts ${cut.sum}, but ${rangeText(cut.expected)} had not germinated`;
}

/** By the path of a batch what is wrong with all of its parts, too: nobody can say which of them is meant. */
function sharedFaults(lot: Lot): ReadonlyMap<string, string> {
  const faults = new Map<string, string>();
  const add = (path: string, why: string) => {
    if (!faults.has(path)) faults.set(path, why);
  };
  for (const { path, why } of lot.doubts) add(lot.batches.has(path) ? path : lot.id, why);
  for (const { path } of lot.twice) add(path, `${path} is given out twice`);
  for (const [path, entries] of lot.strays.length === 0 ? [] : missingBatches(lot)) {
    const isTold = entries.some(({ record }) => meaningOfKeyword(record.keyword)?.isRemark !== true);
    if (isTold) add(parentOf(path), `a record names ${path}, which no “split” gives out, and may mean another batch`);
  }
  for (const batch of lot.batches.values()) {
    const { path, events, parts } = batch;
    for (const event of events) {
      const { entry: { record, moment } } = event;
      const written = () => `the “${record.keyword}” of ${isoOf(moment.day)}`;
      if (event.type === 'misplaced') add(path, `${written()} may mean any part of ${path}, all of whose seed was split off`);
      else if (isOfNoSeed(event, batch)) add(path, `${written()} may mean any part of ${path}, with whose own seed nothing was done`);
      else if (event.type === 'split' && givenTooMany(event)) {
        for (const part of parts.get(record) ?? []) add(part.path, `more seeds were split off ${path} than it has`);
      }
    }
  }
  return faults;
}

/** A look at what stayed in the packet, while parts of it were elsewhere. */
function isOfNoSeed(event: BatchEvent, { origin, children }: Batch): boolean {
  return saysWhatWasSeen(event) && origin === undefined
    && children.some(({ made: { moment } }) => moment === undefined || moment.day <= event.entry.moment.day);
}

/** That of the batch, or of what it is a part of. */
function sharedFault(batch: Batch, faults: ReadonlyMap<string, string>): string | undefined {
  if (faults.size === 0) return undefined;
  for (let each: Batch | undefined = batch; each; each = each.parent) {
    const why = faults.get(each.path);
    if (why !== undefined) return why;
  }
  return undefined;
}
