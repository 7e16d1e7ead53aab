/** Batches that no verdict may rest on, because a record of theirs cannot be right, or is lost. */
import { afterItsClose, wrongCuts } from '../journal/closing.ts';
import type { Batch, BatchEvent, Lot } from '../journal/life.ts';
import { missingBatches, parentOf } from '../journal/strays.ts';
import { overtaken } from '../journal/taken.ts';
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
  const lost = lostUnder(lot);
  const batches = [...lot.batches.values()];
  const faults = new Map(batches.flatMap(batch => {
    const why = ownFault(batch, today) ?? strayFault(batch, lost);
    return why === undefined ? [] : [[batch, undefinedBecause(why)] as const];
  }));
  const last = batches.flatMap(looksAt).reduce((day, { entry }) => Math.max(day, entry.moment.day), -Infinity);
  memo.set(lot, { last, today, faults });
  return faults;
}

/** What says what was seen: no look can be planned. */
function looksAt({ events }: Batch): BatchEvent[] {
  return events.filter(({ type }) => type === 'count' || type === 'cut');
}

function ownFault(batch: Batch, today: Day): string | undefined {
  if (batch.unread) return 'a record of it, or of the seed it was split from, has an error';
  const ahead = looksAt(batch).find(({ entry }) => entry.moment.day > today);
  if (ahead) {
    const { entry: { record, moment } } = ahead;
    return `its “${record.keyword}” of ${isoOf(moment.day)} is dated after today (${isoOf(today)})`;
  }
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

/** Batches that do not exist but that more than a remark was written of, by what they would be a part of. */
function lostUnder(lot: Lot): ReadonlyMap<string, string> {
  const lost = new Map<string, string>();
  if (lot.strays.length === 0) return lost;
  for (const [path, entries] of missingBatches(lot)) {
    const isTold = entries.some(({ record }) => meaningOfKeyword(record.keyword)?.isRemark !== true);
    if (isTold && !lost.has(parentOf(path))) lost.set(parentOf(path), path);
  }
  return lost;
}

/** What names no part of a batch may mean any other of its parts, or the batch itself. */
function strayFault(batch: Batch, lost: ReadonlyMap<string, string>): string | undefined {
  for (let each: Batch | undefined = batch; each; each = each.parent) {
    const path = lost.get(each.path);
    if (path !== undefined) return `a record names ${path}, which no “split” gives out, and may mean another batch`;
  }
  return undefined;
}
