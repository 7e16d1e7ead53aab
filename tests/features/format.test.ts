import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { formatEdits, formatLine, type LineEdit } from '../../server/src/features/format.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { LineStore } from '../../server/src/text/line-store.ts';
import { anyLine, brokenLine, recordLine } from '../support/arbitrary-lines.ts';

const formatted = (line: string) => formatLine(line, parse(line));
const textOf = (lines: string) => new LineStore('a.germ', lines, parse);

/** What a line says, wherever it stands on it, and however its units are spelt. */
function meaning(line: string): unknown {
  const { kind, record, problems } = parse(line);
  const of = record?.keyword === 'limit' ? record.subject?.text.toLowerCase() : record?.subject?.text;
  const strip = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(strip);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value)
      .flatMap(([key, inside]) => (/^(start|end|subject)$/.test(key) ? [] : [[key, strip(inside)]])));
  };
  return { kind, of, codes: problems.map(({ code }) => code), record: strip(record) };
}

describe('a formatted line', () => {
  it('is the tidy one, however carelessly a record was written', () => {
    fc.assert(fc.property(recordLine, ({ tidy, loose }) => {
      expect(formatted(loose)).toBe(tidy);
      expect(formatted(tidy)).toBe(tidy);
    }), { numRuns: 3000 });
  });

  it('says what the line said', () => {
    fc.assert(fc.property(fc.oneof(recordLine.map(({ loose }) => loose), brokenLine), line => {
      expect(meaning(formatted(line))).toEqual(meaning(line));
    }), { numRuns: 3000 });
  });

  it('is formatted already', () => {
    fc.assert(fc.property(anyLine, line => {
      expect(formatted(formatted(line))).toBe(formatted(line));
    }), { numRuns: 1000 });
  });

  it('is as it was written where it is no record or cannot be read in full', () => {
    fc.assert(fc.property(fc.oneof(anyLine, fc.string({ unit: 'binary' })), line => {
      const { record, problems } = parse(line);
      if (!record || problems.length > 0) expect(formatted(line)).toBe(line);
    }), { numRuns: 2000 });
  });

  test.each([
    ['Soak  X 9:30,GA3 500PPM , 24hours ', 'soak X 09:30, GA3 500 ppm, 24 h'],
    ['LOT X\tVeratrum  nigrum ,60Seeds,From  own  garden', 'lot X Veratrum  nigrum, 60 seeds, from own  garden'],
    ['count X 2026-01-19  7:05,= 9 Germinated,1rotted', 'count X 2026-01-19 07:05, =9 germinated, 1 rotted'],
    ['soak X,GA3 0.05%W/V,1 days,0.5L', 'soak X, GA3 0.05 % w/v, 1 day, 0.5 L'],
    ['stock G1,GA3 20µg HALVED 3 Times,18ml,keeps 1years', 'stock G1, GA3 20 µg halved 3 times, 18 mL, keeps 1 year'],
    ['regime r,Chill 4℃ 12wks,warm 20/10° C 1 Month', 'regime r, chill 4 °C 12 weeks, warm 20/10 °C 1 month'],
    ['note X ,  so , so  ', 'note X, so , so'],
    ['photo X,  a  b.jpg ', 'photo X, a  b.jpg'],
    ['lot X "Iris,  dwarf" ,dormancy pd', 'lot X "Iris,  dwarf", dormancy PD'],
    // The marks quote a text, with a blank before them or without.
    ['lot X Iris,at"the shelf" ,from own  bed', 'lot X Iris, at "the shelf", from own  bed'],
    ['limit  SOAK,24h', 'limit soak, 24 h'],
    ['zone  Europe/Vienna\t', 'zone Europe/Vienna'],
    ['\ufeffDAY 2026-01-19 ', '\ufeffday 2026-01-19'],
    ['sow X, 007 seeds, 18.50C', 'sow X, 007 seeds, 18.50 C'],
  ])('%j becomes %j', (line, expected) => {
    expect(formatted(line)).toBe(expected);
  });

  test.each(['# A  comment ', '  A  remark ,  ', '\t', '', 'count X,3 sprouted ', 'cuont X,3', '* x '])('%j stays', line => {
    expect(formatted(line)).toBe(line);
  });
});

