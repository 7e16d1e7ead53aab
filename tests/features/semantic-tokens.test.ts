import { describe, expect, test } from 'vitest';
import { differences, variantsOf } from '../support/fixture.ts';
import { journalOf } from './journals.ts';
import { tokensIn } from '../support/tokens.ts';

const journal = `
  --- 2026.germ
  lot V-1 Veratrum nigrum, 60 seeds
      ^^^ name definition
          ^^^^^^^^^^^^^^^ plant
  split V-1, A 24 seeds
        ^^^ name
             ^ part definition
  soak V-1/A 2026-01-10, GA3 500 ppm, kelp 1 %, G1 10 mL, G9 5 mL
       ^^^ name
           ^ part
                         ^^^ agent builtIn
                                      ^^^^ agent
                                                ^^ name
                                                          ^^ agent unresolved
  sow V-1/B 2026-01-11, regime cold
      ^^^ name
          ^ part unresolved
                               ^^^^ name
  sow V-2/A 2026-01-11, regime hot
      ^^^ name unresolved
          ^ part unresolved
                               ^^^ name unresolved
  note cold 2026-01-11, a text
       ^^^^ name
  note kelp 2026-01-11, a text
       ^^^^ agent
  note G9 2026-01-11, a text
       ^^ name unresolved
  count V-1/A 2026-01-19, 3
        ^^^ name
            ^ part
  lot X-1 Iris ensata, 6 seeds
      ^^^ name definition closed
          ^^^^^^^^^^^ plant closed
  discard X-1 2026-01-19, all soft
          ^^^ name closed
  # discard V-1 2026-01-19
    count V-1 2026-01-19
  --- stocks.germ
  stock G1 2026-01-09, GA3 20 mg, 20 mL
        ^^ name definition
                       ^^^ agent builtIn
  dilute G2 2026-01-09, from G1 10 mL, to 20 mL
         ^^ name definition
                             ^^ name
  dilute G3 2026-01-09, from G9 10 mL, to 20 mL
         ^^ name definition
                             ^^ name unresolved
  regime cold, chill 4 C 90 days
         ^^^^ name definition
  agent kelp, an extract
        ^^^^ agent definition
  limit kelp, 1 %, for Primula
        ^^^^ agent
                       ^^^^^^^ plant
  limit soak, 24 h
  limit GA3, 500 ppm
        ^^^ agent builtIn
  guide Veratrum, GA3 500 ppm, source "a book"
        ^^^^^^^^ plant
                  ^^^ agent builtIn
  zone Europe/Vienna
  day 2026-01-10
`;

describe.each(variantsOf(journal))('names coloured by what they mean, $name', ({ fixture }) => {
  test('are those marked, and nothing else', () => {
    const all = journalOf(fixture);
    const found = fixture.files.flatMap(({ name: file }) => tokensIn(all, file).map(({ type, marks, ...place }) =>
      ({ file, ...place, label: [type, ...marks].join(' ') })));
    expect(differences(fixture, found)).toBe('');
  });
});

test('a batch that is closed fades alone; its lot when all are, those given out by their children', () => {
  const text = [
    'lot V-1 Iris, 20 seeds', 'split V-1, A 10 seeds, B 10 seeds', 'discard V-1/A 2026-01-01', 'count V-1/B 2026-01-02, 0',
  ];
  const marks = (lines: readonly string[]) => [...tokensIn(journalOf({ files: [{ name: 'a.germ', text: lines.join('\n') }], expected: [] }), 'a.germ')]
    .filter(({ line }) => line > 1).map(token => token.marks.includes('closed'));
  expect(marks(text)).toEqual([false, true, false, false]);
  expect(marks([...text.slice(0, 3), 'discard V-1/B 2026-01-02'])).toEqual([true, true, true, true]);
});

test('a part of a file has its tokens alone', () => {
  const all = journalOf({ files: [{ name: 'a.germ', text: 'lot V-1 Iris\nsow V-1 2026-01-01\nsow V-1 2026-01-02\n' }], expected: [] });
  expect(tokensIn(all, 'a.germ', 1, 1).map(({ line }) => line)).toEqual([1]);
  expect(tokensIn(all, 'a.germ', 2, 99).map(({ line }) => line)).toEqual([2]);
});
