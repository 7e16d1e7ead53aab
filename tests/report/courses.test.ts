import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plainPage } from '../../server/src/report/page.ts';
import { reportText } from '../../server/src/report/text.ts';
import { at, reportFor } from './helpers.ts';

const TRIAL = `
  lot GEN-25 Gentiana lutea, 60 seeds
  split GEN-25, A 24 seeds, B 24 seeds
  soak GEN-25/A 2026-01-10 19:00, GA3 500 ppm, 24 h
  sow GEN-25/A 2026-01-11 19:10
  sow GEN-25/B 2026-01-11 19:10
  count GEN-25/A 2026-01-25, 3
  count GEN-25/B 2026-01-25, 0
  count GEN-25/A 2026-02-01, 6
  count GEN-25/A 2026-02-08, 15
  count GEN-25/B 2026-02-08, 1
`;
const blocks = { ...plainPage, blocks: true };
const now = at('2026-02-10');

/** The lines of the table of courses, and what says how they are to be read. */
function coursesOf(journal: string, today = now): { lines: string[]; legend: boolean } {
  const lines = reportText([reportFor(journal, today)], blocks).split('\n');
  const head = lines.findIndex(line => /^ {2}Batch +Day /u.test(line));
  return {
    lines: head < 0 ? [] : lines.slice(head, lines.indexOf('', head)),
    legend: lines.some(line => line.startsWith('The lines of blocks ')),
  };
}

describe('courses in block characters', () => {
  test('stand below one another on the same days, with nothing drawn on days without a count', () => {
    expect(coursesOf(TRIAL)).toEqual({
      legend: true,
      lines: [
        '  Batch     Day 0 to 28',
        '  GEN-25/A  ··············▂······▄······█',
        '  GEN-25/B  ··············▁·············▂',
      ],
    });
  });

  test('have a block for several weeks where they are long, in which the last count tells', () => {
    const long = `${TRIAL.replace('count GEN-25/A 2026-02-08, 15', 'count GEN-25/A 2026-02-03, 14')}
  count GEN-25/B 2026-10-25, 12`;
    expect(coursesOf(long, at('2026-11-01')).lines).toEqual([
      '  Batch     Day 0 to 287, 14 days a block',
      '  GEN-25/A  ·▇',
      '  GEN-25/B  ·▁▂·················▅',
    ]);
  });

  test('are left out where the page shows no blocks, and where there is one look or none whose seeds are known', () => {
    expect(reportText([reportFor(TRIAL, now)])).not.toMatch(/lines of blocks|[▁-█]/u);
    const none = { lines: [], legend: false };
    expect(coursesOf('lot IRI-1 Iris alba, 10 seeds\nsow IRI-1 2026-01-06\ncount IRI-1 2026-01-20, 3')).toEqual(none);
    expect(coursesOf(TRIAL.replace('A 24 seeds, B 24 seeds', 'A about 24 seeds, B about 24 seeds'))).toEqual(none);
  });

  test('show nothing where nobody looked, and none or all only where it is none or all', () => {
    const looks = fc.uniqueArray(fc.integer({ min: 1, max: 38 }), { minLength: 2, maxLength: 8 });
    const found = fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 8, maxLength: 8 });
    fc.assert(fc.property(looks, found, (days, news) => {
      const inOrder = days.toSorted((a, b) => a - b);
      const counts = inOrder.map((day, i) => `count IRI-1 ${new Date(Date.UTC(2026, 0, 1 + day)).toISOString().slice(0, 10)}, ${news[i]}`);
      const { lines } = coursesOf(`lot IRI-1 Iris alba, 32 seeds\nsow IRI-1 2026-01-01\n${counts.join('\n')}`);
      const course = Array.from(lines[1]!.trim().split(/ +/u)[1]!);
      expect(course.flatMap((block, day) => (block === '·' ? [] : [day]))).toEqual(inOrder);
      let total = 0;
      for (const [i, day] of inOrder.entries()) {
        total += news[i]!;
        expect(course[day] === '▁').toBe(total === 0);
        expect(course[day] === '█').toBe(total === 32);
      }
    }));
  });
});
