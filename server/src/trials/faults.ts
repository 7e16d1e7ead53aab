/** Batches that no verdict may rest on, because a record of theirs cannot be right, or is lost. */
import { afterItsClose, wrongCuts } from '../journal/closing.ts';
import type { Batch, Lot } from '../journal/life.ts';
import { missingBatches, parentOf } from '../journal/strays.ts';
import { overtaken } from '../journal/taken.ts';
import { undefinedBecause, type Undefined } from '../measures/measured.ts';
import { isoOf } from '../model/day.ts';
import { rangeText } from '../model/estimate.ts';
import { meaningOfKeyword } from '../model/events.ts';

const memo = new WeakMap<Lot, ReadonlyMap<Batch, Undefined>>();

/** The batches of a lot that have such a record, each with the first reason. */
export function faultyBatches(lot: Lot): ReadonlyMap<Batch, Undefined> {
  const known = memo.get(lot);
  if (known) return known;
  const lost = lostUnder(lot);
  const faulty = new Map([...lot.batches.values()].flatMap(batch => {
    const why = ownFault(batch) ?? strayFault(batch, lost);
    return why === undefined ? [] : [[batch, undefinedBecause(why)] as const];
  }));
  memo.set(lot, faulty);
  return faulty;
}

function ownFault(batch: Batch): string | undefined {
  if (batch.unread) return 'a record of it, or of the seed it was split from, has an error';
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
