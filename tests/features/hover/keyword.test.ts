import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';
import { keywords } from '../../../server/src/model/keywords.ts';
import { parse } from '../../../server/src/syntax/parse.ts';

describe('hover on a keyword', () => {
  test('tells what the record is for, what it takes, and shows one', () => {
    expect(hover(`
      move VER-24/A 2026-03-01, at cold frame
      ^^^^ here
    `, '2026-03-02')).toMatchInlineSnapshot(`
      "**move** – the batch goes to another place

      Facts, in any order: \`at bag 3 slot 2\` (needed) · \`outdoors\` · \`look again 2027-03-01\`

      \`\`\`plumule
      move VER-24/A 2026-03-01, at cold frame
      \`\`\`"
    `);
  });

  test('of a count tells the count first, then in a line what the record is for', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum, 20 seeds
      sow VER-24 2026-01-11
      count VER-24 2026-01-25, 17
      ^^^^^ here
    `, '2026-03-02')).toMatchInlineSnapshot(`
      "**VER-24** · Sunday 2026-01-25 · day 14 from the sowing on 2026-01-11

      **Germinated so far 17 of 20 = 85 %** (95 % Wilson interval 64 to 94.8 %; 20 sown)

      17 new germinated since the sowing on 2026-01-11.

      **count** – what you saw; a number is what is new, with = it is the total so far"
    `);
  });

  test('of a stage tells how far it has gone', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum, 20 seeds
      chill VER-24 2026-01-11, 4 C, 90 days
      ^^^^^ here
    `, '2026-03-02')?.split('\n\n')[0]).toBe('**VER-24** · 4 C for 50 of 90 days, since 2026-01-11, to end 2026-04-11 (in 5 weeks)');
  });

  test.each(Object.entries(keywords))('%s shows an example that can be read', (keyword, { example }) => {
    const { record, problems } = parse(example);
    expect(record?.keyword).toBe(keyword);
    expect(problems).toEqual([]);
  });
});
