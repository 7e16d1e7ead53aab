import { describe, expect, it } from 'vitest';
import { reportMarkdown } from '../../server/src/report/markdown.ts';
import { at, reportFor } from './helpers.ts';

describe('a report in Markdown', () => {
  it('has a heading, the facts of the seed and a table for each lot', () => {
    const report = reportFor(`
      lot A-1 Adonis vernalis, 20 seeds, from own bed
      sow A-1 2026-01-04
      count A-1 2026-01-18, 0
    `, at('2026-01-20'));
    // 0 of 20: 0 to 16.1 %, Newcombe 1998, Table I
    expect(reportMarkdown([report])).toMatch(`# Report as of 2026-01-20

## A-1 Adonis vernalis

20 seeds, from own bed

| Batch | Treatment | Sown | Germinated | % | 95 % interval | First | Last | State |
| :-- | :-- | :-- | :-- | :-- | :-- | :-- | :-- | :-- |
| A-1 | untreated | 20 | 0 | 0.0 | 0.0 to 16.1 | – | – | sown, day 16 |

---

- % is`);
  });

  it('puts into one table no more than fits beside the journal, and loses no column by that', () => {
    const text = reportMarkdown([reportFor(`
      lot A-1 Adonis vernalis, 48 seeds
      split A-1, A 20 seeds, B 20 seeds
      soak A-1/A 2025-10-04 19:00, GA3 500 ppm, 24 h
      sow A-1/A 2025-10-05, 18 seeds
      sow A-1/B 2025-10-05, 18 seeds
      count A-1/A 2025-10-18, 4, 1 rotted, 1 lost
      count A-1/A 2025-10-28, 4, 1 died, 5 emerged
      count A-1/B 2025-11-18, 4, 1 leggy
      cut A-1/A 2026-01-04, 7 fresh, 1 empty
      discard A-1/B 2026-01-04
    `, at('2026-01-20'))]);
    const tables = [...text.matchAll(/(?:^\|.*\n)+/gm)].map(([table]) => (
      table.trim().split('\n').map(row => row.slice(2, -2).split(' | '))));
    const widths = tables.map(rows => rows[0]!.reduce((sum, _, column) => (
      sum + 2 + Math.min(32, Math.max(...rows.map(cells => cells[column]!.length)))), -2));
    expect(Math.max(...widths)).toBeLessThanOrEqual(90);
    expect(tables.flatMap(([heads]) => heads!.slice(1))).toEqual([
      'Treatment', 'Seeds', 'Sown', 'Lost', 'Germinated', '%', '95 % interval', 'First', 'Last', 'T50', 'Mean time',
      '% of full', '% of viable', 'Emerged', 'Rotted', 'Died', 'Leggy', 'Cut test', 'State',
    ]);
  });

  it('shows what a journal holds as it was written: no link, no HTML, no cell comes of it', () => {
    const report = reportFor('lot A-1 [x](https://example.org) <b>|</b>, 20 seeds, from `own` *bed*', at('2026-01-20'));
    const text = reportMarkdown([report]);
    expect(text).toContain(String.raw`\[x\](https\://example.org) \<b\>\|\</b\>`);
    expect(text).toContain(String.raw`from \`own\` \*bed\*`);
  });
});
