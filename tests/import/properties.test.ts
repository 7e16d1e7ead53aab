import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOf, isoOf } from '../../server/src/model/day.ts';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { isEmptyCell, type Table } from '../../server/src/import/table.ts';
import { imported, recordsFrom, saved, TARGET } from './helpers.ts';

const heading = fc.constantFrom(
  'Lot', 'Batch', 'Plant', 'Genus', 'Species', 'Seeds', 'Collected', 'From', 'Stored', 'Tray', 'Treatment', 'GA3 (ppm)', 'Soaked', 'Soak hours',
  'Sown', 'Seeds sown', 'Compost', 'Temp (C)', 'Fridge', 'Weeks cold', 'Out of fridge', 'Pricked out', 'Planted out', 'Discarded', 'Date',
  'Germinated', 'Total emerged', 'Rotted', 'Up on', 'Notes', 'Price', '', '12/02/2026', '19/02/2026', '3 March 2026', 'Day 14', 'Week 2', 'Datum',
);
const common = fc.constantFrom(
  '', '', '', '-', 'GEN-25', 'GEN 25', '17', 'GEN-25/A', 'A', 'B', 'Gentiana lutea', 'Primula, vialii', 'Crocus "x"', '0', '3', '9', '24', '24,0',
  'about 40', '30-40', '1.000', '12/02/2026', '2026-02-19', '13.1.26', '3/4/2026', '2025', 'Sept 2025', 'GA3 500 ppm 24 h', 'water', 'control',
  'GA3', 'GA3 unmeasured', '0,5', '20/10', '18', '8 weeks', 'none', 'mould!', 'own bed', 'from, at "x"', '# 7', 'day 2026-01-01', 'line\nbreak', '=3',
);
const cell = fc.oneof({ weight: 5, arbitrary: common }, { weight: 1, arbitrary: fc.string({ unit: 'grapheme' }) });
const answers = {
  dates: 'day-month' as const, year: 2026, counts: 'new' as const, weekDay: 7, soakedBefore: 1,
};

/** Two headings that are known, any others, and any cells. */
const sheet: fc.Arbitrary<Table> = fc.tuple(
  fc.constantFrom(['Lot', 'Plant'], ['Plant', 'Sown'], ['Lot', 'Date'], ['Plant', 'Date']), fc.array(heading, { maxLength: 7 }),
).chain(([known, others]) => {
  const headings = [...known, ...others];
  const row = fc.array(cell, { minLength: headings.length, maxLength: headings.length });
  return fc.array(row, { maxLength: 6 }).map(rows => ({
    delimiter: ',' as const,
    rows: [headings, ...rows].map((cells, n) => ({ number: n + 1, cells: cells.map(tidy) })),
  }));
});

/** As the reader of tables leaves a cell. */
function tidy(text: string): string {
  return text.replace(/\r\n?|[\v\f\u0085\u2028\u2029]/g, '\n').trim();
}

const journal = fc.constantFrom(
  '', '# mine', 'lot GEN-25 Gentiana lutea, 60 seeds\nday 2026-02-12\ncount GEN-25, 3\n',
  'lot GEN-25 Gentiana lutea\r\nsplit GEN-25, A 24 seeds\r\n  a remark\r\n\r\n# heading\r\nday 2026-02-12\r\ncount GEN-25/A, 3\r\n',
  'stock A 2026-01-01, GA3 20 mg, 20 mL', '<<<<<<< ours\nlot GEN-25 x\n=======\nlot GEN-25 y\n>>>>>>> theirs\n',
);

