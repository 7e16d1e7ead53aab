/** Soaks whose end is not written, or written wrongly. */
import { recordLine } from '../../../calendar/ask.ts';
import type { JournalLine } from '../../../journal/journal-file.ts';
import { isGivenOut } from '../../../journal/given-out.ts';
import type { Batch, DatedEntry, Lot, Soak } from '../../../journal/life.ts';
import { elapsed, isBefore, printMoment, printTime, type Moment } from '../../../journal/moment.ts';
import { addMonths, isoOf, LAST_DAY, type Day } from '../../../model/day.ts';
import { factOf } from '../../../model/record.ts';
import { listed } from '../../../syntax/nearest.ts';
import { diaryOf, placeRecords } from '../../record-place.ts';
import { lifeOf } from '../../events.ts';
import { lineEndAt } from '../below.ts';
import { insert, livedAs, replace, type Mend, type MendContext, type Mender } from './mend.ts';

/** The end of a soak as each of the batches has it that lay in it. */
interface Lain {
  readonly batch: Batch;
  readonly soak: Soak;
}

/** A split in the middle of a soak gives each part its own end; what was given out lies there under other names. */
function lainIn({ batches }: Lot, line: JournalLine): Lain[] {
  return [...batches.values()].filter(batch => !isGivenOut(batch)).flatMap(batch => {
    const soak = batch.soaks.find(({ entry }) => entry.line === line);
    return soak ? [{ batch, soak }] : [];
  });
}

/** Seed went on to something else: it was lifted then, or lay there for the time until then. */
export const liftMissing: Mender = ({ entry }, context) => {
  const lot = lifeOf(context.journal, entry)?.lot;
  const lain = lot ? lainIn(lot, entry.line) : [];
  const next = lain.flatMap(({ batch, soak: { endedBy, endEntry } }) =>
    (endedBy === 'next' && endEntry?.record.subject?.text === batch.path ? [{ path: batch.path, endEntry }] : []));
  return [...liftsBefore(next), ...lengthOf(lain, context)];
};

function liftsBefore(next: readonly { path: string; endEntry: DatedEntry }[]): Mend[] {
  const [first] = next;
  if (!first) return [];
  const edits = next.map(({ path, endEntry }) => {
    const { line, record, moment } = endEntry;
    const time = moment.minutes === undefined ? '' : ` ${printTime(moment.minutes)}`;
    const when = record.date ? ` ${printMoment(moment)}` : time;
    return insert(line, record.keywordSpan.start, `lift ${path}${when}${lineEndAt(line)}`);
  });
  const { endEntry: { record, moment } } = first;
  const title = next.length === 1
    ? `Write “lift ${first.path} ${printMoment(moment)}” before the “${record.keyword}”`
    : `Write the lifts of ${listed(next.map(({ path }) => path), 'and')} before the next record`;
  return [{ title, edits }];
}

/** Only where both ends have their times, and all batches the same. */
function lengthOf(lain: readonly Lain[], { journal: { zone } }: MendContext): Mend[] {
  const [first, ...others] = lain.filter(({ soak: { endedBy } }) => endedBy === 'next').map(({ soak }) => soak);
  const { end } = first ?? {};
  const isSame = (other: Moment | undefined) => other?.day === end?.day && other?.minutes === end?.minutes;
  if (!first || !end || !others.every(other => isSame(other.end))) return [];
  const { line, record } = first.entry;
  if (factOf(record, 'duration') ?? factOf(record, 'until')) return [];
  const { least, most } = elapsed(first.start, end, zone);
  if (least !== most || least === 0) return [];
  const duration = least % 15 === 0 ? `${least / 60} h` : `${least} min`;
  const at = record.facts.at(-1)!.end;
  return [{ title: `Write ${duration} on the soak`, edits: [insert(line, at, `, ${duration}`)] }];
}

/** It lies there still, for too long. */
export const soakTooLong: Mender = ({ entry }, { journal, file, now }) => {
  const lot = lifeOf(journal, entry)?.lot;
  const running = lot ? lainIn(lot, entry.line).filter(({ batch, soak }) => !soak.end && !batch.closed) : [];
  const diary = diaryOf(journal, now.day, file);
  if (running.length === 0 || !diary) return [];
  const lifts = running.map(({ batch: { path } }) =>
    recordLine({ keyword: 'lift', subject: path, facts: undefined, timed: true }, now));
  const { at, text } = placeRecords(diary, now.day, lifts);
  return [{
    title: `Write ${listed(lifts.map(lift => `“${lift}”`), 'and')}: the seed comes out now`,
    edits: [{ file: diary.name, line: at.line, start: at.character, end: at.character, text }],
  }];
};

/** Days after the start within which an end that lies before it can have been meant. */
const NEAR = 7;

/** The day after, or the year after where a winter's night was slept through. */
function meantEnd({ day, minutes }: Moment, start: Moment): Day | undefined {
  return [day + 1, addMonths(day, 12)]
    .find(meant => meant <= LAST_DAY && !isBefore({ day: meant, minutes }, start) && meant - start.day <= NEAR);
}

export const endBeforeStart: Mender = ({ entry }, context) => {
  const lived = livedAs('soak', entry, context);
  const until = factOf(entry.record, 'until');
  if (!lived || !until) return [];
  const { start } = lived.event.soak;
  const end: Moment = { day: until.date.day, minutes: until.time?.minutes };
  const meant = isBefore(end, start) ? meantEnd(end, start) : undefined;
  if (meant === undefined) return [];
  return [{ title: `Change to “${isoOf(meant)}”`, edits: [replace(entry.line, until.date, isoOf(meant))], evident: true }];
};

/** It is another batch of the lot that lies in a soak then, or the day is one before the soak. */
export const liftWithoutSoak: Mender = ({ entry }, context) => {
  const lived = livedAs('lift', entry, context);
  if (!lived || lived.event.soak) return [];
  const { lot, batch, event: { entry: { line, moment, record } } } = lived;
  const others = [...lot.batches.values()]
    .filter(other => other !== batch && other.soaks.some(soak => isLyingIn(soak, moment)));
  const { date } = record;
  const next = batch.soaks.find(({ start, endedBy }) => isBefore(moment, start) && endedBy !== 'lift');
  const meant = date && next ? meantEnd(moment, next.start) : undefined;
  return [
    ...others.slice(0, MOST).map(({ path }): Mend => ({
      title: `Change to “${path}”, which is in a soak`, edits: [replace(line, record.subject!, path)],
      ...(others.length === 1 && meant === undefined && { evident: true }),
    })),
    ...(meant === undefined ? [] : [{ title: `Change to “${isoOf(meant)}”`, edits: [replace(line, date!, isoOf(meant))] }]),
  ];
};

/** Batches that are worth naming; of more any may be meant. */
const MOST = 3;

/** Whether seed can be lifted from a soak at a moment: it was put in before and is not out yet. */
function isLyingIn({ start, end, endedBy }: Soak, moment: Moment): boolean {
  if (isBefore(moment, start) || endedBy === 'lift') return false;
  return endedBy !== 'next' || !end || !isBefore(end, moment);
}
