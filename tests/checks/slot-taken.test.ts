import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOf } from '../../server/src/model/day.ts';
import { plainProblems } from '../support/plain.ts';
import { expectMarked, problemsIn } from './marked.ts';

const codes = ['slot-taken'] as const;

describe('two batches in one slot at one time', () => {
  it('are marked at the one that came later, whatever the order of lines and files', () => {
    expectMarked(codes, `
      --- a.germ
      lot PAR-26 Paris polyphylla, 16 seeds
      move PAR-26 2026-02-01, at bag 3 slot 2
                              ^^^^^^^^^^^^^^^ slot-taken
      --- b.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds, B 24 seeds
      sow VER-24/A 2026-01-11, at bag 3 slot 2
    `);
  });

  it('without a time of day come at the beginning of their day', () => {
    expectMarked(codes, `
      lot PAR-26 Paris polyphylla, 16 seeds
      lot VER-24 Veratrum nigrum, 60 seeds
      sow PAR-26 2026-01-12, at bag 3 slot 2
                             ^^^^^^^^^^^^^^^ slot-taken
      sow VER-24 2026-01-11 23:59, at bag 3 slot 2
    `);
    expectMarked(codes, `
      lot PAR-26 Paris polyphylla, 16 seeds
      lot VER-24 Veratrum nigrum, 60 seeds
      sow PAR-26 2026-01-12 00:00, at bag 3 slot 2
      sow VER-24 2026-01-12, at bag 3 slot 2
                             ^^^^^^^^^^^^^^^ slot-taken
    `);
  });

  it('are named in the message, which points at the other place', () => {
    const source = `
      lot PAR-26 Paris polyphylla, 16 seeds
      sow PAR-26 2026-01-11, at bag 3 slot 2
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-02-01, at bag 3 slot 2
    `;
    expect(problemsIn('slot-taken', source).map(({ message }) => message.split('. Correct')[0])).toEqual([
      'VER-24 is put at “bag 3 slot 2”, but PAR-26 is there (since 2026-01-11). You cannot tell two batches in one slot apart',
    ]);
    const journal = new Journal();
    journal.set('a.germ', source.replaceAll('\n      ', '\n'));
    const book = new ProblemBook(journal);
    book.update({ day: dayOf(2026, 6, 1)!, minutes: undefined });
    const [found] = book.of('a.germ').filter(({ problem }) => problem.code === 'slot-taken');
    const related = found?.related.map(({ line, start, end, message }) =>
      ({ line: line.number, at: line.text.slice(start, end), message }));
    expect(related).toEqual([{ line: 2, at: 'at bag 3 slot 2', message: 'PAR-26 was put here' }]);
  });

  it('are two batches of one lot as well', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 48 seeds
      split VER-24, A 24 seeds, B 24 seeds
      sow VER-24/A 2026-01-11, at bag 3 slot 2
      sow VER-24/B 2026-01-11, at bag 3 slot 2
                               ^^^^^^^^^^^^^^^ slot-taken
    `);
  });

  it('are none of a batch and what was split off it, and are certain only where both were there before the first went', () => {
    expectMarked(codes, `
      lot A Paris polyphylla, 10 seeds
      sow A 2026-01-01, at bag 1 slot 1
      split A 2026-01-03, X 5 seeds
      move A/X 2026-01-04, at bag 1 slot 1
      lot B Paris polyphylla, 10 seeds, at bag 2 slot 1
      lot C Paris polyphylla, 10 seeds, at bag 2 slot 1
      move C 2026-01-20, at bag 2 slot 2
      lot D Paris polyphylla, 10 seeds, at bag 3 slot 1
      move D 2026-01-10, at bag 3 slot 2
      lot E Paris polyphylla, 10 seeds
      sow E 2026-01-05, at bag 3 slot 1
                        ^^^^^^^^^^^^^^^ slot-taken
      lot F Paris polyphylla, 10 seeds
      sow F 2026-01-10, at bag 3 slot 3
      discard F 2026-01-12
      lot G Paris polyphylla, 10 seeds
      sow G 2026-01-11, at bag 3 slot 3
                        ^^^^^^^^^^^^^^^ slot-taken
      move G 2026-01-20, at bag 3 slot 4
    `);
  });

  it('are found whatever the case and the blanks of the two texts', () => {
    expectMarked(codes, `
      lot PAR-26 Paris polyphylla, 16 seeds
      sow PAR-26 2026-01-11, at Bag 3 Slot 02
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-02-01, at bag3 slot2
                             ^^^^^^^^^^^^^ slot-taken
    `);
  });

  it('are no problem in a place that names no slot, or in two slots', () => {
    expectMarked(codes, `
      lot PAR-26 Paris polyphylla, 16 seeds, at tin 1
      sow PAR-26 2026-01-11, at fridge
      lot VER-24 Veratrum nigrum, 60 seeds, at tin 1
      sow VER-24 2026-01-11, at fridge
      lot PRI-26 Primula vialii, 60 seeds
      sow PRI-26 2026-01-11, at bag 1 slot 11
      lot IRI-26 Iris sibirica, 60 seeds
      sow IRI-26 2026-01-11, at bag 11 slot 1
    `);
  });

  it('are no problem when the first has gone: moved, given out, closed, or out of its soak', () => {
    expectMarked(codes, `
      lot A Paris polyphylla, 10 seeds
      sow A 2026-01-01, at bag 1 slot 1
      move A 2026-01-05, at bag 2 slot 1
      lot B Paris polyphylla, 10 seeds
      sow B 2026-01-05, at bag 1 slot 1
      split B 2026-01-10, X 5 seeds, Y 5 seeds
      move B/X 2026-01-10, at bag 2 slot 2
      move B/Y 2026-01-10, at bag 2 slot 3
      lot C Paris polyphylla, 10 seeds
      sow C 2026-01-10, at bag 1 slot 1
      discard C 2026-01-20, soft
      lot D Paris polyphylla, 10 seeds
      soak D 2026-01-20 19:00, water, 24 h, at bag 1 slot 1
      lot E Paris polyphylla, 10 seeds
      soak E 2026-01-21 19:00, water, 24 h, at bag 1 slot 1
      lift E 2026-01-22 07:00
      lot F Paris polyphylla, 10 seeds
      soak F 2026-01-22 07:00, water, 24 h, at bag 1 slot 1
    `);
  });

  it('are no problem on a day on which one came and one went, when no time of day is written', () => {
    expectMarked(codes, `
      lot A Paris polyphylla, 10 seeds
      lot B Paris polyphylla, 10 seeds
      sow B 2026-01-05, at bag 1 slot 1
      sow A 2026-01-01, at bag 1 slot 1
      move A 2026-01-05, at bag 2 slot 1
    `);
  });

  it('are marked where the times of day say so', () => {
    expectMarked(codes, `
      lot A Paris polyphylla, 10 seeds
      soak A 2026-01-05 08:00, water, 6 h, at jar slot 1
      lot B Paris polyphylla, 10 seeds
      soak B 2026-01-05 13:59, water, 6 h, at jar slot 1
                                           ^^^^^^^^^^^^^ slot-taken
      lot C Paris polyphylla, 10 seeds
      soak C 2026-01-05 19:59, water, 6 h, at jar slot 1
    `);
  });

  it('may be a batch and what was split off from it, or all that came by one record', () => {
    expectMarked(codes, `
      lot A Paris polyphylla, 30 seeds, at tin 1 slot 1
      split A 2026-01-01, X 10 seeds, Y 10 seeds
      move A/X 2026-01-02, at tin 1 slot 1
      lot B Paris polyphylla, 20 seeds
      soak B 2026-01-01 19:00, water, 24 h, at jar slot 1
      split B 2026-01-01 20:00, X 10 seeds, Y 10 seeds
    `);
  });

  it('are marked for packets whose day is not written when both are still there', () => {
    expectMarked(codes, `
      lot A Paris polyphylla, 30 seeds, at tin 1 slot 1
      lot B Paris polyphylla, 30 seeds, at tin 1 slot 1
                                        ^^^^^^^^^^^^^^^ slot-taken
      lot C Paris polyphylla, 30 seeds, at tin 1 slot 2
      sow C 2026-01-01, at bag 1
      lot D Paris polyphylla, 30 seeds, at tin 1 slot 2
    `);
  });
});

describe('an edited journal', () => {
  const lines = [
    'lot A Paris polyphylla, 10 seeds', 'lot B Iris alba, 10 seeds, at bag 1 slot 1', 'lot C Iris alba, 10 seeds, at bag 1 slot 1',
    'sow A 2026-01-01, at bag 1 slot 1', 'move B 2026-01-03, at Bag1 slot 2', 'move A 2026-01-02, at bag 1 slot 2',
    'soak C 2026-01-01 08:00, water, 6 h, at bag 1 slot 2', 'lift C 2026-01-04', 'discard A 2026-01-02', 'discard B 2026-01-05',
    'split A, X 5 seeds, Y 5 seeds', 'move A/X 2026-01-04, at bag 1 slot 1', 'sow B 2026-01-02, 4 seeds, at bag 1 slot 2', 'count A 2026-01-04, 1',
  ];
  const range = (line: number, to: number) => ({ start: { line, character: 0 }, end: { line: to, character: 0 } });
  const inserted = fc.array(fc.constantFrom(...lines), { maxLength: 3 });
  const step = fc.record({ place: fc.nat(), remove: fc.nat(2), insert: inserted });

  it('has the same problems as one that is read anew', () => {
    const now = { day: dayOf(2026, 6, 1)!, minutes: undefined };
    fc.assert(fc.property(fc.array(step, { minLength: 1, maxLength: 12 }), steps => {
      const journal = new Journal();
      journal.set('a.germ', `${lines.join('\n')}\n`);
      const book = new ProblemBook(journal);
      book.update(now);
      for (const { place, remove, insert } of steps) {
        const count = journal.files.get('a.germ')!.text.lineCount;
        const from = place % count;
        const text = insert.map(each => `${each}\n`).join('');
        journal.edit('a.germ', range(from, Math.min(count - 1, from + remove)), text);
        book.update(now);
        const fresh = new Journal();
        fresh.set('a.germ', journal.files.get('a.germ')!.text.text());
        const other = new ProblemBook(fresh);
        other.update(now);
        expect(plainProblems(book, ['a.germ'])).toEqual(plainProblems(other, ['a.germ']));
      }
    }), { numRuns: 200 });
  });
});