describe('the order of facts', () => {
  const ordered = (line: string) => formatLine(line, parse(line), 'as listed');

  test.each([
    ['soak X 2026-01-10,at jar,24 h,KNO3 0.2 %,GA3 500 ppm,20 mL', 'soak X 2026-01-10, KNO3 0.2 %, GA3 500 ppm, 24 h, 20 mL, at jar'],
    ['count X, 1 rotted, =2 leaf, 3', 'count X, 3, =2 leaf, 1 rotted'],
    ['cut X, 1 empty, 2 fresh', 'cut X, 2 fresh, 1 empty'],
    ['split X, B 2 seeds, A 3 seeds', 'split X, B 2 seeds, A 3 seeds'],
    ['regime r, warm 20 C, chill 4 C, warm 15 C', 'regime r, warm 20 C, chill 4 C, warm 15 C'],
    ['lot X Iris, at tin, from "a, b", 5 seeds', 'lot X Iris, 5 seeds, from "a, b", at tin'],
    ['discard X, soft, all of it', 'discard X, soft, all of it'],
    ['sow X, at tin, 5 sedes', 'sow X, at tin, 5 sedes'],
  ])('of %j becomes, if asked, %j', (line, expected) => {
    expect(ordered(line)).toBe(expected);
  });

  it('changes nothing else, and is in order then', () => {
    fc.assert(fc.property(fc.oneof(recordLine.map(({ loose }) => loose), anyLine), line => {
      const facts = (text: string) => {
        const { record, ...rest } = meaning(text) as { record?: { facts: readonly unknown[] } };
        return { ...rest, record: { ...record, facts: record?.facts.map(fact => JSON.stringify(fact)).sort() } };
      };
      expect(facts(ordered(line))).toEqual(facts(line));
      expect(ordered(ordered(line))).toBe(ordered(line));
      expect(formatted(ordered(line))).toBe(ordered(line));
    }), { numRuns: 2000 });
  });
});

describe('the edits of the formatter', () => {
  it('are one for each line that changes, and make the formatted text, in any line ends', () => {
    const end = fc.constantFrom('\n', '\r\n');
    fc.assert(fc.property(fc.array(anyLine), end, (lines, eol) => {
      const text = textOf(lines.join(eol));
      const written = [...text].map(line => line.text);
      const edits = formatEdits(text);
      expect(new Set(edits.map(({ line }) => line)).size).toBe(edits.length);
      expect(written.map((line, number) => edited(line, edits.filter(edit => edit.line === number))))
        .toEqual(written.map(formatted));
      for (const edit of edits) expectMinimal(edit, written[edit.line]!);
    }));
  });

  it('are for the lines asked for alone', () => {
    const text = textOf('count X,1\ncount X,2\ncount X,3\ncount X,4');
    expect(formatEdits(text, { from: 1, to: 2 })).toEqual([
      { line: 1, start: 8, end: 8, text: ' ' }, { line: 2, start: 8, end: 8, text: ' ' },
    ]);
    expect(formatEdits(text, { from: -5, to: 99 })).toHaveLength(4);
  });
});

function edited(line: string, edits: readonly LineEdit[]): string {
  return edits.reduce((text, { start, end, text: put }) => text.slice(0, start) + put + text.slice(end), line);
}

/** Neither end of what is replaced could stay. */
function expectMinimal({ start, end, text }: LineEdit, line: string): void {
  const gone = line.slice(start, end);
  expect(gone).not.toBe(text);
  if (gone === '' || text === '') return;
  expect(gone[0]).not.toBe(text[0]);
  expect(gone.at(-1)).not.toBe(text.at(-1));
}
