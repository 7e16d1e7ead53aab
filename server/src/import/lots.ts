/** The record of a lot from a row. */
import type { Fact } from '../model/record.ts';
import { isoOf } from '../model/day.ts';
import { parse } from '../syntax/parse.ts';
import { meantMonth } from '../syntax/meant-dates.ts';
import { buildLine, plantText, textWanted, type FactWanted } from './lines.ts';
import { howMany } from './numbers.ts';
import type { RowReader } from './row-reader.ts';

export interface LotLine {
  /** Undefined where the row names no plant, or none that can be written. */
  readonly line: string | undefined;
  readonly facts: readonly Fact[];
  /** The columns that it is made of. */
  readonly columns: readonly number[];
  /** Of the harvest, else of the first thing that was done. */
  readonly year: number | undefined;
}

/** `part`: whether the row is about a part of the lot, whose number of seeds is not the lot's. */
export function lotLine(id: string, row: RowReader, part = row.has('batch') && row.cell('batch') !== undefined): LotLine {
  const wanted = [
    ...(part ? [] : seedsWanted(row)), ...collectedWanted(row),
    ...(['from', 'stored'] as const).flatMap(role => row.cells(role).map(({ text, column }) => textWanted(role, text, column))),
    ...(row.has('sown') && row.cell('sown') ? [] : placeWanted(row)),
  ];
  const plant = row.plant();
  const name = plant && plantText(id, plant.text);
  const { line, unused } = buildLine('lot', name === undefined ? `${id} X` : `${id} ${name}`, wanted);
  const used = wanted.filter(want => !unused.includes(want)).flatMap(each => each.columns);
  const columns = [...(name === undefined ? [] : plant!.columns), ...used];
  return {
    line: name === undefined ? undefined : line, facts: line === undefined ? [] : parse(line).record!.facts,
    columns, year: yearOf(row),
  };
}

function seedsWanted(row: RowReader): FactWanted[] {
  return row.cells('seeds').flatMap(({ text, column }) => {
    const many = howMany(text);
    if (many === undefined) row.leave(column, `“${text}” is not a number of seeds`);
    return many === undefined ? [] : [{ type: 'seeds' as const, ways: [`${many} seeds`], columns: [column] }];
  });
}

function collectedWanted(row: RowReader): FactWanted[] {
  return row.cells('collected').map(({ text, column }) => {
    const month = meantMonth(text);
    const date = month === undefined && !/^\d{4}$/.test(text) ? row.dateIn({ text, column }) : undefined;
    const when = /^\d{4}$/.test(text) ? text : month ?? (date && isoOf(date.day));
    return { type: 'collected' as const, ways: when === undefined ? [] : [`collected ${when}`], columns: [column] };
  });
}

/** A number alone is one of what the heading says: `tray 4`. */
export function placeWanted(row: RowReader): FactWanted[] {
  return row.cells('place').map(({ text, column, as: { heading } }) => {
    const isNumber = /^\d+$/.test(text) && /^\p{L}+$/u.test(heading);
    return textWanted('at', isNumber ? `${heading.toLowerCase()} ${text}` : text, column);
  });
}

function yearOf(row: RowReader): number | undefined {
  const [collected] = row.cells('collected');
  const written = /\b(?:19|20)\d{2}\b/.exec(collected?.text ?? '')?.[0];
  if (written !== undefined) return Number(written);
  const day = (collected && row.dateIn(collected)) ?? row.date('sown') ?? row.date('soaked') ?? row.date('date');
  return day && Number(isoOf(day.day).slice(0, 4));
}
