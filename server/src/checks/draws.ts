import type { Entry } from '../journal/life.ts';
import { factOf, factsOf, type Span } from '../model/record.ts';
import { subjectOf } from './spans.ts';

/** Where a record names the stock that it takes from. */
export function drawSpan({ record }: Entry, stock: string): Span {
  const draw = factOf(record, 'draw');
  const name = draw?.stock.text === stock ? draw.stock : factsOf(record, 'substance').find(fact => fact.name.text === stock)?.name;
  return name ? { start: name.start, end: name.end } : subjectOf({ record });
}

/** What a record does to a bottle or a packet, as messages say it. */
export function doesTo({ record }: Entry): 'measures' | 'takes from' {
  return record.keyword === 'left' ? 'measures' : 'takes from';
}

/** Where a record says how much it takes; the name of the stock where it does not. */
export function drawnSpan(entry: Entry, stock: string): Span {
  const { record } = entry;
  const draw = factOf(record, 'draw');
  const used = record.keyword === 'apply' ? factOf(record, 'volume') : undefined;
  const fact = factsOf(record, 'substance').find(({ name }) => name.text === stock);
  const own = draw?.stock.text === stock
    ? draw.volume ?? draw.mass
    : fact?.volume ?? fact?.mass ?? fact?.strength ?? used;
  return own ? { start: own.start, end: own.end } : drawSpan(entry, stock);
}
