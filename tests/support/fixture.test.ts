import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differences, readFixture, variantsOf, writeFixture } from './fixture.ts';

const source = `
  --- a.germ
  # A comment
  lot VER-24 Veratrum nigrum, 60 sedes, from "own
                                 ^^^^^ unknown-fact
                                             ^^^^ unclosed-quote
    A remark with ^ in it.
  cuont VER-24, 3
  ^^^^^ unknown-keyword
  --- b.germ
  count X,, 3 sprouted
         ^ empty-fact
              ^^^^^^^^ unknown-fact
  sow Y, 1 C, at here, 2 C
         ^^^ one  ^^^ two words
`;

describe('a fixture', () => {
  const fixture = readFixture(source);

  it('is read into files without their marks', () => {
    expect(fixture.files).toEqual([
      {
        name: 'a.germ',
        text: '# A comment\nlot VER-24 Veratrum nigrum, 60 sedes, from "own\n  A remark with ^ in it.\ncuont VER-24, 3\n',
      },
      { name: 'b.germ', text: 'count X,, 3 sprouted\nsow Y, 1 C, at here, 2 C\n' },
    ]);
  });

  it('keeps each mark with its file, its line and its columns', () => {
    expect(fixture.expected).toEqual([
      { file: 'a.germ', line: 1, start: 31, end: 36, label: 'unknown-fact' },
      { file: 'a.germ', line: 1, start: 43, end: 47, label: 'unclosed-quote' },
      { file: 'a.germ', line: 3, start: 0, end: 5, label: 'unknown-keyword' },
      { file: 'b.germ', line: 0, start: 7, end: 8, label: 'empty-fact' },
      { file: 'b.germ', line: 0, start: 12, end: 20, label: 'unknown-fact' },
      { file: 'b.germ', line: 1, start: 7, end: 10, label: 'one' },
      { file: 'b.germ', line: 1, start: 16, end: 19, label: 'two words' },
    ]);
  });

  it('without a heading is one file', () => {
    expect(readFixture('day 2026-01-19').files).toEqual([{ name: 'journal.germ', text: 'day 2026-01-19\n' }]);
  });

  it('is refused where a mark stands below no line or beyond its end', () => {
    expect(() => readFixture('  ^^^ bad-id\nday 2026-01-19')).toThrow(RangeError);
    expect(() => readFixture('day\n  ^^^ bad-id')).toThrow(RangeError);
  });

  it('is the same when it is written and read again', () => {
    const line = fc.constantFrom('count VER-24, 3', '  remark 🌱 ^', '# comment', '', 'lot A B');
    const label = fc.constantFrom('bad-id', 'two words');
    const place = fc.tuple(fc.nat(), fc.nat(), label);
    fc.assert(fc.property(fc.array(line, { minLength: 1 }), fc.array(place), (lines, marks) => {
      const files = [{ name: 'a.germ', text: lines.map(each => `${each}\n`).join('') }];
      const expected = lines.flatMap((text, number) => marks.flatMap(([at, width, name]) => {
        const start = at % (text.length + 1);
        const end = Math.min(text.length, start + 1 + (width % 5));
        return end > start ? [{ file: 'a.germ', line: number, start, end, label: name }] : [];
      }));
      const again = readFixture(writeFixture({ files, expected }));
      expect(again.files).toEqual(files);
      expect(differences({ files, expected }, again.expected)).toBe('');
      expect(again.expected).toHaveLength(expected.length);
    }));
  });
});

describe('the difference between what was expected and what was found', () => {
  const fixture = readFixture('lot A B, 60 sedes\n            ^^^^^ unknown-fact');
  const [mark] = fixture.expected;

  it('is nothing when every mark was found and nothing else', () => {
    expect(differences(fixture, [mark!])).toBe('');
  });

  it('shows a missing mark below its line', () => {
    expect(differences(fixture, [])).toBe(
      'missing: journal.germ:1\nlot A B, 60 sedes\n            ^^^^^ unknown-fact');
  });

  it('shows what was not expected, a second one of the same kind too', () => {
    expect(differences(fixture, [mark!, mark!])).toBe(
      'not expected: journal.germ:1\nlot A B, 60 sedes\n            ^^^^^ unknown-fact');
    expect(differences(fixture, [{ ...mark!, start: 9 }])).toBe(
      'missing: journal.germ:1\nlot A B, 60 sedes\n            ^^^^^ unknown-fact\n\n' +
      'not expected: journal.germ:1\nlot A B, 60 sedes\n         ^^^^^^^^ unknown-fact');
  });
});

describe('the variants of a fixture', () => {
  const variants = new Map(variantsOf(`
    lot VER-24 Veratrum nigrum, 60 sedes
                                   ^^^^^ unknown-fact
        ^^^^^^ bad-id
               ^^^^^^^^^^^^^^^ plant
    lot X-1 Crocus, 1 sedes
                      ^^^^^ unknown-fact
    count VER-24, 3
  `).map(({ name, fixture }) => [name, fixture]));

  it('are four', () => {
    expect([...variants.keys()]).toEqual([
      'as written', 'with CRLF', 'without a final newline', 'with emoji in the names of plants',
    ]);
  });

  it('have other line ends and the same marks', () => {
    const written = variants.get('as written')!;
    expect(variants.get('with CRLF')!.files[0]!.text).toBe(written.files[0]!.text.replaceAll('\n', '\r\n'));
    expect(variants.get('without a final newline')!.files[0]!.text).toMatch(/count VER-24, 3$/);
    expect(variants.get('with CRLF')!.expected).toEqual(written.expected);
    expect(variants.get('without a final newline')!.expected).toEqual(written.expected);
  });

  it('have an emoji behind the genus, and their marks where the text went', () => {
    const { files, expected } = variants.get('with emoji in the names of plants')!;
    const lines = files[0]!.text.split('\n');
    expect(lines).toEqual(['lot VER-24 Veratrum n🌱igrum, 60 sedes', 'lot X-1 Crocus 🌱, 1 sedes', 'count VER-24, 3', '']);
    expect(expected.map(({ line, start, end }) => lines[line]!.slice(start, end)))
      .toEqual(['sedes', 'VER-24', 'Veratrum n🌱igrum', 'sedes']);
  });
});
