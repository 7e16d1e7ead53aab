import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { factOf } from '../../server/src/model/record.ts';
import { parse } from '../../server/src/syntax/parse.ts';

const lines = readFileSync(new URL('../../samples/guides.germ', import.meta.url), 'utf8').split('\n');
const guides = lines.flatMap((line, number) => {
  const { record } = parse(line);
  return record?.keyword === 'guide' ? [{ record, number }] : [];
});

test('every published row has its source, and a remark on what speaks against leaning on it', () => {
  expect(guides.length).toBeGreaterThan(60);
  expect(guides.filter(({ record }) => !factOf(record, 'source')).map(({ number }) => number + 1)).toEqual([]);
  expect(guides.filter(({ number }) => parse(lines[number + 1] ?? '').kind !== 'remark').map(({ number }) => number + 1)).toEqual([]);
});

test('rows without an effect stand among the others', () => {
  const remarks = guides.map(({ number }) => lines[number + 1]);
  expect(remarks.filter(remark => /no (significant )?effect/i.test(remark!)).length).toBeGreaterThanOrEqual(6);
});
