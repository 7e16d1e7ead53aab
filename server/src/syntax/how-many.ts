/** How many seeds: counted, or estimated (`about 40 seeds`, `30 to 40 seeds`, `half`). */
import { aboutRange, type Estimate } from '../model/estimate.ts';
import type { Fact, HowMany, Placed } from '../model/record.ts';
import type { Amount, Piece } from './grammar.ts';
import { readWhole } from './numbers.ts';
import { replacement, type LineReader } from './reader.ts';
import { reportValue } from './wanted.ts';

/** With where it stands; undefined where it could not be read, which has been reported. */
type Read = (HowMany & { readonly start: number; readonly end: number }) | undefined;

/** Reads what stands at a place in the row of pieces, which is known to be about seeds. */
export function readHowMany(reader: LineReader, pieces: readonly Piece[], from: number): Read {
  const [first, second] = [pieces[from], pieces[from + 1]];
  if (first?.kind === 'word' && first.text.toLowerCase() === 'about') {
    if (second?.kind === 'amount' && isSeeds(second)) return readAbout(reader, first.start, second);
    reportValue(reader, pieces, from + 1, 'a number of seeds', 'about 40 seeds');
    return undefined;
  }
  if (first?.kind !== 'amount') return undefined;
  if (first.unit?.image.toLowerCase() !== 'to') {
    const dashed = /^(\d+)[-–−](\d+)$/.exec(first.number.image);
    if (dashed) {
      reportDashed(reader, first, `${dashed[1]!} to ${dashed[2]!}`);
      return undefined;
    }
    const n = readWhole(reader, first);
    return n && { n, start: first.start, end: first.end };
  }
  if (second?.kind === 'amount' && isSeeds(second)) return readBetween(reader, pieces, from, first, second);
  reportValue(reader, pieces, from + 1, 'a second number of seeds', '30 to 40 seeds');
  return undefined;
}

/** `30-40 seeds`. */
function reportDashed(reader: LineReader, { start, number }: Amount, meant: string): void {
  const span = { start, end: start + number.image.length };
  reader.report('bad-number', span, {
    written: reader.shown(span), expected: 'one number', suggestion: `If you did not count them, write “${meant} seeds”.`,
  }, [replacement(span, meant)]);
}

function isSeeds({ unit }: Amount): boolean {
  return !unit || /^seeds?$/i.test(unit.image);
}

function readAbout(reader: LineReader, start: number, amount: Amount): Read {
  const n = readWhole(reader, amount);
  return n && estimated({ value: { kind: 'about', n: n.value, ...aboutRange(n.value) }, start, end: amount.end });
}

function readBetween(
  reader: LineReader, pieces: readonly Piece[], from: number, first: Amount, second: Amount,
): Read {
  const [least, most] = [readWhole(reader, first), readWhole(reader, second)];
  if (!least || !most) return undefined;
  if (least.value <= most.value) {
    return estimated({
      value: { kind: 'between', least: least.value, most: most.value }, start: first.start, end: second.end,
    });
  }
  const whole = { start: first.start, end: second.end };
  const turned = `${most.value} to ${least.value} seeds`;
  reportValue(reader, pieces, from, 'the smaller number first', turned, whole,
    [{ title: `Change to “${turned}”`, ...whole, text: turned }]);
  return undefined;
}

function estimated(estimate: Placed<Estimate>): Read {
  return { estimate, start: estimate.start, end: estimate.end };
}

/** The number of seeds of a record. */
export function readSeeds(reader: LineReader, pieces: readonly Piece[]): Fact | undefined {
  const read = readHowMany(reader, pieces, 0);
  return read && { type: 'seeds', ...read };
}
