/** The head of a record: the subject, on some records the plant's name, then a date and a time where there is one. */
import { keywords, type Keyword } from '../model/keywords.ts';
import type { Span, Written, WrittenDate, WrittenTime } from '../model/record.ts';
import { readDate, readTime, reportDate, reportTime } from './dates.ts';
import { beginsFact, type Taken } from './fact-types.ts';
import type { Atom, Piece } from './grammar.ts';
import { meantMoment } from './meant-dates.ts';
import { readPlant } from './plant.ts';
import { replacement, shown, spanFrom, UNDATED, type LineReader } from './reader.ts';
import { reportStray } from './stray.ts';
import { isShaped, readSubject, reportNoSubject, standsAlone, subjectWords } from './subject.ts';

const partsOfDay = /^(?:morning|noon|midday|afternoon|evening|night|midnight|a\.?m\.?|p\.?m\.?)$/i;
const daysInWords = /^(?:today|yesterday|tomorrow|now|(?:mon|tues|wednes|thurs|fri|satur|sun)day)$/i;
const monthAndDay = /^(?:(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.? \d{1,2}|\d{1,2}\.? (?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.?)$/i;

export interface Head {
  readonly subject: Written | undefined;
  readonly plant: Written | undefined;
  readonly date: WrittenDate | undefined;
  readonly time: WrittenTime | undefined;
}

interface Moment {
  readonly date: WrittenDate | undefined;
  readonly time: WrittenTime | undefined;
}

const never: Moment = { date: undefined, time: undefined };

export function readHead(
  reader: LineReader, takes: Taken, keywordSpan: Span, pieces: readonly Piece[],
): Head {
  const { keyword } = takes;
  const { subject: kind, dated } = keywords[keyword];
  const first = pieces[0];
  let subject: Written | undefined;
  let plant: Written | undefined;
  let moment = never;
  if (!first) {
    reportNoSubject(reader, keyword, keywordSpan, subjectWords[kind]);
    if (kind === 'date') reader.add(UNDATED);
  } else if (kind === 'date') moment = readDay(reader, takes, pieces);
  else if (kind === 'plant') subject = readPlant(reader, takes, pieces);
  else {
    let from = 0;
    if (isMoment(first)) {
      const turned = subjectBehind(reader, takes, pieces);
      if (turned === undefined) reportNoSubject(reader, keyword, keywordSpan, subjectWords[kind]);
      else reportTurned(reader, keyword, pieces, turned);
      if (turned !== undefined) return { subject, plant, ...readMoment(reader, takes, pieces.slice(0, turned), 0) };
    } else {
      subject = readSubject(reader, takes, pieces);
      from = after(pieces, subject ?? reader.problems.at(-1)!);
      // What stands behind an id that is none belongs to it as likely as not.
      if (!subject) while (from < pieces.length && !isMoment(pieces[from]!)) from++;
    }
    if (kind === 'new lot' && subject) {
      const to = momentAtEnd(pieces, from);
      if (to === from) reportNoSubject(reader, keyword, subject, "the id and then the plant's name");
      else plant = readPlant(reader, takes, pieces.slice(from, to));
      from = to;
    }
    moment = dated === 'no' ? readNone(reader, takes, pieces, from) : readMoment(reader, takes, pieces, from);
  }
  return { subject, plant, date: moment.date, time: moment.time };
}

/** Where the subject stands behind the date: `count 2026-01-19 VER-24/A`; undefined where none does. */
function subjectBehind(reader: LineReader, { keyword }: Taken, pieces: readonly Piece[]): number | undefined {
  const index = pieces.findIndex(piece => !isMoment(piece));
  const piece = pieces[index];
  const alone = piece?.kind === 'word' && index === pieces.length - 1 && standsAlone(reader.line, piece.end);
  return alone && isShaped(keywords[keyword].subject, piece.text) ? index : undefined;
}

function reportTurned(reader: LineReader, keyword: Keyword, pieces: readonly Piece[], index: number): void {
  const subject = pieces[index]!;
  const { start } = pieces[0]!;
  const moment = reader.line.slice(start, pieces[index - 1]!.end);
  reader.report('stray-text', subject, {
    text: reader.shown(subject), suggestion: `Write it right after “${keyword}”, before the date.`,
  }, [{ title: 'Put it before the date', start, end: subject.end, text: `${reader.slice(subject)} ${moment}` }]);
}

function isMoment({ kind }: Piece): boolean {
  return kind === 'date' || kind === 'time';
}

/** The first piece that begins after a span. */
function after(pieces: readonly Piece[], { end }: Span): number {
  let index = 0;
  while (index < pieces.length && pieces[index]!.start < end) index++;
  return index;
}

function momentAtEnd(pieces: readonly Piece[], from: number): number {
  let to = pieces.length;
  while (to > from && isMoment(pieces[to - 1]!)) to--;
  return to;
}

function readDay(reader: LineReader, takes: Taken, pieces: readonly Piece[]): Moment {
  const first = pieces[0]!;
  if (first.kind !== 'date') {
    reportDate(reader, spanFrom(pieces, 0), 'day');
    reader.add(UNDATED);
    return never;
  }
  const date = readDate(reader, first, 'day');
  if (!date) reader.add(UNDATED);
  if (pieces.length > 1) {
    reportStray(reader, takes, pieces, 1, 'A “day” line holds one date and nothing else. Write the rest in a remark below.');
  }
  return { date, time: undefined };
}

/** A record without a date: whatever stands there is stray. */
function readNone(reader: LineReader, takes: Taken, pieces: readonly Piece[], from: number): Moment {
  if (from < pieces.length) {
    reportStray(reader, takes, pieces, from,
      isMoment(pieces[from]!) ? `“${takes.keyword}” takes no date.` : 'Write one word, then each fact after a comma.');
  }
  return never;
}

/** A date and a time, each at most once; anything else is stray. */
function readMoment(reader: LineReader, takes: Taken, pieces: readonly Piece[], from: number): Moment {
  if (from >= pieces.length) return never;
  let index = from;
  const date = pieces[index]!.kind === 'date' ? readDate(reader, pieces[index++] as Atom) : undefined;
  const dates = index > from;
  const half = pieces[index + 1];
  if (pieces[index]?.kind === 'time' && half?.kind === 'word' && /^[ap]\.?m\.?$/i.test(half.text)) {
    reportTime(reader, spanFrom(pieces, index));
    return { date, time: undefined };
  }
  const time = pieces[index]?.kind === 'time' ? readTime(reader, pieces[index++] as Atom) : undefined;
  if (index < pieces.length) reportRest(reader, takes, pieces, index, dates);
  return { date, time };
}

function reportRest(reader: LineReader, takes: Taken, pieces: readonly Piece[], index: number, dates: boolean): void {
  const first = pieces[index]!;
  const span = spanFrom(pieces, index);
  const before = pieces[index - 1];
  if (first.kind === 'date' && !dates && before?.kind === 'time') {
    reader.report('stray-text', first, { text: reader.shown(first), suggestion: 'Write the date before the time.' }, [
      { title: 'Put the date first', start: before.start, end: first.end, text: `${first.text} ${before.text}` },
    ]);
    return;
  }
  const text = reader.slice(span);
  // 1900, right behind the date.
  if (dates && before?.kind === 'date' && /^(?:[01]\d|2[0-3])[0-5]\d$/.test(text)) {
    const time = `${text.slice(0, 2)}:${text.slice(2)}`;
    reader.report('bad-time', span, { written: text, suggestion: `Did you mean “${time}”?` }, [replacement(span, time)]);
    return;
  }
  if (dates && before?.kind === 'date' && partsOfDay.test(text)) {
    reportTime(reader, span);
    return;
  }
  if (!dates && (daysInWords.test(text) || monthAndDay.test(text))) {
    reportDate(reader, span);
    return;
  }
  const meant = first.kind === 'amount' && first.unit && beginsFact(takes, pieces, index) ? undefined : meantMoment(reader.slice(span));
  if (meant?.length === 5 && before?.kind !== 'time') reportTime(reader, span);
  else if (meant && meant.length > 5 && !dates) reportDate(reader, span);
  else {
    reportStray(reader, takes, pieces, index,
      isMoment(first) ? 'Write one date and one time at most.' : behindHead(pieces, index));
  }
}

function behindHead(pieces: readonly Piece[], index: number): string {
  const other = pieces.slice(index).find(piece => piece.kind === 'word' && piece.text.includes('/'));
  return other ? `A line is about one batch: write another line for “${shown((other as Atom).text)}”.` : 'Put a comma before each fact.';
}
