import { describe, expect, it } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOf } from '../../server/src/model/day.ts';
import { expectMarked, problemsIn } from './marked.ts';

const codes = ['ready-untreated'] as const;

/** A lot of the winter before, in water and in GA3; half of it up by day 14. */
const before = (up: number, more = '') => [
  'lot PRI-25 Primula beesiana, 80 seeds', 'split PRI-25, A 30 seeds, B 30 seeds',
  'soak PRI-25/B 2025-10-18 20:00, water, 12 h', `sow PRI-25/B 2025-10-19 08:30${more}`,
  `count PRI-25/B 2025-11-02, ${up - 2}`, 'count PRI-25/B 2025-11-09, 2',
];

const after = (soak = 'GA3 250 ppm, 12 h') => [
  'lot PRI-26 Primula  Beesiana, 70 seeds', 'split PRI-26, A 30 seeds, B 30 seeds', `soak PRI-26/A 2026-10-10 20:00, ${soak}`,
];

const messages = (...lines: string[]) => problemsIn('ready-untreated', lines.join('\n')).map(({ message }) => message);

describe('a hormone on a plant whose untreated seed came up readily before', () => {
  it('is marked at the soak, once for a lot, in whatever file the record stands', () => {
    expectMarked(codes, `
      --- 2026.germ
      lot PRI-26 Primula beesiana, 70 seeds
      split PRI-26, A 20 seeds, B 20 seeds, C 20 seeds
      soak PRI-26/A 2026-10-10 20:00, GA3 250 ppm, 12 h
           ^^^^^^^^ ready-untreated
      soak PRI-26/B 2026-10-10 20:00, GA3 500 ppm, 12 h
      soak PRI-26/C 2026-10-10 20:00, water, 12 h
      --- before.germ
      lot PRI-25 Primula beesiana, 30 seeds
      sow PRI-25 2025-10-19
      count PRI-25 2025-11-02, 27
    `);
  });

  it('is marked in the same lot too', () => {
    expectMarked(codes, `
      lot PRI-25 Primula beesiana, 90 seeds
      split PRI-25, A 30 seeds, B 30 seeds
      sow PRI-25/A 2025-10-19
      count PRI-25/A 2025-11-02, 27
      soak PRI-25/B 2025-11-10 20:00, GA3 250 ppm, 12 h
           ^^^^^^^^ ready-untreated
    `);
  });

  it('says on what it rests, and points at the count that settled it', () => {
    const text = [...before(27), ...after()].join('\n');
    expect(messages(text)).toEqual([
      'Untreated Primula beesiana germinated readily before: 27 of 30 seeds of PRI-25/B (90 %), half of the seed by day 14. '
      + 'It may need no GA3. If you treat it, keep untreated seed beside it.',
    ]);
    const journal = new Journal();
    journal.set('a.germ', text);
    const book = new ProblemBook(journal);
    book.update({ day: dayOf(2026, 11, 1)!, minutes: undefined });
    const [found] = book.of('a.germ').filter(({ problem }) => problem.code === 'ready-untreated');
    expect(found!.related.map(({ line, message }) => [line.number, message])).toEqual([[5, '27 of 30 untreated seeds by then']]);
  });

  it.each([
    ['where too few came up', [...before(16), ...after()]],
    ['where nobody looked before day 31', [...before(30).map(line => line.replace('2025-11-0', '2025-11-2')), ...after()]],
    ['where it was sown after a cold stage', ['chill PRI-25/B 2025-08-01, 4 C, 70 days', ...before(27), ...after()]],
    ['where it was scarified', ['scarify PRI-25/B 2025-10-18', ...before(27), ...after()]],
    ['where it was treated itself', [...before(27).map(line => line.replace('water', 'GA3 250 ppm')), ...after()]],
    ['where that was later', [...before(27), ...after().map(line => line.replace('2026-10-10', '2025-10-20'))]],
    ['where it is another plant', [...before(27), ...after().map(line => line.replace('Beesiana', 'rosea'))]],
    ['where the soak is no hormone', [...before(27), ...after('KNO3 0.2 %, 12 h')]],
    ['where there is none in the soak', [...before(27), ...after('GA3 0 ppm, 12 h')]],
    ['where the seeds were too few to say', ['lot P Primula beesiana, 4 seeds', 'sow P 2025-10-19', 'count P 2025-11-02, 3', ...after()]],
  ])('is not marked %s', (_, lines) => {
    expect(messages(...lines)).toEqual([]);
  });

  it('cites what was known by the soak, not what came later', () => {
    const lines = [...before(27), ...after()].map(line => line.replace('count PRI-25/B 2025-11-09, 2', 'count PRI-25/B 2026-10-12, 2'));
    expect(messages(...lines)[0]).toContain('25 of 30 seeds of PRI-25/B (83 %)');
  });

  it('comes and goes with records of the other lot', () => {
    const journal = new Journal();
    const book = new ProblemBook(journal);
    const marked = () => {
      book.update({ day: dayOf(2026, 11, 1)!, minutes: undefined });
      return book.of('b.germ').some(({ problem }) => problem.code === 'ready-untreated');
    };
    journal.set('a.germ', before(16).join('\n'));
    journal.set('b.germ', after().join('\n'));
    expect(marked()).toBe(false);
    journal.set('a.germ', before(27).join('\n'));
    expect(marked()).toBe(true);
    journal.set('a.germ', before(27).join('\n').replace('beesiana', 'rosea'));
    expect(marked()).toBe(false);
    journal.set('a.germ', before(27).join('\n'));
    expect(marked()).toBe(true);
    journal.remove('a.germ');
    expect(marked()).toBe(false);
  });
});
