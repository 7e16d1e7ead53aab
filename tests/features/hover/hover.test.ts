import fc from 'fast-check';
import { marked } from 'marked';
import { describe, expect, test } from 'vitest';
import { definitionsAt } from '../../../server/src/features/definition.ts';
import { documentSymbols } from '../../../server/src/features/document-symbols.ts';
import { foldsOf } from '../../../server/src/features/folding.ts';
import { highlightsAt } from '../../../server/src/features/highlight.ts';
import { hoverAt } from '../../../server/src/features/hover/hover.ts';
import { referencesAt } from '../../../server/src/features/references.ts';
import { workspaceSymbols } from '../../../server/src/features/workspace-symbols.ts';
import type { Journal } from '../../../server/src/journal/journal.ts';
import { keywords } from '../../../server/src/model/keywords.ts';
import { at, hover, journalOf } from '../journals.ts';

const file = 'a.germ';

/** The different hovers of a file, at each third column. */
function hoversOf(journal: Journal): Set<string> {
  const { text } = journal.files.get(file)!;
  const hovers = new Set<string>();
  for (let line = 0; line < text.lineCount; line++) {
    for (let character = 0; character <= text.at(line).text.length; character += 3) {
      const found = hoverAt(journal, file, { line, character }, at('2026-02-10 12:00'));
      if (found) hovers.add(found.markdown);
    }
  }
  return hovers;
}


const words = [
  'X', 'X/A', 'X/A/1', 'Y', 'G1', 'G2', 'cold', 'kelp', 'GA3', 'GA3K', 'smoke', 'water', 'soak', 'stock', 'Europe/Vienna', '2026-01-11', '19:30',
  'Primula japonica', '2026-13-40', ',', ', ', ' ', ', A 10 seeds', ', 1 5 seeds', ', 24 h', ', 3 months', ', GA3 500 ppm', ', kelp 5 mM',
  ', GA3 unmeasured', ', GA3 20 mg', ', G1 10 mL', ', 20 mL', ', from G1 10 mL', ', to 20 mL', ', 4 C', ', 20/10 C', ', 3', ', =9 emerged', ', 2 lost',
  ', 4 fresh', ', 30 seeds', ', 0 seeds', ', regime cold', ', chill 4 C 90 days', ', until 2026-01-12 19:00', ', collected 2025', ', at | <b>',
  ', purity 90 %', ', keeps 1 year', ', for Primula', ', 1000 ppm', ', 2 drops', ', 4 seedlings', ', bought 2025', ', source a', '# Heading', '  remark',
];
const line = fc.tuple(fc.constantFrom(...Object.keys(keywords)), fc.array(fc.constantFrom(...words), { maxLength: 7 }))
  .map(([keyword, rest]) => `${keyword} ${rest.join(rest.length > 3 ? '' : ' ')}`);

/** Something to be about; what follows may contradict it. */
const base = [
  'lot X Primula japonica, 30 seeds', 'split X, A 20 seeds', 'split X/A, 1 5 seeds', 'stock G1 2026-01-01, GA3 20 mg, 20 mL',
  'regime cold, chill 4 C 90 days', 'day 2026-01-10',
];

describe('features', () => {
  test('have an answer at every place of any journal', () => {
    fc.assert(fc.property(fc.shuffledSubarray(base), fc.array(line, { maxLength: 20 }), (first, others) => {
      const lines = [...first, ...others];
      const journal = journalOf({ files: [{ name: file, text: lines.join('\n') }], expected: [] });
      for (const markdown of hoversOf(journal)) {
        expect(markdown).not.toMatch(/NaN|undefined|Infinity|\[object/);
      }
      for (let number = 0; number < lines.length; number++) {
        const position = { line: number, character: lines[number]!.indexOf(' ') + 1 };
        definitionsAt(journal, file, position);
        referencesAt(journal, file, position, true);
        highlightsAt(journal, file, position);
      }
      documentSymbols(journal, file, at('2026-02-10'));
      workspaceSymbols(journal, 'x', at('2026-02-10'));
      foldsOf(journal.files.get(file)!.text);
    }), { numRuns: 150 });
  });

  test('make nothing but text of what a journal has for names', () => {
    const mark = fc.string({ unit: fc.constantFrom(...'\\`*_[]()<>&~|$@!#:/.1 awhtps{}^'.split('')), minLength: 1, maxLength: 20 });
    fc.assert(fc.property(mark, mark, mark, (plant, place, text) => {
      const journal = journalOf({
        files: [{
          name: file,
          text: `lot X ${plant} P, 30 seeds, from ${text}, at ${place}\nsplit X, A 10 seeds\nagent kelp, ${text}\n`
            + `sow X/A 2026-01-11, regime ${text}, at ${place}\ncount X/A 2026-01-20, 3\nstock G 2026-01-01, kelp 1 mg, 1 mL, at ${place}\n`
            + `guide ${plant}, kelp 5 ppm, source ${text}\n  ${text}\napply X/A 2026-01-20, G, 2 drops, 3 seedlings\n`,
        }],
        expected: [],
      });
      for (const markdown of hoversOf(journal)) {
        const tags = marked.parse(markdown, { async: false }).match(/<\/?[a-z]+/gi) ?? [];
        const known = /^<\/?(p|strong|ul|ol|li|table|thead|tbody|tr|th|td|pre|code)$/;
        expect(tags.filter(tag => !known.test(tag))).toEqual([]);
      }
    }), { numRuns: 150 });
  });

  test('say nothing over a remark, a comment and an empty line', () => {
    expect(hover('lot VER-24 Veratrum nigrum\n  VER-24 is fine.\n  ^^^^^^ here', '2026-02-10')).toBeUndefined();
    expect(hover('lot VER-24 Veratrum nigrum\n# VER-24\n  ^^^^^^ here', '2026-02-10')).toBeUndefined();
  });
});
