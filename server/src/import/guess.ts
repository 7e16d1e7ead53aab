/** What the columns of a sheet are, guessed from their headings and, where these say too little, from their cells. */
import { isoOf } from '../model/day.ts';
import { dateOrders } from './answers.ts';
import { orderShown, readCellDate, type DateHabit } from './dates.ts';
import { readHeading, type HeadingRead } from './headings.ts';
import { ageIn, type Heading, type Layout } from './layout.ts';
import type { Column, Mapping } from './mapping.ts';
import { wholeIn } from './numbers.ts';
import { dateRoles, isCounted, type Role } from './roles.ts';
import { isEmptyCell, type Table } from './table.ts';
import { withWhat } from './what.ts';

/** Several columns may be of these. */
const many: ReadonlySet<Role> = new Set([
  'germinated', 'emerged', 'leaf', 'rotted', 'died', 'lost', 'noted', 'remark', 'nothing', 'strength',
]);
/** Headings that say little where another column has a better one. */
const weak = /^(?:no|nr|n|number|nummer|ref|label|code|name|id|what|seed|pot|#)\.?$/i;

/** A column as its heading and its cells show it, before it is seen beside the others. */
interface Sight {
  readonly heading: Heading;
  readonly read: HeadingRead;
  readonly cells: readonly string[];
}

export interface Guess {
  readonly mapping: Mapping;
  /** What headings leave open: with one of them each. */
  readonly asks: ReadonlyMap<'order' | 'year', string>;
}

/** What is known already counts: a mapping that was saved, and what the grower answered. */
export function guessMapping(table: Table, layout: Layout, known: Partial<Mapping> = {}): Guess {
  const { headings, body, headingRow } = layout;
  const sights = headings.map((heading, n): Sight => ({
    heading, read: readGrouped(heading), cells: body.map(({ cells }) => cells[n] ?? '').filter(cell => !isEmptyCell(cell)),
  }));
  const order = known.dates ?? orderOfAll(sights);
  const habit: DateHabit = { order, year: known.year };
  const rough = sights.map(sight => roughColumn(sight, habit));
  const columns = settled(withWhat(rough, n => sights[n]!.cells), sights);
  const kept = columns.map(column => {
    const saved = known.columns?.find(({ heading }) => heading === column.heading);
    return saved?.is === column.is ? { ...column, ...saved } : saved ?? column;
  });
  const asks = new Map<'order' | 'year', string>();
  for (const [n, { heading, read }] of sights.entries()) {
    const { is, date } = kept[n]!;
    const asked = read.role === undefined && isCounted(is) && date === undefined ? askedBy(heading, habit) : undefined;
    if (asked && !asks.has(asked)) asks.set(asked, heading.text);
  }
  const mapping = {
    ...known, delimiter: table.delimiter, headingRow, ...(order && { dates: order }),
    lots: known.lots ?? lotsOf(kept, sights), columns: kept,
  };
  return { mapping, asks };
}

/** What must be known before the day in a heading can be read. */
function askedBy(heading: Heading, habit: DateHabit): 'order' | 'year' | undefined {
  const { found } = dayIn(heading, habit);
  return found && 'asks' in found ? found.asks : undefined;
}

/** The heading above several columns helps to read the one below it: `Soak` above `date`. */
function readGrouped({ text, group }: Heading): HeadingRead {
  const own = readHeading(text);
  if (group === '') return own;
  const both = readHeading(`${group} ${text}`);
  return both.role === undefined || both.role === 'noted' ? own : { ...own, ...both };
}

/** The one order that columns of the sheet show. Undefined where none does, or where two contradict each other. */
function orderOfAll(sights: readonly Sight[]): Mapping['dates'] {
  const headings = sights.map(({ heading }) => dateTextIn(heading.text).date);
  const shown = [headings, ...sights.map(({ cells }) => cells)].map(orderShown).filter(order => order !== undefined);
  return dateOrders.find(order => shown.length > 0 && shown.every(each => each === order));
}

/** The date in a heading, and what else stands there: `Germinated 12/02`. */
function dateTextIn(text: string): { readonly date: string; readonly rest: string } {
  const found = /\d{1,4}[-/.]\d{1,2}(?:[-/.]\d{0,4})?|\d{1,2}\.? \p{L}{3,}\.?(?: \d{2,4})?/u.exec(text);
  return found ? { date: found[0], rest: text.replace(found[0], '').replaceAll(/^[\s:,-]+|(?<![\s:,-])[\s:,-]+$/g, '') } : { date: text, rest: '' };
}

function roughColumn({ heading, read, cells }: Sight, habit: DateHabit): Column {
  const named = { heading: heading.label };
  const { counts, unit, agent } = read;
  const more = { ...(counts && { counts }), ...(unit && { unit }), ...(agent && { agent }) };
  const counted = read.role === undefined ? countedColumn(heading, habit) : undefined;
  if (counted) return { ...named, ...counted };
  return { ...named, is: seenIn(read.role, cells, habit), ...more };
}

/** A column whose heading is the day of the count. */
function countedColumn({ text, group }: Heading, habit: DateHabit): Omit<Column, 'heading'> | undefined {
  const age = ageIn(text);
  const { found, rest, isGroupTime } = dayIn({ text, group }, habit);
  if (!age && !found) return undefined;
  const said = [age ? '' : rest, isGroupTime ? '' : group].filter(word => word !== '').map(readHeading);
  // What these counts are of, nothing here tells: a treatment above the dates of its dish, for instance.
  if (said.some(({ role }) => role === undefined || !isCounted(role))) return { is: 'remark' };
  const [{ role = 'germinated' as Role, counts } = {}] = said;
  const when = age ?? (found && 'day' in found ? { date: isoOf(found.day) } : {});
  return { is: role, ...when, ...(counts && { counts }) };
}

interface DayRead {
  readonly found: ReturnType<typeof readCellDate>;
  /** What stands in the heading beside its date. */
  readonly rest: string;
  /** Whether the heading above several columns is their year or their month. */
  readonly isGroupTime: boolean;
}

function dayIn({ text, group }: Pick<Heading, 'text' | 'group'>, habit: DateHabit): DayRead {
  const { date, rest } = dateTextIn(text);
  const isYear = /^(?:19|20)\d{2}$/.test(group);
  const years = { ...habit, year: isYear ? Number(group) : habit.year };
  const plain = readCellDate(date, years);
  const grouped = /^\d{1,2}\.?$/.test(text) ? readCellDate(`${text} ${group}`, years) : undefined;
  return { found: grouped ?? plain, rest: grouped ? '' : rest, isGroupTime: isYear || grouped !== undefined };
}

/** The role that a heading gives, if the cells agree with it. */
function seenIn(role: Role | undefined, cells: readonly string[], habit: DateHabit): Role {
  const dates = cells.filter(cell => readCellDate(cell, habit)).length;
  const numbers = cells.filter(cell => wholeIn(cell) !== undefined).length;
  if (role === undefined) return cells.length > 0 && dates === cells.length ? 'noted' : 'remark';
  // Half a seed is none: a column of such numbers holds shares, and a 1 among them may be all of the seed.
  if (isCounted(role) && cells.filter(isBroken).length > cells.length / FEW_SLIPS) return 'remark';
  if (isCounted(role)) return dates > 0 && numbers === 0 ? 'noted' : role;
  if (!dateRoles.includes(role) || dates > 0 || cells.length === 0) return role;
  switch (role) {
    case 'sown': return numbers === cells.length ? 'seeds sown' : 'remark';
    case 'soaked': return 'treatment';
    case 'chilled': return 'cold time';
    default: return 'remark';
  }
}

/** One cell in so many may be a slip. */
const FEW_SLIPS = 4;

/** Example: '0.5', '12,5'; not '3.0', which is how some programs write 3, nor '1,200', which may be thousands */
function isBroken(cell: string): boolean {
  const [, whole, parts] = /^(\d+)[.,](\d+)$/.exec(cell) ?? [];
  return parts !== undefined && /[1-9]/.test(parts) && (parts.length !== 3 || whole === '0');
}

/** Of two columns with one role, the one with the better heading has it; the other one is a remark. */
function settled(rough: readonly Column[], sights: readonly Sight[]): Column[] {
  const hasGenus = rough.some(({ is }) => is === 'genus');
  const hasLot = rough.some(({ is }) => is === 'lot');
  const columns = rough.map((column, n): Column => {
    const { is } = column;
    if (is === 'species' && !hasGenus) return { ...column, is: 'plant' };
    const { cells } = sights[n]!;
    return is === 'batch' && !hasLot && new Set(cells).size === cells.length ? { ...column, is: 'lot' } : column;
  });
  const hasName = hasGenus && columns.some(({ is }) => is === 'species');
  return columns.map((column, n) => {
    const rivals = columns.filter(({ is }) => is === column.is);
    const best = rivals.find(({ heading }) => !weak.test(heading)) ?? rivals[0];
    if (column.is === 'plant' && hasName) return { ...column, is: 'remark' };
    return many.has(column.is) || column === best ? columns[n]! : { heading: column.heading, is: 'remark' };
  });
}

/** A sheet without ids and with several rows for each plant knows its seed by the plant alone. */
function lotsOf(columns: readonly Column[], sights: readonly Sight[]): Mapping['lots'] {
  const plant = sights[columns.findIndex(({ is }) => is === 'plant' || is === 'genus')]?.cells ?? [];
  const isParted = columns.some(({ is }) => is === 'date' || is === 'batch');
  return isParted && new Set(plant).size < plant.length ? 'plant' : 'row';
}
