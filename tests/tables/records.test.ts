import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tables } from '../../server/src/tables/tables.ts';
import { anyJournal, rowsOf, sourceOf, tablesFor } from './helpers.ts';
import { filledTables } from '../../server/src/tables/tables.ts';

describe('every line of a journal', () => {
  it('is in one table, or is blank, a comment or a remark', () => {
    fc.assert(fc.property(anyJournal, files => {
      const source = sourceOf(files);
      const filled = filledTables([source]);
      const told = ['lots', 'events', 'left_out'].flatMap(name => rowsOf(filled, name, 'file', 'line')
        .map(({ file, line }) => `${String(file)}:${String(line)}`));
      const lines = [...source.journal.files.values()].flatMap(({ text }) => [...text]);
      const wanted = lines.filter(({ content: { kind } }) => kind === 'record' || kind === 'unread')
        .map(line => `${line.store.name}:${line.number + 1}`);
      expect(told.sort()).toEqual(wanted.sort());
    }), { numRuns: 60 });
  });

  it('is in them by what it is', () => {
    const filled = tablesFor(`
      --- a.germ
      zone Europe/Vienna
      lot A-1 Iris alba, 20 seeds
        From the pond.
      lot A-1 Iris nigra, 9 seeds
      day 2026-01-02
        Frost.
      note A-1, cold
      nonsense here
      count B-9, 3
      sow A-1/C, 3 seeds
      count A-1, 3 germinated, x
      --- b.germ
      note A-1, no date
      <<<<<<< ours
      note A-1 2026-01-03, one
      =======
      note A-1 2026-01-03, two
      >>>>>>> theirs
    `);
    expect(rowsOf(filled, 'lots', 'lot', 'line', 'plant', 'remark')).toEqual([{ lot: 'A-1', line: 2, plant: 'Iris alba', remark: 'From the pond.' }]);
    expect(rowsOf(filled, 'events', 'file', 'line', 'event', 'lot', 'batch', 'reading', 'date')).toEqual([
      { file: 'a.germ', line: 7, event: 'note', lot: 'A-1', batch: 'A-1', reading: 'read', date: '2026-01-02' },
      { file: 'a.germ', line: 9, event: 'count', lot: null, batch: null, reading: 'unknown id', date: '2026-01-02' },
      { file: 'a.germ', line: 10, event: 'sow', lot: 'A-1', batch: null, reading: 'unknown id', date: '2026-01-02' },
      { file: 'a.germ', line: 11, event: 'count', lot: 'A-1', batch: 'A-1', reading: 'read in part', date: '2026-01-02' },
      { file: 'b.germ', line: 1, event: 'note', lot: 'A-1', batch: 'A-1', reading: 'no date', date: null },
      { file: 'b.germ', line: 3, event: 'note', lot: 'A-1', batch: 'A-1', reading: 'read', date: '2026-01-03' },
    ]);
    expect(rowsOf(filled, 'left_out', 'file', 'line', 'why', 'keyword', 'remark')).toEqual([
      { file: 'a.germ', line: 1, why: 'setting', keyword: 'zone', remark: null },
      { file: 'a.germ', line: 4, why: 'other version of a lot', keyword: 'lot', remark: null },
      { file: 'a.germ', line: 5, why: 'day', keyword: 'day', remark: 'Frost.' },
      { file: 'a.germ', line: 8, why: 'not readable', keyword: null, remark: null },
      { file: 'b.germ', line: 2, why: 'open conflict', keyword: null, remark: null },
      { file: 'b.germ', line: 4, why: 'open conflict', keyword: null, remark: null },
      { file: 'b.germ', line: 5, why: 'open conflict', keyword: 'note', remark: null },
      { file: 'b.germ', line: 6, why: 'open conflict', keyword: null, remark: null },
    ]);
  });
});

describe('the tables', () => {
  it('call no two columns the same, and write units into names', () => {
    for (const { fields } of tables) {
      const names = fields.map(({ name }) => name);
      expect(new Set(names).size).toBe(names.length);
      for (const name of names) expect(name).toMatch(/^[a-z][a-z0-9]*(_[a-z0-9]+)*$/);
    }
    const all = tables.flatMap(({ fields }) => fields.map(({ name }) => name));
    for (const name of ['strength_ppm', 'duration_h_least', 'volume_ml', 'temperature_day_c']) expect(all).toContain(name);
  });

  it('tell of the files asked for alone, with the lots that these say something of', () => {
    const files = [
      { name: 'a.germ', text: 'lot A Iris alba, 9 seeds\nlot B Iris alba, 9 seeds\n' },
      { name: 'b.germ', text: 'sow A 2026-01-02\ncount A 2026-01-09, 1\n' },
    ];
    const filled = filledTables([{ ...sourceOf(files), files: ['b.germ'] }]);
    expect(rowsOf(filled, 'lots', 'lot')).toEqual([{ lot: 'A' }]);
    expect(rowsOf(filled, 'events', 'event', 'file')).toEqual([
      { event: 'sow', file: 'b.germ' }, { event: 'count', file: 'b.germ' },
    ]);
  });

  it('put several journals one behind the other, each under its name', () => {
    const files = [{ name: 'a.germ', text: 'lot A Iris alba, 9 seeds\n' }];
    expect(rowsOf(filledTables([sourceOf(files, 'one'), sourceOf(files, 'two')]), 'lots', 'journal', 'lot'))
      .toEqual([{ journal: 'one', lot: 'A' }, { journal: 'two', lot: 'A' }]);
  });
});
