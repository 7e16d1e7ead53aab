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

  it('shows what a journal holds as it was written: no link, no HTML, no cell comes of it', () => {
    const report = reportFor('lot A-1 [x](https://example.org) <b>|</b>, 20 seeds, from `own` *bed*', at('2026-01-20'));
    const text = reportMarkdown([report]);
    expect(text).toContain(String.raw`\[x\](https\://example.org) \<b\>\|\</b\>`);
    expect(text).toContain(String.raw`from \`own\` \*bed\*`);
  });
});
