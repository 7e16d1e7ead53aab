/** Numbers: from an amount to its value, or to a problem at the number. */
import type { Placed, Span } from '../model/record.ts';
import type { Amount } from './grammar.ts';
import { listed } from './nearest.ts';
import { replacement, shown, type LineReader } from './reader.ts';

/** Above this no count of seeds and no quantity of a bench is meant. */
const LARGEST = 1e9;
/** No grower wrote a longer number, and to repeat it in every fix would cost more than to read it. */
const LONGEST = 40;

/** Whether it is written as a total so far: `=9 germinated`. */
export function isTotal({ number }: Amount): boolean {
  return number.image.charCodeAt(0) === 61;
}

/** The number as written, without the `=` of a total. */
export function numeralOf(amount: Amount): string {
  return isTotal(amount) ? amount.number.image.slice(1).trimStart() : amount.number.image;
}

/** Where the number stands, with the `=` of a total. */
function numberSpan({ number, start }: Amount): Span {
  return { start, end: start + number.image.length };
}

/** A decimal number. Anything else is a problem, with every reading it may have as a fix; none is guessed. */
export function readNumber(reader: LineReader, amount: Amount): number | undefined {
  const value = Number(amount.number.image);
  // Not so for NaN either.
  if (Math.abs(value) <= LARGEST) return value;
  reportNumber(reader, amount, amount.number.image, false);
  return undefined;
}

/** How many: a whole number from 0. A total is one only where the numeral is given without its `=`. */
export function readWhole(
  reader: LineReader, amount: Amount, numeral: string = amount.number.image,
): Placed<number> | undefined {
  const value = Number(numeral);
  const { start } = amount;
  if (Number.isInteger(value) && value >= 0 && value <= LARGEST) {
    return { value, start, end: start + amount.number.image.length };
  }
  if (Math.abs(value) <= LARGEST) {
    reader.report('bad-number', numberSpan(amount), {
      written: shown(numeral), expected: 'a whole number from 0 up', suggestion: 'Count whole seeds, seedlings and drops.',
    });
  } else reportNumber(reader, amount, numeral, true);
  return undefined;
}

function reportNumber(reader: LineReader, amount: Amount, numeral: string, whole: boolean): void {
  if (numeral.includes(',')) {
    reportComma(reader, amount, numeral, whole);
    return;
  }
  const span = numberSpan(amount);
  const { expected, suggestion, instead } = readingsOf(numeral, whole);
  reader.report('bad-number', span, { written: reader.shown(span), expected, suggestion }, instead.map(text => replacement(span, text)));
}

interface Readings {
  readonly expected: string;
  readonly suggestion: string;
  /** What may have been meant. */
  readonly instead: readonly string[];
}

/** What an image of the lexer's Num that is no number was meant for. */
function readingsOf(numeral: string, whole: boolean): Readings {
  const expected = whole ? 'a whole number' : 'one number';
  if (numeral.startsWith('=')) {
    return { expected, suggestion: 'Only a “count” takes a total with “=”.', instead: [numeral.slice(1).trimStart()] };
  }
  const plain = numeral.replace(/^[−–]/, '-');
  if (!Number.isNaN(Number(plain))) {
    return plain === numeral
      ? { expected: 'a number that can be right here', suggestion: 'Write a smaller one.', instead: [] }
      : { expected: 'a number with a plain minus sign', suggestion: 'Write the minus sign as “-”.', instead: [plain] };
  }
  const parts = numeral.split(/[/−–-]/).filter(part => part !== '');
  if (parts.length !== 2 || numeral.length > LONGEST) return { expected, suggestion: 'Write digits with one decimal point at most.', instead: [] };
  if (!numeral.includes('/')) {
    return { expected, suggestion: `Write one number, ${listed(parts, 'or')}, and the range in a remark.`, instead: parts };
  }
  if (whole) return { expected, suggestion: `Write “${parts[0]!}” alone; the “sow” record says how many you sowed.`, instead: [parts[0]!] };
  const share = Number(parts[0]) / Number(parts[1]);
  const short = Number(share.toFixed(4));
  return { expected, suggestion: 'Write it as a decimal number.', instead: short === share ? [String(short)] : [] };
}

/** A comma inside a number: a decimal comma, one of thousands, or two facts without the blank between them. */
function reportComma(reader: LineReader, amount: Amount, numeral: string, whole: boolean): void {
  const span = numberSpan(amount);
  const start = span.end - numeral.length;
  const inside = { start, end: span.end };
  const fixable = numeral.length <= LONGEST;
  const grouped = fixable && /^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(numeral) ? [numeral.replaceAll(',', '')] : [];
  const pointed = fixable && /^-?\d+,\d+$/.test(numeral) && !whole ? [numeral.replace(',', '.')] : [];
  const parted = fixable && whole && grouped.length === 0 ? [numeral.replaceAll(',', ', ')] : [];
  const numbers = [...pointed, ...grouped];
  const suggestion = numbers.length > 0
    ? `Write ${listed(numbers, 'or')}: use a point for decimals, and nothing between thousands.`
    : 'If these are two facts, put a blank after the comma.';
  reader.report('decimal-comma', span, { written: reader.shown(span), suggestion },
    [...numbers, ...parted].map(text => replacement(inside, text)));
}
