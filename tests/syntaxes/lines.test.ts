import { describe, expect, test } from 'vitest';
import { expectScopes } from './fixture.ts';
import { namesOf, tokenize } from './tokens.ts';

describe('kinds of line', () => {
  test('the first of several comment lines is a heading', () => {
    expectScopes(`
      # Winter 2026, the woodland bench
      ^ punctuation.definition.comment
        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ markup.heading
      # All of it invented.
      ^^^^^^^^^^^^^^^^^^^^^ comment.line.number-sign
      day 2026-01-19
      ## February
         ^^^^^^^^ markup.heading
    `);
  });

  test('the second comment line and one that begins with a small letter are no headings', () => {
    const lines = ['# Winter', '# Not a heading', '', '# count VER-24/A, 3', '#', '#note to self'];
    const headings = tokenize(lines).map(line => line.some(token => namesOf(token).includes('markup.heading.plumule')));
    expect(headings).toEqual([true, false, false, false, false, false]);
    const comments = tokenize(lines).map(line => line.every(token => namesOf(token)[0] === 'comment.line.number-sign.plumule'));
    expect(comments).toEqual([true, true, true, true, true, true]);
  });

  test('a heading in a script without small letters is one', () => {
    expectScopes(`
      # 冬 2026
        ^^^^^^ markup.heading
    `);
  });

  test('a record below a comment is a record', () => {
    expectScopes(`
      # October
      count VER-24/A, 3
      ^^^^^ keyword.control.record
    `);
  });

  test('an indented line is a remark, whatever it says', () => {
    const remark = 'comment.block.documentation.remark.plumule';
    const lines = ['  count VER-24/A, 3', '\t"so it is, 0,5', '\u00a0# no comment', '  '];
    expect(tokenize(lines).map(line => line.filter(({ text }) => text.trim()).map(namesOf))).toEqual([
      [[remark]], [[remark]], [[remark]], [],
    ]);
  });

  test('a line that begins with anything else is marked', () => {
    expectScopes(`
      2026-01-19 count VER-24/A, 3
      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ invalid.illegal.line
      - a list
      ^^^^^^^^ invalid.illegal.line
    `);
  });

  test('a word that is no keyword has no colour, so that one being typed does not flash', () => {
    for (const line of ['cou', 'counts VER-24/A, 3', 'lots', 'limit-soak, 24 h']) {
      expect(tokenize([line])[0]!.flatMap(namesOf)).toEqual([]);
    }
  });

  test('an open quotation ends with its line', () => {
    expectScopes(`
      sow VER-24/A, at "bag 4
                       ^^^^^^ string.quoted.double
      count VER-24/A, 3
      ^^^^^ keyword.control.record
    `);
  });

  test('emoji and letters of other scripts do not shift what stands behind them', () => {
    expectScopes(`
      lot PAR-26 七叶一枝花 🌱, 44 seeds, from 👩🏽‍🌾 the fence, stored dry
          ^^^^^^ entity.name.function.lot
                 ^^^^^^^^ entity.name.class.plant
                         ^ punctuation.separator.comma
                           ^^ constant.numeric
                              ^^^^^ keyword.other.unit
                                     ^^^^ keyword.other.fact
                                          ^^^^^^^^^^^^^^^^^ string.unquoted.text
                                                             ^^^^^^ keyword.other.fact
      count ÄHRE-26/Süd 2026-11-22, 3
            ^^^^^^^ entity.name.function.lot
                    ^^^ variable.other.batch
                        ^^^^^^^^^^ constant.numeric.date
    `);
  });
});
