/** What an import does and does not, in words. */
import { shown } from '../syntax/reader.ts';
import type { Imported } from './import.ts';
import type { Column, Mapping } from './mapping.ts';
import { roles } from './roles.ts';
import type { DecodedTable } from './encoding.ts';

const delimiterWords = { ',': 'a comma', ';': 'a semicolon', '\t': 'a tab' } as const;

/** How the sheet was read, a line for each column. */
export function mappingLines(mapping: Mapping, encoding: DecodedTable['encoding']): string[] {
  const { delimiter, headingRow, dates, columns } = mapping;
  const order = dates === undefined ? '' : `, dates with the ${dates === 'day-month' ? 'day' : 'month'} first`;
  const width = Math.min(30, Math.max(...columns.map(({ heading }) => shown(heading).length)));
  return [
    `${encoding}, columns divided by ${delimiterWords[delimiter]}, headings in row ${headingRow}${order}`,
    ...columns.map(column => `  ${shown(column.heading).padEnd(width)}  ${columnWords(column)}`),
  ];
}

function columnWords({ is, date, day, week, counts, unit, agent }: Column): string {
  const when = date ?? (day !== undefined ? `day ${day} after sowing` : week !== undefined ? `week ${week} after sowing` : undefined);
  const more = [when, counts === 'total' ? 'the total so far' : counts === 'new' ? 'what was new' : undefined, agent, unit && `in ${shown(unit)}`];
  const said = more.filter(each => each !== undefined && each !== '').join(', ');
  return `${is}: ${roles[is]}${said === '' ? '' : ` (${said})`}`;
}

/** Example: '5 rows give 12 records; 2 rows are in the journal already; 1 row is empty' */
export function resultLine({ rows: { imported, known, empty }, records, left }: Imported): string {
  return [
    imported.length === 0 ? 'Nothing is new' : `${some(imported.length, 'row gives', 'rows give')} ${some(records, 'record', 'records')}`,
    ...(known.length > 0 ? [`${some(known.length, 'row is', 'rows are')} in the journal already`] : []),
    ...(empty.length > 0 ? [`${some(empty.length, 'row is', 'rows are')} empty`] : []),
    ...(left.length > 0 ? [`${some(left.length, 'row is', 'rows are')} not imported`] : []),
  ].join('; ');
}

function some(n: number, one: string, many: string): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** The rows that became no record, and what else the grower should look at. */
export function listLines({ left, told }: Imported): string[] {
  const section = (title: string, all: Imported['left']) =>
    (all.length === 0 ? [] : [title, ...all.map(({ row, why }) => `  row ${row}: ${oneLine(why)}`)]);
  return [...section('Not imported:', left), ...section('Please check:', told)];
}

function oneLine(text: string): string {
  return text.replaceAll(/\s+/g, ' ');
}

/** Lines around a change that show where it is. */
const AROUND = 3;

/** The difference of two texts of which the second has lines put in, as a unified diff. */
export function diffLines(name: string, before: string, after: string): string[] {
  if (before === after) return [];
  const [old, now] = [linesOf(before), linesOf(after)];
  let same = 0;
  while (same < old.length && old[same] === now[same]) same++;
  const added = now.length - old.length;
  const [from, to] = [Math.max(0, same - AROUND), Math.min(old.length, same + AROUND)];
  return [
    `--- ${before === '' ? '/dev/null' : name}`, `+++ ${name}`,
    `@@ -${old.length === 0 ? 0 : from + 1},${to - from} +${from + 1},${to - from + added} @@`,
    ...old.slice(from, same).map(line => ` ${line}`), ...now.slice(same, same + added).map(line => `+${line}`),
    ...old.slice(same, to).map(line => ` ${line}`),
  ];
}

function linesOf(text: string): string[] {
  const lines = text.split(/\r\n|\r|\n/);
  if (lines.at(-1) === '') lines.pop();
  return lines;
}
