import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { measureBatch } from '../../server/src/measures/batch.ts';
import { ACROSS_RULES } from '../../server/src/measures/across-rules.ts';
import { THRESHOLDS } from '../../server/src/measures/thresholds.ts';
import { RULES } from '../../server/src/measures/verdict-rules.ts';
import { COURSES } from './helpers.ts';

const PAGE = readFileSync(new URL('../../syntaxes/README.md', import.meta.url), 'utf8');
const CODE = readFileSync(new URL('../../server/src/measures/verdict-rules.ts', import.meta.url), 'utf8');

/** The rows of the table whose head begins with a word, without the head. */
function tables(head: string): string[][] {
  const found = [...PAGE.matchAll(new RegExp(`^\\| ${head} .*\\n\\|---.*\\n((?:\\|.*\\n)+)`, 'gm'))];
  return found.map(([, rows = '']) => rows.trimEnd().split('\n'));
}

describe('the reference', () => {
  test('prints the rules of the verdict in their order, as they stand in the code', () => {
    const [inOneLot, acrossLots] = tables('rule');
    expect(inOneLot).toEqual(RULES.map(({ id, says, verdict }) => `| \`${id}\` | ${says} | ${verdict} |`));
    expect(acrossLots).toEqual(ACROSS_RULES.map(({ id, says, verdict }) => `| \`${id}\` | ${says} | ${verdict} |`));
    for (const [, id] of CODE.matchAll(/\| '([\w-]+)'(?= \||;)/g)) expect(PAGE).toContain(`\`${id!}\``);
  });

  test('prints every number that a verdict depends on', () => {
    expect(tables('threshold')).toEqual([
      Object.entries(THRESHOLDS).map(([name, { value, says }]) => `| \`${name}\` | ${value} | ${says} |`),
    ]);
  });

  test('says of each measure of a batch its unit, its source and where it is shown', () => {
    const [rows] = tables('measure');
    const cells = rows!.map(row => row.split(' | '));
    expect(cells.map(row => row.length)).toEqual(cells.map(() => 5));
    for (const [, , , source, shown] of cells) {
      expect(source).toMatch(/\(memory\)|no source|no one source|the same/);
      expect(shown).toMatch(/JSON/);
    }
    // As the code names its groups of measures; a new one needs a row.
    expect(Object.keys(measureBatch(COURSES.D1)).sort()).toEqual([
      'epicotyl', 'germination', 'germinationValue', 'kaplanMeier', 'meanTime', 'medianLimits', 'ofGerminated', 'ofSown', 'rotted',
      'seedlings', 'span', 'speed', 't50Coolbear', 'uniformity',
    ]);
  });
});
