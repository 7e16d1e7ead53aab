/** A record as the formatter writes it: spacing, small letters, spelling of units; never a word or a number changed. */
import { isoOf } from '../model/day.ts';
import { keywords, type FactUse, type Keyword } from '../model/keywords.ts';
import { unitOf } from '../model/quantity.ts';
import { countables, cutClasses, type Fact, type JournalRecord, type Span } from '../model/record.ts';
import { syntaxOf, type Amount, type Piece } from './grammar.ts';
import { isLasting } from './limits.ts';
import { isTotal, numeralOf } from './numbers.ts';

/** How the facts of a record stand: as they were written, or in the order in which the format reference lists them. */
export type FactOrder = 'as written' | 'as listed';

/**
 * The line of a record that was read without a problem, anew: one blank between words, `, ` between facts, small
 * letters for the words of the format, a blank between a number and its unit, and nothing at the end. Names, texts
 * and numbers are as they were written.
 *
 * Example: a line 'Soak  X 9:30,GA3 500PPM , 24hours ' is printed as 'soak X 09:30, GA3 500 ppm, 24 h'
 */
export function print(line: string, record: JournalRecord, order: FactOrder = 'as written'): string {
  const { head, facts } = syntaxOf(line)!;
  const mark = line.slice(0, record.keywordSpan.start);
  const printed = record.facts.map((fact, index) =>
    ({ rank: rankOf(fact, record), text: printFact(line, fact, facts[index]!.pieces) }));
  // Those of one rank, such as the parts of a split and the stages of a regime, keep the order that they are in.
  if (order === 'as listed') printed.sort((a, b) => a.rank - b.rank);
  return mark + [printHead(line, record, head), ...printed.map(({ text }) => text)].join(', ');
}

function rankOf(fact: Fact, { keyword }: JournalRecord): number {
  const uses: readonly FactUse[] = keywords[keyword].facts;
  const rank = uses.findIndex(({ type }) => type === fact.type) * 100;
  if (fact.type === 'count') return rank + countables.indexOf(fact.what);
  return fact.type === 'cut' ? rank + cutClasses.indexOf(fact.what) : rank;
}

function printHead(line: string, { keyword, subject, date, time }: JournalRecord, head: readonly Piece[]): string {
  const words: string[] = [keyword];
  const to = (date ?? time)?.start ?? line.length;
  const named = head.filter(({ end }) => end <= to);
  const plant = named.findIndex(({ start }) => start >= (subject?.end ?? 0));
  // A name of several words, on a `lot` behind the id and on a `guide` alone, keeps the blanks inside it.
  const from = keyword === 'guide' ? 0 : plant;
  if (from !== 0 && subject) words.push(printSubject(line, keyword, subject));
  if (from >= 0 && named.length > 0) words.push(raw(line, { start: named[from]!.start, end: named.at(-1)!.end }));
  if (date) words.push(isoOf(date.day));
  if (time) words.push(printTime(time.minutes));
  return words.join(' ');
}

/** What a limit is of is a word of the format, unless it is an agent. */
function printSubject(line: string, keyword: Keyword, subject: Span): string {
  const written = raw(line, subject);
  return keyword === 'limit' && isLasting(written) ? written.toLowerCase() : written;
}

function printFact(line: string, fact: Fact, pieces: readonly Piece[]): string {
  switch (fact.type) {
    case 'text': case 'path': return raw(line, fact);
    case 'from': case 'at': case 'stored': case 'in': case 'source': case 'for':
      return `${fact.type} ${raw(line, { start: pieces[1]!.start, end: fact.end })}`;
    case 'whither': return `${raw(line, pieces[0]!).toLowerCase()} ${raw(line, { start: pieces[1]!.start, end: fact.end })}`;
    case 'dormancy': return `dormancy ${fact.value.text}`;
    // The names of batches, agents, stocks and regimes are the grower's.
    case 'part': case 'substance': return printPieces(line, pieces, 0);
    case 'draw': case 'regime': case 'replaces': return printPieces(line, pieces, 1);
    default: return printPieces(line, pieces, -1);
  }
}

function printPieces(line: string, pieces: readonly Piece[], name: number): string {
  return pieces.map((piece, index) => (index === name ? raw(line, piece) : printPiece(piece))).join(' ');
}

function printPiece(piece: Piece): string {
  if (piece.kind === 'amount') return printAmount(piece);
  if (piece.kind !== 'time') return piece.text.toLowerCase();
  const [hours, minutes] = piece.text.split(':');
  return printTime(Number(hours) * 60 + Number(minutes));
}

function printAmount(amount: Amount): string {
  const numeral = numeralOf(amount);
  const number = isTotal(amount) ? `=${numeral}` : numeral;
  return amount.unit ? `${number} ${printUnit(amount.unit.image, Number(numeral))}` : number;
}

/** Units by their usual signs; a micro sign stays one. Other words behind a number are words of the format. */
function printUnit(image: string, value: number): string {
  const unit = unitOf(image);
  if (!unit) return image.toLowerCase();
  const sign = image.charAt(0);
  if (sign === '\u00b5' || sign === '\u03bc') return sign + unit.printed.slice(1);
  return value === 1 && /^(days|weeks|months|years)$/.test(unit.printed) ? unit.printed.slice(0, -1) : unit.printed;
}

function printTime(minutes: number): string {
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}

function raw(line: string, { start, end }: Span): string {
  return line.slice(start, end);
}
