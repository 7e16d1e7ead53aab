import { expect, test } from 'vitest';
import { print } from '../../server/src/syntax/print.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { reportData } from '../../server/src/report/json.ts';
import { reportText } from '../../server/src/report/text.ts';
import { at, reportFor } from '../report/helpers.ts';

test('two harvests in one packet are both told, and lie within what is taken for the age of the seed', () => {
  const line = 'lot VER-24 Veratrum nigrum, 40 seeds, collected 2024-09 and 2025, from own bed';
  expect(parse(line).problems).toEqual([]);
  expect(print(line, parse(line).record!)).toBe(line);
  const report = reportFor(line, at('2026-01-01'));
  expect(reportText([report])).toContain('collected 2024-09 and 2025');
  expect((reportData(report) as { lots: unknown[] }).lots[0]).toMatchObject({
    collected: { first: '2024-09-01', last: '2025-12-31' },
    harvests: [{ first: '2024-09-01', last: '2024-09-30' }, { first: '2025-01-01', last: '2025-12-31' }],
  });
  expect(parse('lot VER-24 Veratrum nigrum, collected 2024 and 2025-13').problems.map(({ code }) => code)).toEqual(['impossible-date']);
});
