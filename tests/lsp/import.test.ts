import { expect, test } from 'vitest';
import type { ImportShown, SheetAsked } from '../../server/src/lsp/import.ts';
import { inSession } from '../support/lsp-client.ts';

const base64 = (text: string) => Buffer.from(text, 'utf16le').toString('base64');
const sheet: SheetAsked = {
  name: 'notes.csv', bytes: base64('\ufeffLot;Plant;Sown\nÄ-1;Iris;3/4/2026\nX;;\n'), mapping: undefined, answers: {},
  files: { 'file:///w/a.germ': 'lot GEN-25 Gentiana lutea\n' }, target: 'file:///w/a.germ',
};

test('a sheet is asked about, and then shown as the journal with its records', () => inSession({}, async session => {
  const open = await session.ask<ImportShown>('plumule/import', { sheet });
  expect([open.questions.map(({ about }) => about), open.records]).toEqual([['dates'], 0]);
  const shown = await session.ask<ImportShown>('plumule/import', { sheet: { ...sheet, answers: { dates: 'day-month' } } });
  expect(shown.after).toBe('lot GEN-25 Gentiana lutea\n\n# From notes.csv\n\nlot Ä-1 Iris\nsow Ä-1 2026-04-03\n');
  expect(shown.result).toBe('1 row gives 2 records; 1 row is not imported');
  expect(shown.list).toContain('Not imported:\n  row 3: the journal has no lot X, and the sheet names no plant for it\n');
  const again = { ...sheet, mapping: shown.mapping, files: { 'file:///w/b.germ': shown.after } };
  expect((await session.ask<ImportShown>('plumule/import', { sheet: again })).records).toBe(0);
}));

test('what cannot be read is told', () => inSession({}, async session => {
  for (const [given, fault] of [
    [{ mapping: '{}' }, 'notes.csv.mapping.json: “columns” must be a list; delete the file to have it guessed again'],
    [{ bytes: base64('') }, expect.stringContaining('notes.csv: no row has headings that Plumule knows') as string],
    [{ bytes: btoa('PK') }, expect.stringContaining('notes.csv: it is a workbook') as string],
  ] as const) {
    expect((await session.ask<ImportShown>('plumule/import', { sheet: { ...sheet, ...given } })).fault).toEqual(fault);
  }
}));
