import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { csvOf, harmless } from '../../server/src/tables/csv.ts';
import { jsonLinesOf } from '../../server/src/tables/json-lines.ts';
import type { Cell, CellType, Field } from '../../server/src/tables/table.ts';
import { filledTables, type FilledTable } from '../../server/src/tables/tables.ts';
import { anyJournal, sourceOf, tableOf, tablesFor } from './helpers.ts';

/** What the page on tables says of the CSV: nothing is not known, and one apostrophe at the start is taken away. */
function meant(cell: string, type: CellType): Cell {
  if (cell === '') return null;
  switch (type) {
    case 'string': return cell.replace(/^'/, '');
    case 'integer': case 'number': return Number(cell);
    case 'boolean': return cell === 'true';
    case 'date': case 'time': return cell;
  }
}

function readCsv({ table, rows }: FilledTable): Cell[][] {
  const { data, errors } = Papa.parse<string[]>(csvOf(table, rows).replace(/\n$/, ''));
  expect(errors).toEqual([]);
  const [head, ...cells] = data;
  expect(head).toEqual(table.fields.map(({ name }) => name));
  return cells.map(row => row.map((cell, i) => meant(cell, table.fields[i]!.type)));
}

function readJsonLines({ table, rows }: FilledTable): Cell[][] {
  const lines = jsonLinesOf(table, rows).split('\n');
  expect(lines.pop()).toBe('');
  return lines.map(line => {
    const row = JSON.parse(line) as Record<string, Cell>;
    expect(Object.keys(row)).toEqual(table.fields.map(({ name }) => name));
    return Object.values(row);
  });
}

describe('tables as CSV and as JSON Lines', () => {
  it('say the same, whatever is in the journal, and nothing is lost on the way', () => {
    fc.assert(fc.property(anyJournal, files => {
      for (const filled of filledTables([sourceOf(files)])) {
        expect(readCsv(filled)).toEqual(filled.rows);
        expect(readJsonLines(filled)).toEqual(filled.rows);
      }
    }), { numRuns: 40 });
  });

  it('have a row with as many cells as there are columns, each of the type of its column', () => {
    fc.assert(fc.property(anyJournal, files => {
      const wrong = filledTables([sourceOf(files)]).flatMap(({ table: { key, fields }, rows }) => rows.flatMap(row => {
        expect(row.length).toBe(fields.length);
        return fields.filter((field, i) => !isRight(row[i]!, field, key)).map(({ name }) => [name, row]);
      }));
      expect(wrong).toEqual([]);
    }), { numRuns: 40 });
  });

  function isRight(cell: Cell, { name, type, words }: Field, key: readonly string[]): boolean {
    if (cell === null) return !key.includes(name);
    if (words && !words.includes(String(cell))) return false;
    if (type === 'integer') return Number.isInteger(cell);
    return type === 'number' ? Number.isFinite(cell) : typeof cell === (type === 'boolean' ? 'boolean' : 'string');
  }

  it('come out the same each time', () => {
    const files = fc.sample(anyJournal, { numRuns: 5, seed: 7 });
    for (const each of files) {
      const texts = [1, 2].map(() => filledTables([sourceOf(each)]).map(({ table, rows }) => csvOf(table, rows)));
      expect(texts[1]).toEqual(texts[0]);
    }
  });
});

describe('a cell that a spreadsheet would run', () => {
  const JOURNAL = `
    lot A-1 Iris alba, 20 seeds, from =HYPERLINK("http://x.example"), stored +1, at @home
    note A-1 2026-01-02, -2+3 is a sum
    note A-1 2026-01-03, 'quoted'
    soak A-1 2026-01-10 08:00, water, 24 h
    sow A-1 2026-01-11
      =1+1
  `;

  it('begins with an apostrophe', () => {
    const filled = tablesFor(JOURNAL);
    const { table, rows } = tableOf(filled, 'lots');
    expect(csvOf(table, rows)).toMatch(/'=HYPERLINK.*,'\+1,+'@home/);
    const events = tableOf(filled, 'events');
    expect(csvOf(events.table, events.rows)).toContain('\'-2+3 is a sum');
    expect(csvOf(events.table, events.rows)).toContain('\'=1+1');
  });

  it('stays a number if it is one: days before day 0 keep their minus', () => {
    const { table, rows } = tableOf(tablesFor(JOURNAL), 'events');
    expect(csvOf(table, rows)).toMatch(/,2026-01-10,08:00:00,-1,soak,/);
  });

  it.each(['=1', '+1', '-1', '@a', '\t=1', '\r=1', '\n=1', '＝1', '＋1', '－1', '＠a', '\'=1', '\'', '\'\''])('is %j undone by taking one away', text => {
    expect(harmless(text)).toBe(`'${text}`);
  });

  it('is no other text', () => {
    for (const text of ['a=1', ' =1', '1-2', '', '種', '(-1)']) expect(harmless(text)).toBe(text);
  });
});
