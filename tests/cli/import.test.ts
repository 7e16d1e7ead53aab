import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../disk/helpers.ts';
import { plumule } from './run.ts';

const SHEET = 'Lot,Plant,Seeds,Sown\nGEN-25,Gentiana lutea,60,13/1/2026\n,Iris,9,\n';
const JOURNAL = 'lot ADO-25 Adonis vernalis, 24 seeds\n';

describe('plumule import', () => {
  it('without a file to write to shows what it would write, and writes the mapping alone', async () => {
    const folder = await folderWith({ 'notes.csv': SHEET });
    const { code, stdout, stderr } = await plumule(folder, 'import', 'notes.csv');
    expect(code).toBe(1);
    expect(stdout).toBe(`UTF-8, columns divided by a comma, headings in row 1, dates with the day first
  Lot    lot: the id of the lot, or of a batch such as GEN-25/A
  Plant  plant: the name of the plant
  Seeds  seeds: how many seeds
  Sown   sown: the day of sowing

--- /dev/null
+++ notes.germ
@@ -0,0 +1,4 @@
+# From notes.csv
+
+lot GEN-25 Gentiana lutea, 60 seeds
+sow GEN-25 2026-01-13

1 row gives 2 records; 1 row is not imported
Not imported:
  row 3: it names no lot
`);
    expect(stderr).toBe('plumule: wrote notes.csv.mapping.json, which says what each column is; change it if something is wrong, and import again\n' +
      'plumule: nothing was written; “plumule import notes.csv -o notes.germ” writes it\n');
    expect((await readdir(folder)).sort()).toEqual(['notes.csv', 'notes.csv.mapping.json']);
  });

  it('writes a new journal, and adds to one that is there only what the folder does not know', async () => {
    const folder = await folderWith({ 'notes.csv': SHEET, 'mine.germ': JOURNAL });
    const preview = await plumule(folder, 'import', 'notes.csv', '-o', 'mine.germ', '--preview');
    expect(preview.stdout).toContain('@@ -1,1 +1,6 @@\n lot ADO-25 Adonis vernalis, 24 seeds\n+\n+# From notes.csv\n');
    expect(await readFile(path.join(folder, 'mine.germ'), 'utf8')).toBe(JOURNAL);
    expect((await plumule(folder, 'import', 'notes.csv', '-o', 'new.germ')).stderr).toBe('plumule: wrote 2 records to new.germ\n');
    const written = '# From notes.csv\n\nlot GEN-25 Gentiana lutea, 60 seeds\nsow GEN-25 2026-01-13\n';
    expect(await readFile(path.join(folder, 'new.germ'), 'utf8')).toBe(written);
    const again = await plumule(folder, 'import', 'notes.csv', '-o', 'mine.germ');
    expect(again).toMatchObject({ code: 1, stderr: '' });
    expect(again.stdout).toContain('\nNothing is new; 1 row is in the journal already; 1 row is not imported\n');
    await writeFile(path.join(folder, 'notes.csv'), `${SHEET}GEN-26,Gentiana lutea,9,\n`);
    await plumule(folder, 'import', 'notes.csv', '-o', 'mine.germ');
    expect(await readFile(path.join(folder, 'mine.germ'), 'utf8')).toBe(`${JOURNAL}\n# From notes.csv\n\nlot GEN-26 Gentiana lutea, 9 seeds\n`);
  });

  it('asks before it writes, and keeps the answer in the mapping', async () => {
    const folder = await folderWith({ 'notes.csv': 'Lot,Plant,12/2/2026,3/3/2026\nX,Iris,3,5\n' });
    const { code, stderr } = await plumule(folder, 'import', 'notes.csv', '-o', 'new.germ');
    expect([code, stderr.split('\n').slice(1, 4)]).toEqual([1, [
      'plumule: “12/2/2026” can be read in two ways, and the sheet does not show which. Does the day come first, or the month?',
      'plumule:   --dates day-month: the day first: 3/4 is 3 April', 'plumule:   --dates month-day: the month first: 3/4 is 4 March',
    ]]);
    const counts = await plumule(folder, 'import', 'notes.csv', '-o', 'new.germ', '--dates', 'day-month');
    expect(counts.stderr).toContain('\nplumule:   --counts total: the total so far\n');
    expect((await plumule(folder, 'import', 'notes.csv', '-o', 'new.germ', '--counts', 'total')).code).toBe(0);
    expect(await readFile(path.join(folder, 'new.germ'), 'utf8')).toContain('\ncount X 2026-02-12, =3 germinated\ncount X 2026-03-03, =5 germinated\n');
    const mapping = JSON.parse(await readFile(path.join(folder, 'notes.csv.mapping.json'), 'utf8')) as object;
    expect(mapping).toMatchObject({ dates: 'day-month', counts: 'total' });
  });

  it('does what the page on the command line shows', async () => {
    const page = await readFile(new URL('../../syntaxes/commands.md', import.meta.url), 'utf8');
    const lines = page.split('\n## import\n')[1]!.split('\n- **')[0]!.split('\n').filter(line => /^(?: {4}|$)/.test(line));
    const [sheet, journal] = lines.map(line => line.slice(4)).join('\n').trim().split('\n\n# ');
    const folder = await folderWith({ 'notes.csv': sheet! });
    expect((await plumule(folder, 'import', 'notes.csv', '-o', 'winter.germ')).code).toBe(0);
    expect(await readFile(path.join(folder, 'winter.germ'), 'utf8')).toBe(`# ${journal!.trim()}\n`);
  });

  it('says what is wrong with a sheet, a mapping or a file, and writes nothing', async () => {
    const folder = await folderWith({
      'notes.csv': SHEET, 'odd.csv': 'a,b\n1,2\n', 'book.csv': 'PK\u0003\u0004', 'torn.csv': 'Lot,Plant\n"X,Y\n', 'bad.csv': SHEET,
      'bad.csv.mapping.json': '{}', 'own.csv': SHEET, 'own.csv.mapping.json': '',
    });
    for (const [args, message] of [
      [['gone.csv'], 'gone.csv: there is no such file or folder'],
      [['odd.csv'], 'odd.csv: no row has headings that Plumule knows, such as “Plant”, “Seeds”, “Sown” or “Germinated”; write some above the columns'],
      [['book.csv'], 'book.csv: it is a workbook or an archive, not a table as text; save the sheet as CSV (UTF-8) and import that'],
      [['torn.csv'], 'torn.csv: a quotation mark in row 2 is not closed, or stands inside a cell; fix it in the sheet'],
      [['bad.csv'], 'bad.csv.mapping.json: “columns” must be a list; delete the file to have it guessed again'],
      [['notes.csv', '-o', 'notes.txt'], 'notes.txt: the name of a journal must end in .germ'],
    ] as const) {
      expect(await plumule(folder, 'import', ...args)).toEqual({ code: 2, stdout: '', stderr: `plumule: ${message}\n` });
    }
    expect((await readdir(folder)).filter(name => name.endsWith('.germ'))).toEqual([]);
  });
});
