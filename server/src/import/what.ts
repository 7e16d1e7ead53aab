/** Sheets with a row for each event: one column says what happened, another one how many. */
import { readHeading } from './headings.ts';
import type { Column } from './mapping.ts';
import { wholeIn } from './numbers.ts';
import { dateRoles, isCounted, type Role } from './roles.ts';

/** What the word of such a row makes of its date and its number; undefined for a word that says neither. */
export interface What {
  readonly date: Role;
  readonly number: Role;
}

/**
 * Example: whatOf('Germinated') is a count of what germinated on the day of the row; whatOf('sown') the day of sowing
 * with the number of seeds
 */
export function whatOf(word: string): What | undefined {
  const { role } = readHeading(word);
  if (role === undefined) return undefined;
  if (isCounted(role)) return { date: 'date', number: role };
  if (role === 'sown') return { date: 'sown', number: 'seeds sown' };
  const isDated = dateRoles.includes(role) && role !== 'date' && role !== 'noted' && role !== 'soaked';
  return isDated ? { date: role, number: 'number' } : undefined;
}

const numberHeading = /^(?:numbers?|counts?|no|n|nr|qty|quantity|how many|amount|value|result|anzahl|menge|nombre|quantite)\.?$/i;
/** Fewer understood words than this share are chance. */
const MOST = 0.7;

/** The columns, with the two marked where the cells show them; they need the day of the row. */
export function withWhat(columns: readonly Column[], cellsOf: (n: number) => readonly string[]): readonly Column[] {
  const share = (n: number, holds: (cell: string) => boolean) => {
    const cells = cellsOf(n);
    return cells.length < 2 ? 0 : cells.filter(holds).length / cells.length;
  };
  const all = [...columns.keys()];
  const isNumbers = (n: number) => share(n, cell => wholeIn(cell) !== undefined) >= MOST;
  const number = all.findLast(n => numberHeading.test(columns[n]!.heading) && isNumbers(n));
  const what = all.find(n => share(n, cell => whatOf(cell) !== undefined) >= MOST);
  if (number === undefined || what === undefined || !columns.some(({ is }) => is === 'date')) return columns;
  return columns.map((column, n) => (
    n === what || n === number ? { heading: column.heading, is: n === what ? 'what' : 'number' } : column));
}
