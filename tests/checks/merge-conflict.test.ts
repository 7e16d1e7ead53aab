import { describe, expect, it } from 'vitest';
import { Journal } from '../../server/src/journal/journal.ts';
import { printMoment } from '../../server/src/journal/moment.ts';
import { expectAllMarked } from './marked.ts';

describe('merge-conflict', () => {
  it('is one problem; the first version counts, and the rest of the file is read as ever', () => {
    expectAllMarked(`
      lot ADO-25 Adonis vernalis, 60 seeds
      <<<<<<< ours
      ^^^^^^^^^^^^ merge-conflict
      split ADO-25, A 24 seeds, B 24 seeds
      day 2026-01-10
      ||||||| base
      day 2026-01-09
      =======
      split ADO-25, A 60 seeds, A 60 seeds
      day 2026-01-31
      sowed ADO-25
      >>>>>>> theirs
      sow ADO-25/A, 24 seeds
      sow ADO-25/B, 24 seeds
      count ADO-25/A 2026-01-25, 25
                                 ^^ count-exceeds-sown
    `, { now: '2026-01-26' });
  });

  it('is none where the marks do not make one: these are lines that cannot be read', () => {
    expectAllMarked(`
      <<<<<<< ours
      ^ unknown-line
      lot ADO-25 Adonis vernalis, 60 seeds
      >>>>>>> theirs
      ^ unknown-line
      =======
      ^ unknown-line
      ======== a rule
      ^ unknown-line
    `);
  });

  it('is gone, and all counts, once the marks are', () => {
    const journal = new Journal();
    journal.set('a.germ', 'lot L Iris\nday 2026-01-01\n<<<<<<< a\nday 2026-01-02\n=======\nnote L, one\nday 2026-01-03\n>>>>>>> b\nnote L, two\n');
    const days = () => journal.mentionsOf('L').map(({ moment }) => moment && printMoment(moment));
    expect(days()).toEqual([undefined, '2026-01-02']);
    journal.edit('a.germ', { start: { line: 7, character: 0 }, end: { line: 8, character: 0 } }, '');
    expect(days()).toEqual([undefined, '2026-01-02', '2026-01-03']);
    expect(journal.files.get('a.germ')!.conflicts).toEqual([]);
    journal.edit('a.germ', { start: { line: 7, character: 0 }, end: { line: 7, character: 0 } }, '>>>>>>> b\n');
    expect(days()).toEqual([undefined, '2026-01-02']);
    journal.remove('a.germ');
    expect(days()).toEqual([]);
  });
});
