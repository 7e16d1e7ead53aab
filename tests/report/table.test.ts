import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldColumns, hanging, paragraph, textTable } from '../../server/src/report/table.ts';
import { widthOf } from '../../server/src/report/text-width.ts';

describe('a table in plain text', () => {
  it('has texts to the left and numbers to the right', () => {
    expect(textTable([
      { head: 'Batch', kind: 'text', cells: ['A-1', 'A-1/long'] },
      { head: 'Sown', kind: 'number', cells: ['5', '12345'] },
      { head: 'State', kind: 'text', cells: ['sown', ''] },
    ])).toEqual([
      'Batch      Sown  State',
      'A-1           5  sown',
      'A-1/long  12345',
    ]);
  });

  it('is aligned by the width of the characters: CJK and emoji take two columns, accents on a letter none', () => {
    expect(textTable([
      { head: 'Batch', kind: 'text', cells: ['種子', '🌱-1', 'e\u0301', '👩‍🌾'] },
      { head: 'n', kind: 'number', cells: ['1', '2', '3', '4'] },
    ])).toEqual([
      'Batch  n',
      '種子   1',
      '🌱-1   2',
      'e\u0301      3',
      '👩‍🌾     4',
    ]);
  });

  it('goes on in the next line where a text is too wide, behind a comma where that suffices', () => {
    expect(textTable([
      { head: 'Treatment', kind: 'text', cells: ['GA3 500 ppm 24 h, then 4 C 12 weeks, then 18 C 12 weeks', 'none'] },
      { head: 'n', kind: 'number', cells: ['1', '2'] },
    ])).toEqual([
      'Treatment           n',
      'GA3 500 ppm 24 h,   1',
      'then 4 C 12 weeks,',
      'then 18 C 12 weeks',
      'none                2',
    ]);
  });

  it('loses no word and keeps the second column where it is, whatever the texts', () => {
    const word = fc.string({ minLength: 1, maxLength: 40, unit: fc.constantFrom('a', 'é', '種', '🌱', ',') });
    const words = fc.array(word, { minLength: 1, maxLength: 8 });
    fc.assert(fc.property(fc.array(words, { minLength: 1, maxLength: 5 }), texts => {
      const cells = texts.map(text => text.join(' '));
      const bars = { head: 'n', kind: 'number', cells: texts.map(() => '|') } as const;
      const rows = textTable([{ head: 'T', kind: 'text', cells }, bars]).slice(1);
      expect(rows.map(line => line.replace(/ *\|$/, '').trim()).join(' ')).toBe(cells.join(' '));
      const ends = rows.filter(line => line.endsWith('|')).map(line => widthOf(line));
      expect(ends).toHaveLength(texts.length);
      expect(new Set(ends).size).toBe(1);
    }));
  });
});

describe('columns that do not fit beside each other', () => {
  const column = (head: string, ...cells: string[]) => ({ head, kind: 'number', cells }) as const;
  const heads = (width: number) => foldColumns(
    [column('Batch', 'A-1'), column('Sown', '5'), column('Germinated', '3'), column('%', '60.0')], width,
  ).map(table => table.map(({ head }) => head));

  it('go on in a further table that begins with the first column again', () => {
    expect(heads(29)).toEqual([['Batch', 'Sown', 'Germinated', '%']]);
    expect(heads(28)).toEqual([['Batch', 'Sown', 'Germinated'], ['Batch', '%']]);
    expect(heads(1)).toEqual([['Batch', 'Sown'], ['Batch', 'Germinated'], ['Batch', '%']]);
    expect(foldColumns([], 10)).toEqual([]);
    expect(foldColumns([column('Batch', 'A-1')], 1)).toHaveLength(1);
  });

  it('are all there, each once, whatever the width', () => {
    const words = fc.array(fc.string({ maxLength: 12 }), { minLength: 2, maxLength: 9 });
    fc.assert(fc.property(words, fc.nat(60), (names, width) => {
      const tables = foldColumns(names.map(name => column(name, name)), width);
      expect(tables.flatMap(table => table.slice(1).map(({ head }) => head))).toEqual(names.slice(1));
      expect(tables.every(([first]) => first!.head === names[0])).toBe(true);
    }));
  });
});

describe('a paragraph', () => {
  it('has lines no wider than it may be, keeps a number with its per cent, and breaks no word', () => {
    expect(paragraph('only 21 % of it came up in the end', 10)).toEqual(['only 21 %', 'of it came', 'up in the', 'end']);
    expect(paragraph('only 21 % of it', 8)).toEqual(['only', '21 % of', 'it']);
    expect(paragraph('Strelitziaceae', 5)).toEqual(['Strelitziaceae']);
  });

  it('keeps a number with its unit', () => {
    expect(paragraph('take 10 mL of 500 ppm for 24 h now', 8)).toEqual(['take', '10 mL of', '500 ppm', 'for 24 h', 'now']);
    expect(paragraph('bag 3 must hang high', 6)).toEqual(['bag 3', 'must', 'hang', 'high']);
  });
});

describe('a line of a step or an item', () => {
  it('goes on below what came first', () => {
    expect(hanging('12. weigh it well', 12)).toEqual(['12. weigh it', '    well']);
    expect(hanging('  - one two', 9)).toEqual(['  - one', '    two']);
    expect(hanging('plain words', 6)).toEqual(['plain', 'words']);
    expect(hanging('', 6)).toEqual(['']);
  });
});
