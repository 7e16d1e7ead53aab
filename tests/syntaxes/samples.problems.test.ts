import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import type { Moment } from '../../server/src/journal/moment.ts';
import { dayOf } from '../../server/src/model/day.ts';
import { problemKinds } from '../../server/src/model/problems.ts';

const folder = new URL('../../samples/', import.meta.url);

/** The day after the last line of the diary was written. */
const today = { day: dayOf(2026, 11, 25)!, minutes: 9 * 60 };

const journal = new Journal();
const files = readdirSync(folder).filter(name => name.endsWith('.germ'));
for (const name of files) journal.set(name, readFileSync(new URL(name, folder), 'utf8'));
const book = new ProblemBook(journal);
book.update(today);

describe('the samples as a journal', () => {
  test.each(files.filter(name => !['problems.germ', '2024-25-untidy.germ'].includes(name)))('%s has no errors and no warnings', name => {
    const problems = book.of(name).filter(({ problem }) => problemKinds[problem.code].severity !== 'hint');
    expect(problems.map(({ line, problem }) => `${line.number + 1}: ${problem.message}`)).toEqual([]);
  });

  test('each deliberate problem is found, and under each stands a remark on it', () => {
    const lines = readFileSync(new URL('problems.germ', folder), 'utf8').split('\n');
    const found = book.of('problems.germ').filter(({ problem }) => problemKinds[problem.code].severity !== 'hint');
    const remarked = lines.flatMap((line, n) => (/^\s+\S/.test(line) ? [n - 1] : []));
    expect([...new Set(found.map(({ line }) => line.number))].filter(n => !remarked.includes(n))).toEqual([]);
    expect(found.map(({ problem }) => problem.code)).toEqual([
      'unknown-keyword', 'day-first-date', 'impossible-date', 'decimal-comma', 'missing-date', 'bad-time', 'bad-unit',
      'repeated-fact', 'unclosed-quote', 'unknown-fact', 'unknown-lot', 'unknown-batch', 'unknown-agent',
      'unknown-stock', 'unknown-regime', 'duplicate-definition', 'split-exceeds-seeds', 'sown-exceeds-seeds',
      'count-exceeds-sown', 'total-falls', 'after-close', 'cut-does-not-add-up', 'sown-before-collected',
      'count-before-sowing', 'count-in-future', 'soak-too-long', 'dose-above-limit', 'strength-slip',
      'above-solubility', 'end-before-start', 'lift-without-soak', 'lift-missing', 'nothing-held-back', 'replaces-itself',
      'stock-overdrawn', 'draw-before-made', 'impossible-dilution', 'stock-expired', 'strength-of-stock',
      'apply-exceeds-seedlings',
    ]);
  });

  test('at least twelve lots, some closed, some open, and one that lies in a soak', () => {
    const ids = [...journal.definedIds()].filter(id => !id.startsWith('BAD-'));
    const lots = ids.flatMap(id => journal.lot(id) ?? []);
    expect(lots.length).toBeGreaterThanOrEqual(12);
    const batches = lots.flatMap(lot => [...lot.batches.values()].filter(batch => batch.sowing));
    expect(batches.some(batch => batch.closed)).toBe(true);
    expect(batches.some(batch => !batch.closed)).toBe(true);
    const at = ({ day, minutes }: Moment) => day * 1440 + (minutes ?? 0);
    const running = lots.flatMap(lot => [...lot.batches.values()]).filter(({ soaks }) =>
      soaks.some(({ start, end }) => end && at(start) < at(today) && at(today) < at(end)));
    expect(running.map(({ path }) => path)).toEqual(['ACO-26/A', 'ACO-26/B']);
  });
});
