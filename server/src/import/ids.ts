/** Ids of lots and batches: those of the sheet as a journal can write them, and new ones where a sheet has none. */
import { factsOf } from '../model/record.ts';
import { parse } from '../syntax/parse.ts';

/** In front of an id that begins with a digit. */
const PREFIX = 'L';

/**
 * The id that a cell gives; undefined where it has no letter and no digit.
 *
 * Example: idOf('GEN 25') is 'GEN-25', idOf('2025/14') is 'L2025-14'
 */
export function idOf(cell: string): string | undefined {
  const bare = bareOf(cell);
  const id = /^\p{L}/u.test(bare) ? bare : `${PREFIX}${bare}`;
  return bare !== '' && isSubject('lot', id, `${id} X`) ? id : undefined;
}

/** What is longer is no id, and to look into it would take time with the square of its length. */
const LONGEST = 500;

function bareOf(cell: string): string {
  if (cell.length > LONGEST) return '';
  return cell.normalize('NFC').replaceAll(/[^\p{L}\p{M}\p{N}._-]+/gu, '-').replaceAll(/^[^\p{L}\p{N}]+|[-._]+$/gu, '');
}

/** Whether a record about it can be read. */
function isSubject(keyword: 'lot' | 'count', id: string, rest: string): boolean {
  const { record, problems } = parse(`${keyword} ${rest}`);
  return problems.length === 0 && record?.subject?.text === id;
}

/** The name of a part of a lot. */
export function partOf(cell: string): string | undefined {
  const bare = bareOf(cell);
  const { record, problems } = parse(`split X, ${bare} 9 seeds`);
  const [part] = record && problems.length === 0 ? factsOf(record, 'part') : [];
  return part?.name.text === bare && isSubject('count', `X/${bare}`, `X/${bare} 2026-01-01, 0`) ? bare : undefined;
}

/**
 * A lot and perhaps a batch of it, written as one.
 *
 * Example: pathOf('GEN-25/A') is the lot GEN-25 and its part A
 */
export function pathOf(cell: string): { readonly lot: string; readonly part?: string } | undefined {
  const [first = '', second, ...more] = cell.split('/');
  const [lot, part] = [idOf(first), second === undefined ? undefined : partOf(second)];
  if (lot !== undefined && part !== undefined && more.length === 0 && /^\p{L}/u.test(first.trim())) return { lot, part };
  const whole = idOf(cell);
  return whole === undefined ? undefined : { lot: whole };
}

/**
 * The beginning of new ids for a plant: three letters of its genus, and the year.
 *
 * Example: stemOf('Gentiana lutea', 2025) is 'GEN-25'
 */
export function stemOf(plant: string, year: number | undefined): string {
  const letters = plant.replace(/^(?:×\s*|x\s+)/i, '').normalize('NFD').replaceAll(/\P{L}/gu, '').slice(0, 3).toUpperCase();
  const stem = letters === '' ? 'LOT' : letters;
  return year === undefined ? stem : `${stem}-${String(year % 100).padStart(2, '0')}`;
}
