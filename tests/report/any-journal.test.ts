import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { reportData } from '../../server/src/report/json.ts';
import { reportMarkdown } from '../../server/src/report/markdown.ts';
import { reportOf, reportOnLot } from '../../server/src/report/report.ts';
import { reportText } from '../../server/src/report/text.ts';
import { at } from './helpers.ts';

const batch = fc.constantFrom('L', 'L/A', 'L/B', 'L/A/1', 'M', 'M/A');
const day = fc.integer({ min: 1, max: 28 }).map(n => `2026-01-${String(n).padStart(2, '0')}`);
const count = fc.integer({ min: 0, max: 9 });

/** Records of two lots of one plant, in any order, with whatever numbers: most of it cannot be. */
const line = fc.oneof(
  fc.tuple(batch, count, count).map(([id, a, b]) => `split ${id}, A ${a} seeds, B ${b} seeds`),
  fc.tuple(batch, day, count).map(([id, date, a]) => `split ${id} ${date}, 1 ${a} seeds`),
  fc.tuple(batch, day, fc.constantFrom('water', 'GA3 500 ppm', 'GA3 250 ppm', 'GA3 unmeasured', 'KNO3 0.2 %', 'bleach 1 %', 'XYZ'))
    .map(([id, date, what]) => `soak ${id} ${date} 08:00, ${what}, 24 h`),
  fc.tuple(batch, day, fc.constantFrom('', ', 18 C', ', in grit', ', 3 seeds')).map(([id, date, more]) => `sow ${id} ${date}${more}`),
  fc.tuple(batch, day).map(([id, date]) => `chill ${id} ${date}, 4 C, 9 days`),
  fc.tuple(batch, day).map(([id, date]) => `scarify ${id} ${date}`),
  fc.tuple(batch, day, count, fc.constantFrom('', ', 1 rotted', ', 2 lost', ', 1 leggy', ', 2 leaf', ', 1 died', ', x'))
    .map(([id, date, n, more]) => `count ${id} ${date}, ${n}${more}`),
  fc.tuple(batch, day, count, count).map(([id, date, a, b]) => `cut ${id} ${date}, ${a} fresh, ${b} empty`),
  fc.tuple(batch, day).map(([id, date]) => `discard ${id} ${date}`),
  fc.tuple(batch, day).map(([id, date]) => `apply ${id} ${date}, GA3 100 ppm, 2 drops`),
);

/** Every number in it is finite: what cannot be given says why. */
function expectSound(value: unknown): void {
  if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  if (typeof value === 'object' && value !== null) for (const part of Object.values(value)) expectSound(part);
}

describe('whatever a journal says', () => {
  it('is reported without a number that is none, and without a stop', () => {
    const lines = fc.array(line, { minLength: 5, maxLength: 40 });
    fc.assert(fc.property(lines, fc.constantFrom(Infinity, 20_470), (records, until) => {
      const journal = new Journal(until);
      journal.set('a.germ', ['lot L Iris alba, 20 seeds', 'lot M Iris alba', ...records].join('\n'));
      const book = new ProblemBook(journal);
      const now = at('2026-02-01');
      book.update(now);
      const report = reportOf(journal, book, { now, by: 'species' });
      expectSound(reportData(report));
      for (const each of [report, { ...report, plants: undefined }]) {
        expect(`${reportText([each])}${reportMarkdown([each])}`).not.toMatch(/\b(NaN|undefined|Infinity)\b/);
      }
    }), { numRuns: 200 });
  });

  it('is told of one lot as in the report of all, errors in other files too', () => {
    const files = fc.array(fc.array(line, { maxLength: 12 }), { minLength: 1, maxLength: 3 });
    fc.assert(fc.property(files, texts => {
      const journal = new Journal();
      journal.set('lots.germ', 'lot L Iris alba, 20 seeds\nlot M Iris alba\n');
      for (const [i, records] of texts.entries()) journal.set(`${i}.germ`, records.join('\n'));
      const book = new ProblemBook(journal);
      const now = at('2026-02-01');
      book.update(now);
      for (const each of reportOf(journal, book, { now }).lots) {
        expect(reportOnLot(each.lot, journal, book, now)).toEqual(each);
      }
    }), { numRuns: 100 });
  });
});
