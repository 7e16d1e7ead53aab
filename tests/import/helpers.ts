import { readFileSync } from 'node:fs';
import { decodeTable } from '../../server/src/import/encoding.ts';
import { importTable, type Imported } from '../../server/src/import/import.ts';
import type { Answers } from '../../server/src/import/answers.ts';
import { readMapping, mappingText, type Mapping } from '../../server/src/import/mapping.ts';
import { readTable, type Table } from '../../server/src/import/table.ts';

export const TARGET = 'journal.germ';

export function sheetNamed(name: string): Table {
  const decoded = decodeTable(readFileSync(new URL(`sheets/${name}`, import.meta.url)));
  if ('fault' in decoded) throw new Error(decoded.fault);
  return tableOf(decoded.text);
}

function tableOf(text: string): Table {
  const table = readTable(text);
  if ('fault' in table) throw new Error(table.fault);
  return table;
}

interface Given {
  readonly journal?: string;
  readonly answers?: Answers;
  readonly mapping?: Mapping;
}

export function imported(sheet: string | Table, { journal, answers = {}, mapping }: Given = {}): Imported {
  const files = new Map(journal === undefined ? [] : [[TARGET, journal]]);
  const table = typeof sheet === 'string' ? tableOf(sheet) : sheet;
  const result = importTable({ name: 'notes.csv', table, mapping, answers, files, target: TARGET });
  if ('fault' in result) throw new Error(result.fault);
  return result;
}

/** The records alone, and what is said of rows. */
export function recordsFrom(
  sheet: string | Table, given: Given = {},
): { lines: string[]; left: string[]; told: string[] } {
  const { after, left, told, questions } = imported(sheet, given);
  if (questions.length > 0) throw new Error(questions.map(({ text }) => text).join(' '));
  const before = (given.journal ?? '').split('\n');
  const lines = after.split('\n').filter(line => line !== '' && !line.startsWith('#') && !before.includes(line));
  const said = (all: Imported['left']) => all.map(({ row, why }) => `${row}: ${why}`);
  return { lines, left: said(left), told: said(told) };
}

/** The mapping after it was written to a file and read again. */
export function saved({ mapping }: Imported): Mapping {
  const read = readMapping(mappingText(mapping));
  if ('fault' in read) throw new Error(read.fault);
  return read;
}
