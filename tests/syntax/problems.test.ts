import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from '../../server/src/syntax/parse.ts';
import { splitLines } from '../../server/src/text/split-lines.ts';
import { brokenLine } from '../support/arbitrary-lines.ts';
import { differences, variantsOf, type Fixture, type Mark } from '../support/fixture.ts';
import { problemLines } from './problem-lines.ts';

function problemsOf({ files }: Fixture): Mark[] {
  return files.flatMap(({ name, text }) => splitLines(text).flatMap((line, number) =>
    parse(line.text).problems.map(({ code, start, end }) => ({ file: name, line: number, start, end, label: code }))));
}

describe('a problem of one line', () => {
  describe.each(Object.entries(problemLines))('%s', (code, source) => {
    test.each(variantsOf(source))('is found $name, in its place, and no other', ({ fixture }) => {
      expect(differences(fixture, problemsOf(fixture))).toBe('');
      expect(fixture.expected.some(({ label }) => label === code)).toBe(true);
    });
  });
  test('is always one of these', () => {
    fc.assert(fc.property(brokenLine, line => {
      for (const { code } of parse(line).problems) expect(Object.keys(problemLines)).toContain(code);
    }), { numRuns: 1000 });
  });
});
