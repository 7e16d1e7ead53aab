/** Facts of several parts: what is in a soak, a drop or a stock, and a stage of a regime. */
import type { DrawFact, Fact, Placed, SubstanceFact, Written } from '../model/record.ts';
import type { Keyword } from '../model/keywords.ts';
import type { Duration, Mass, Temperature } from '../model/quantity.ts';
import type { Amount, Piece } from './grammar.ts';
import { readWhole } from './numbers.ts';
import {
  dimensionInOtherCase, dimensionOf, readDuration, readQuantity, readStrength, readTemperature, readVolume,
} from './quantities.ts';
import { dimensionMeantBy } from './other-units.ts';
import type { LineReader } from './reader.ts';
import { amountAt, reportValue } from './wanted.ts';

/**
 * An agent or a stock, then how much: `GA3 500 ppm`, `G2 10 mL`, `GA3 20 mg halved 3 times`, `GA3 unmeasured`; where
 * liquids are poured together also `peroxide 3 % 5 mL`.
 */
export function readSubstance(reader: LineReader, pieces: readonly Piece[], keyword: Keyword): Fact | undefined {
  const { start, end } = pieces[0]!;
  const name = { text: reader.slice(pieces[0]!), start, end };
  const second = pieces[1];
  if (second?.kind === 'amount') return readDosed(reader, pieces, name, second, keyword);
  if (second?.kind !== 'word') return { type: 'substance', name, start, end };
  const word = second.text.toLowerCase();
  if (word === 'unmeasured') {
    return { type: 'substance', name, unmeasured: { start: second.start, end: second.end }, start, end: second.end };
  }
  if (word !== 'halved') return { type: 'substance', name, start, end };
  reader.report('bad-value', second, {
    fact: `“${second.text}”`, expected: 'the mass of the packet before it', instead: '', example: `${reader.shown(name)} 100 mg halved 3 times`,
  });
  return undefined;
}

function readDosed(
  reader: LineReader, pieces: readonly Piece[], name: SubstanceFact['name'], amount: Amount, keyword: Keyword,
): Fact | undefined {
  const { start } = name;
  const { end } = amount;
  switch (dimensionOf(amount) ?? dimensionInOtherCase(amount) ?? dimensionMeantBy(amount.unit?.image ?? '', ['strength', 'mass', 'volume'])) {
    case 'volume': {
      const volume = readVolume(reader, amount);
      return volume && { type: 'substance', name, volume, start, end };
    }
    case 'mass': {
      const mass = readQuantity<Mass['unit']>(reader, amount, 'mass');
      if (!mass || keyword === 'powder') return mass && { type: 'substance', name, mass, start, end };
      return readHalved(reader, pieces, { type: 'substance', name, mass, start, end });
    }
    default: {
      const strength = readStrength(reader, amount);
      if (!strength) return undefined;
      const behind = keyword === 'soak' || keyword === 'apply' ? pieces[2] : undefined;
      if (behind?.kind !== 'amount' || dimensionOf(behind) !== 'volume') {
        return { type: 'substance', name, strength, start, end: endOfStrength(pieces, end) };
      }
      const volume = readVolume(reader, behind);
      return volume && { type: 'substance', name, strength, volume, start, end: behind.end };
    }
  }
}

/** `w/v` behind a strength is passed over: it says of % what % means here. */
function endOfStrength(pieces: readonly Piece[], end: number): number {
  const next = pieces[2];
  return next?.kind === 'word' && next.text.toLowerCase() === 'w/v' ? next.end : end;
}

/** What a stock took out of a packet: `from P1 20 mg`, `from P1 halved 2 times`, or `from P1`, which says no amount. */
export function readPowderDraw(reader: LineReader, pieces: readonly Piece[], stock: Written): Fact | undefined {
  const [word, , amount] = pieces;
  const draw: DrawFact = { type: 'draw', stock, start: word!.start, end: stock.end };
  if (amount?.kind !== 'amount') return readHalved(reader, pieces, draw);
  const mass = readQuantity<Mass['unit']>(reader, amount, 'mass');
  return mass && { ...draw, mass, end: amount.end };
}

function readHalved(reader: LineReader, pieces: readonly Piece[], powder: SubstanceFact | DrawFact): Fact | undefined {
  const word = pieces[2];
  if (word?.kind !== 'word' || word.text.toLowerCase() !== 'halved') return powder;
  const times = amountAt(reader, pieces.slice(2), 1, 'how often', 'halved 3 times');
  const halved = times && readWhole(reader, times);
  if (!halved) return undefined;
  if (/^times?$/i.test(times.unit?.image ?? 'times')) return { ...powder, halved, end: times.end };
  reportValue(reader, pieces.slice(2), 1, 'how often', 'halved 3 times');
  return undefined;
}

/** `chill 4 C 90 days`; temperature and duration in either order, each at most once. */
export function readStage(reader: LineReader, pieces: readonly Piece[]): Fact | undefined {
  const { start } = pieces[0]!;
  let { end } = pieces[0]!;
  let temperature: Placed<Temperature> | undefined;
  let duration: Placed<Duration> | undefined;
  for (const piece of pieces.slice(1, 3)) {
    if (piece.kind !== 'amount') break;
    const warmth = !temperature && (duration !== undefined || dimensionOf(piece) === 'temperature');
    if (!warmth && duration) break;
    if (warmth) temperature = readTemperature(reader, piece);
    else duration = readDuration(reader, piece);
    if (!(warmth ? temperature : duration)) return undefined;
    end = piece.end;
  }
  const stage = reader.slice(pieces[0]!).toLowerCase() as 'warm' | 'chill';
  return { type: 'stage', stage, ...(temperature && { temperature }), ...(duration && { duration }), start, end };
}
