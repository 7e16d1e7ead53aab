/** The head of a record: the subject, on some records the plant's name, then a date and a time where there is one. */
import { keywords } from '../model/keywords.ts';
import type { Span, Written, WrittenDate, WrittenTime } from '../model/record.ts';
import { readDate, readTime, reportDate, reportTime } from './dates.ts';
import { beginsFact, type Taken } from './fact-types.ts';
import type { Atom, Piece } from './grammar.ts';
import { meantMoment } from './meant-dates.ts';
import { readPlant } from './plant.ts';
import { spanFrom, type LineReader } from './reader.ts';
import { reportStray } from './stray.ts';
import { readSubject, reportNoSubject, subjectWords } from './subject.ts';

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
  if (!first) reportNoSubject(reader, keyword, keywordSpan, subjectWords[kind]);
  else if (kind === 'date') moment = readDay(reader, takes, pieces);
  else if (kind === 'plant') subject = readPlant(reader, takes, pieces);
  else {
    let from = 0;
    if (isMoment(first)) reportNoSubject(reader, keyword, keywordSpan, subjectWords[kind]);
    else {
      subject = readSubject(reader, kind, first);
      from = after(pieces, subject ?? reader.problems.at(-1)!);
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
    return never;
  }
  const date = readDate(reader, first, 'day');
  if (pieces.length > 1) {
    reportStray(reader, takes, pieces, 1, 'A “day” is a date alone; a time stands on each record, anything else in a remark.');
  }
  return { date, time: undefined };
}

/** A record without a date: whatever stands there is stray. */
function readNone(reader: LineReader, takes: Taken, pieces: readonly Piece[], from: number): Moment {
  if (from < pieces.length) {
    reportStray(reader, takes, pieces, from,
      isMoment(pieces[from]!) ? `“${takes.keyword}” takes no date.` : 'One word names it; then come facts after commas.');
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
  const meant = first.kind === 'amount' && first.unit && beginsFact(takes, pieces, index) ? undefined : meantMoment(reader.slice(span));
  if (meant?.length === 5 && before?.kind !== 'time') reportTime(reader, span);
  else if (meant && meant.length > 5 && !dates) reportDate(reader, span);
  else {
    reportStray(reader, takes, pieces, index,
      isMoment(first) ? 'One date and one time at most.' : 'After the subject come the date and the time, then facts after commas.');
  }
}