describe('any table of cells', () => {
  it('has each row accounted for exactly once', () => {
    fc.assert(fc.property(sheet, journal, fc.boolean(), (table, text, sameAsAbove) => {
      const given = { journal: text, answers: { ...answers, sameAsAbove } };
      const { rows: { imported: fresh, known, empty, head }, left } = imported(table, given);
      const all = [...fresh, ...known, ...empty, ...head, ...left.map(({ row }) => row)].sort((a, b) => a - b);
      expect(all).toEqual(table.rows.map(({ number }) => number));
    }), { numRuns: 300 });
  });

  it('adds nothing when it is imported again', () => {
    fc.assert(fc.property(sheet, journal, (table, text) => {
      const first = imported(table, { journal: text, answers });
      const again = imported(table, { journal: first.after, mapping: saved(first) });
      expect(again.after).toBe(first.after);
      expect([again.records, again.rows.imported]).toEqual([0, []]);
      expect(again.left.map(({ row }) => row)).toEqual(first.left.map(({ row }) => row));
    }), { numRuns: 300 });
  });

  it('leaves every line of the journal as it was, and adds lines that can be read', () => {
    fc.assert(fc.property(sheet, journal, (table, text) => {
      const { after } = imported(table, { journal: text, answers });
      const [old, now] = [text.split(/\r?\n/), after.split(/\r?\n/)];
      let at = 0;
      for (const line of now) {
        if (at < old.length && line === old[at]) at++;
        else expect(parse(line).problems, line).toEqual([]);
      }
      expect(old.slice(at).join('')).toBe('');
      // Nothing of the sheet's own lacks its lot or its batch.
      const read = new Journal();
      read.set(TARGET, after);
      const book = new ProblemBook(read);
      book.update({ day: dayOf(2030, 1, 1)!, minutes: undefined });
      const codes = text === '' ? book.of(TARGET).map(({ problem }) => problem.code) : [];
      for (const code of ['unknown-lot', 'unknown-batch', 'duplicate-definition', 'missing-date'] as const) {
        expect(codes).not.toContain(code);
      }
    }), { numRuns: 300 });
  });

  it('loses no word of a remark', () => {
    fc.assert(fc.property(sheet, table => {
      const { after, mapping, rows } = imported(table, { answers });
      const columns = mapping.columns.flatMap(({ is }, n) => (is === 'remark' ? [n] : []));
      for (const { number, cells } of table.rows.filter(row => rows.imported.includes(row.number))) {
        const words = columns.map(n => cells[n]!).filter(cell => !isEmptyCell(cell)).flatMap(cell => cell.split(/\s+/));
        for (const word of words) expect(after, `row ${number}`).toContain(word);
      }
    }), { numRuns: 300 });
  });
});

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, each) => sum + each, 0);
}

const FIRST = dayOf(2026, 1, 5)!;

/** Lots of which each has its seeds and a count a week. */
const grown = fc.array(fc.record({
  seeds: fc.integer({ min: 40, max: 90 }),
  counts: fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 5, maxLength: 5 }),
}), { minLength: 1, maxLength: 4 });

describe('what is imported', () => {
  it.each(['a column a date', 'a row a count'] as const)('reads back to the same facts, from %s', habit => {
    fc.assert(fc.property(grown, fc.boolean(), (lots, isTotal) => {
      const days = [0, 1, 2, 3, 4].map(week => isoOf(FIRST + 7 * week));
      const written = lots.map(({ counts }) => counts.map((n, i) => (isTotal ? sumOf(counts.slice(0, i + 1)) : n)));
      const heads = lots.map(({ seeds }, n) => `X-${n};Plant ${n};${seeds}`);
      const rows = habit === 'a column a date'
        ? [`Lot;Plant;Seeds;${days.join(';')}`, ...heads.map((head, n) => `${head};${written[n]!.join(';')}`)]
        : ['Lot;Plant;Seeds;Date;Germinated', ...heads.flatMap((head, n) =>
            written[n]!.map((count, i) => `${head};${days[i]!};${count}`))];
      const { after } = imported(rows.join('\n'), { answers: { counts: isTotal ? 'total' : 'new' } });
      const read = new Journal();
      read.set(TARGET, after);
      expect([...read.lots()].map(({ id, plant, root }) => [id, plant, root.totals.germinated])).toEqual(
        lots.map(({ counts }, n) => [`X-${n}`, `Plant ${n}`, sumOf(counts)]));
      expect(recordsFrom(rows.join('\n'), { journal: after, answers: { counts: isTotal ? 'total' : 'new' } }).lines).toEqual([]);
    }));
  });
});
