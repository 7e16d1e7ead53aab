import { describe, expect, test } from 'vitest';
import { Journal } from '../../server/src/journal/journal.ts';
import { exact } from '../../server/src/solutions/amounts.ts';
import { counted, journalOf, when } from './helpers.ts';

describe('a journal of several files', () => {
  const journal = journalOf(`
    --- 2026.germ
    day 2026-01-10
    soak VER-24/A 19:00, G1 10 mL, 24 h
    count VER-24/A 2026-01-20, 3
    --- lots.germ
    lot VER-24 Veratrum nigrum, 60 seeds
    split VER-24, A 24 seeds
    lot ACO-24 Aconitum, 10 seeds
    --- bench.germ
    stock G1 2026-01-09, GA3 20 mg, 20 mL
    zone Europe/Vienna
  `);

  test('is one: a lot of one file has its life from all', () => {
    const batch = journal.lot('VER-24')!.batches.get('VER-24/A')!;
    expect(when(batch.soaks[0]!.end)).toBe('2026-01-11 19:00');
    expect(counted(batch.totals)).toEqual({ germinated: 3 });
    expect(batch.soaks[0]!.doses[0]!.stock).toBe('G1');
    expect(journal.zone).toBe('Europe/Vienna');
  });

  test('gives its lots and stocks in the order of files and lines', () => {
    expect([...journal.lots()].map(({ id }) => id)).toEqual(['VER-24', 'ACO-24']);
    expect(journal.definedIds()).toEqual(['G1', 'VER-24', 'ACO-24']);
    expect([...journal.solutions()].map(({ id }) => id)).toEqual(['G1']);
  });

  test('says what defines an id, who names it, and what was drawn from it', () => {
    expect([journal.kindOf('G1'), journal.kindOf('VER-24'), journal.kindOf('X')]).toEqual(['stock', 'lot', undefined]);
    const places = (id: string) => journal.mentionsOf(id).map(({ line }) => `${line.store.name}:${line.number}`);
    expect(places('VER-24')).toEqual(['2026.germ:1', '2026.germ:2', 'lots.germ:0', 'lots.germ:1']);
    expect(journal.drawsFrom('G1').map(({ amount, entry }) => [amount, entry.line.number])).toEqual([[exact(10), 1]]);
    expect(journal.lot('G1')).toBe(undefined);
    expect(journal.mentionsOf('X')).toEqual([]);
  });

  test('dates a record by its file', () => {
    const { text } = journal.files.get('2026.germ')!;
    expect(when(journal.entryAt(text.at(1))!.moment)).toBe('2026-01-10 19:00');
    expect(journal.entryAt(text.at(3))).toBe(undefined);
  });
});

describe('a journal that changes', () => {
  const lot = 'lot V Veratrum, 9 seeds\nsow V 2026-01-01\ncount V 2026-01-08, 3';

  test('gives each change a revision of its own', () => {
    const journal = new Journal();
    const revisions = [journal.revision];
    journal.set('a.germ', lot);
    revisions.push(journal.revision);
    journal.edit('a.germ', { start: { line: 2, character: 0 }, end: { line: 2, character: 0 } }, '# ');
    revisions.push(journal.revision);
    journal.settings = {};
    revisions.push(journal.revision);
    journal.remove('a.germ');
    revisions.push(journal.revision);
    expect(new Set(revisions).size).toBe(5);
  });

  test('keeps what an edit does not touch', () => {
    const journal = new Journal();
    journal.set('a.germ', `${lot}\nlot W Iris, 9 seeds\nsow W 2026-01-01`);
    const [v, w] = ['V', 'W'].map(id => journal.lot(id));
    journal.edit('a.germ', { start: { line: 2, character: 20 }, end: { line: 2, character: 21 } }, '4');
    expect(journal.lot('W')).toBe(w);
    expect(journal.lot('V')).not.toBe(v);
    expect(journal.lot('V')!.root.totals.germinated).toBe(4);
  });

  test('tells each who follows once what was touched, first everything', () => {
    const journal = new Journal();
    journal.set('a.germ', `${lot}\nstock G 2026-01-01, GA3 1 mg, 1 mL\nlot W Iris\nsoak W 2026-01-01, G 1 mL`);
    const touched = journal.follow();
    expect([touched().all, touched().all]).toEqual([true, false]);
    journal.edit('a.germ', { start: { line: 3, character: 30 }, end: { line: 3, character: 30 } }, ' ');
    const { ids, all, definitions, common, files, renumbered } = touched();
    expect([[...ids].sort(), all, definitions, common, [...files], [...renumbered]]).toEqual([['G', 'W'], false, true, false, ['a.germ'], []]);
    expect(touched().ids.size).toBe(0);
  });

  test('touches everything when the zone or what is known of a common agent changes, and nothing when a guide does', () => {
    const journal = new Journal();
    journal.set('a.germ', `${lot}\n\n`);
    const touched = journal.follow();
    touched();
    const all = (text: string) => {
      journal.edit('a.germ', { start: { line: 3, character: 0 }, end: { line: 4, character: 0 } }, `${text}\n`);
      return touched().all;
    };
    expect([
      all('zone Europe/Vienna'), all('zone Europe/Vienna '), all('zone Europe/Vienn'), all('zone Europe/Vien'),
      all('agent GA3, solubility 1 g/L'), all('agent kelp, seaweed'), all('guide Iris, GA3 5 ppm'), all('limit soak, 9 h'),
    ]).toEqual([true, false, true, false, true, true, false, true]);
  });

  test('does without a file that is removed, or was never there', () => {
    const journal = new Journal();
    journal.remove('a.germ');
    journal.set('a.germ', lot);
    journal.remove('a.germ');
    expect([[...journal.lots()], [...journal.ids()], journal.files.size]).toEqual([[], [], 0]);
    expect(() => journal.edit('a.germ', { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, 'x')).toThrow(RangeError);
  });

  test('keeps the lines that stay the same when it takes over a new text', () => {
    const journal = new Journal();
    journal.set('a.germ', lot);
    const line = journal.files.get('a.germ')!.text.at(2);
    journal.set('a.germ', `# Winter\n${lot}`);
    expect(journal.files.get('a.germ')!.text.at(3)).toBe(line);
  });
});
