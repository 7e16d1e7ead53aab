/** The head of a record: the subject, on some records the plant's name, then a date and a time where there is one. */
import { keywords, type Keyword, type SubjectKind } from '../model/keywords.ts';
import type { Span, Written, WrittenDate, WrittenTime } from '../model/record.ts';
import type { Piece } from './grammar.ts';
import { spanOf, type LineReader } from './reader.ts';
import { readDate, readTime } from './values.ts';

export interface Head {
  readonly subject: Written | undefined;
  readonly plant: Written | undefined;
  readonly date: WrittenDate | undefined;
  readonly time: WrittenTime | undefined;
}

const subjectWords: Record<SubjectKind, string> = {
  date: 'a date', 'new lot': 'the id of the lot', batch: 'a lot or a batch', any: 'an id', 'new stock': 'a name for the stock',
  'new regime': 'a name for the regime', plant: 'a plant or a genus', limited: 'soak, stock, count or an agent',
  'new agent': 'a word for the agent', zone: 'a time zone',
};

const part = String.raw`[\p{L}\p{N}][\p{L}\p{N}._-]*`;
const batchPath = new RegExp(`^\\p{L}[\\p{L}\\p{N}._-]*(?:/${part})*$`, 'u');
const plainId = /^\p{L}[\p{L}\p{N}._-]*$/u;
const agentWord = /^\p{L}[\p{L}\p{N}._+-]*$/u;

export function readHead(reader: LineReader, keyword: Keyword, keywordSpan: Span, pieces: Piece[]): Head {
  const kind = keywords[keyword].subject;
  const [first] = pieces;
  if (!first) {
    reader.report('missing-subject', keywordSpan, { keyword, what: subjectWords[kind], example: keywords[keyword].example });
    return { subject: undefined, plant: undefined, date: undefined, time: undefined };
  }
  if (kind === 'date') return { subject: undefined, plant: undefined, ...readMoment(reader, pieces) };
  if (kind === 'plant') return { subject: reader.written(pieces), plant: undefined, date: undefined, time: undefined };
  const subject = readSubject(reader, keyword, kind, first);
  const rest = pieces.slice(1);
  if (kind !== 'new lot') return { subject, plant: undefined, ...readMoment(reader, rest) };
  const tail = rest.findLastIndex(piece => piece.kind !== 'date' && piece.kind !== 'time') + 1;
  return { subject, plant: reader.written(rest.slice(0, tail)), ...readMoment(reader, rest.slice(tail)) };
}

function readSubject(reader: LineReader, keyword: Keyword, kind: SubjectKind, piece: Piece): Written | undefined {
  const text = reader.slice(piece);
  const written: Written = { text, start: piece.start, end: piece.end };
  if (piece.kind === 'date' || piece.kind === 'time') {
    return reader.report('missing-subject', { start: piece.start, end: piece.end }, {
      keyword, what: subjectWords[kind], example: keywords[keyword].example,
    });
  }
  const shape = kind === 'batch' || kind === 'any' ? batchPath : kind === 'zone' || kind === 'limited' || kind === 'new agent' ? agentWord : plainId;
  if (kind !== 'zone' && !shape.test(text)) {
    const batches = shape === batchPath ? '; batches stand behind “/”' : '';
    return reader.report('bad-id', written, { id: text, what: subjectWords[kind], batch: batches });
  }
  return written;
}

/** A date and a time, each at most once; anything else is stray. */
function readMoment(reader: LineReader, pieces: Piece[]): { date: WrittenDate | undefined; time: WrittenTime | undefined } {
  let date: WrittenDate | undefined;
  let time: WrittenTime | undefined;
  let index = 0;
  if (pieces[index]?.kind === 'date') date = readDate(reader, pieces[index++] as Piece & { kind: 'date' });
  if (pieces[index]?.kind === 'time') time = readTime(reader, pieces[index++] as Piece & { kind: 'time' });
  const rest = pieces.slice(index);
  if (rest.length > 0) {
    const span = spanOf(rest);
    const comma = { title: 'Put a comma before it', start: pieces[index - 1]?.end ?? span.start, end: span.start, text: ', ' };
    reader.report('stray-text', span, { text: reader.slice(span), suggestion: 'Behind the subject stand the date and the time, then facts behind commas.' },
      index > 0 ? [comma] : [{ ...comma, start: span.start - 1 }]);
  }
  return { date, time };
}
