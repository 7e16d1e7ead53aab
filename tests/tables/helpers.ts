import fc from 'fast-check';
import { Journal } from '../../server/src/journal/journal.ts';
import type { Cell, Source } from '../../server/src/tables/table.ts';
import { filledTables, type FilledTable } from '../../server/src/tables/tables.ts';
import { at } from '../report/helpers.ts';
import { journal } from '../support/arbitrary-journal.ts';
import { anyLine } from '../support/arbitrary-lines.ts';
import { readFixture, type FixtureFile } from '../support/fixture.ts';

export function sourceOf(files: readonly FixtureFile[], name = 'mine', now = at('2026-06-01', 12)): Source {
  const read = new Journal();
  // As on a disk: half a pair of surrogates is no text there.
  for (const file of files) read.set(file.name, Buffer.from(file.text).toString());
  return { name, journal: read, files: files.map(file => file.name), now };
}

/** The tables of a journal written as a fixture. */
export function tablesFor(fixture: string): FilledTable[] {
  return filledTables([sourceOf(readFixture(fixture).files)]);
}

export function tableOf(filled: readonly FilledTable[], name: string): FilledTable {
  return filled.find(each => each.table.name === name)!;
}

/** The rows of a table as objects, with these columns alone. */
export function rowsOf(filled: readonly FilledTable[], name: string, ...columns: string[]): Record<string, Cell>[] {
  const { table: { fields }, rows } = tableOf(filled, name);
  const all = fields.map(field => field.name);
  const unknown = columns.filter(column => !all.includes(column));
  if (unknown.length > 0) throw new RangeError(`no column ${unknown.join(', ')} in ${name}`);
  return rows.map(row => Object.fromEntries(columns.map(column => [column, row[all.indexOf(column)]!])));
}

/** Journals in which all adds up, and journals in which little does. */
export const anyJournal: fc.Arbitrary<readonly FixtureFile[]> = fc.oneof(
  journal.map(({ files }) => files),
  fc.array(anyLine, { maxLength: 40 }).map(lines => [{ name: 'any.germ', text: lines.join('\n') }]),
  fc.tuple(journal, fc.array(anyLine, { maxLength: 8 }), fc.nat()).map(([{ files }, lines, where]) => {
    const [first, ...others] = files;
    const all = first!.text.split('\n');
    all.splice(where % all.length, 0, ...lines);
    return [{ name: first!.name, text: all.join('\n') }, ...others];
  }),
);
