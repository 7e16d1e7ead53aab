/** A date that is a year off: in January the old year is still in the hand. */
import type { JournalFile } from '../journal/journal-file.ts';
import type { BatchEvent, Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { addMonths, isoOf, type Day } from '../model/day.ts';
import type { WrittenDate } from '../model/record.ts';
import { found, type Found, type LotCheck } from './check.ts';

interface Neighbours {
  readonly before: Day;
  /** Undefined: nothing is written below, and so what has come by today. */
  readonly after: Day | undefined;
}

/**
 * The day that was meant by one that stands between two others and does not belong there, where the same day of the
 * next year does, or of the year before for a day to come. Undefined for any other. Common practice, no source.
 */
function meantBy(day: Day, { before, after }: Neighbours, today: Day): Day | undefined {
  const last = after ?? today;
  if (before > last || (day >= before && day <= last)) return undefined;
  const other = addMonths(day, day > today ? -12 : 12);
  return other >= before && other <= last ? other : undefined;
}

function slipOf(
  line: Found['line'], { day, start, end }: WrittenDate, beside: Neighbours, today: Day,
): Found[] {
  const meant = meantBy(day, beside, today);
  if (meant === undefined) return [];
  const { before, after } = beside;
  return [found(line, 'year-slip', { start, end }, {
    date: isoOf(day), before: isoOf(before), after: after === undefined ? 'today' : isoOf(after), meant: isoOf(meant),
  }, { fixes: [{ title: `Change to “${isoOf(meant)}”`, start, end, text: isoOf(meant) }] })];
}

/** `day` lines between two others, or the last one of a file. */
export function slippedDays({ days }: JournalFile, now: Moment): Found[] {
  return days.flatMap((line, n) => {
    const [before, date, after] = [n - 1, n, n + 1].map(each => days[each]?.content.record?.date);
    // What stands below one that cannot be read is not known.
    if (!before || !date || (n + 1 < days.length && !after)) return [];
    return slipOf(line, date, { before: before.day, after: after?.day }, now.day);
  });
}

/** Records of a lot with a date on their line, between two others of the lot in one file. */
export const yearSlip: LotCheck = function* (lot, { now }) {
  for (const events of byFile(lot)) {
    for (const [n, { entry: { line, record: { date } }, batch, type }] of events.entries()) {
      const before = events[n - 1]?.entry.moment.day;
      if (!date || before === undefined) continue;
      // Each of these is a problem of its own.
      const isSaid = type === 'count' && (date.day > now.day || date.day < (batch.sowing?.moment.day ?? -Infinity));
      if (!isSaid) yield* slipOf(line, date, { before, after: events[n + 1]?.entry.moment.day }, now.day);
    }
  }
};

/** What happened to a lot, as it stands in each file from top to bottom. A reminder has its own day. */
function byFile({ batches }: Lot): BatchEvent[][] {
  const files = new Map<string, BatchEvent[]>();
  for (const batch of batches.values()) {
    for (const event of batch.events) {
      if (event.type === 'due' || !Number.isFinite(event.entry.moment.day)) continue;
      const { name } = event.entry.line.store;
      const events = files.get(name);
      if (events) events.push(event);
      else files.set(name, [event]);
    }
  }
  return [...files.values()].map(events => events.sort((a, b) => a.entry.line.number - b.entry.line.number));
}
