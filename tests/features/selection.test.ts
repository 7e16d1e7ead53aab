import { expect, test } from 'vitest';
import { selectionsAt } from '../../server/src/features/selection.ts';
import { readFixture, variantsOf } from '../support/fixture.ts';
import { cursorOf, journalOf } from './journals.ts';

/** The texts selected one after the other, where the mark `here` ends. */
function selected(source: string): string[] {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => {
    const { file, position } = cursorOf(fixture, 'here');
    const { text } = journalOf(fixture).files.get(file)!;
    const [ranges = []] = selectionsAt(text, [position]);
    return ranges.map(range => text.text(range).replaceAll('\r\n', '\n').replaceAll(/ ?🌱/g, ''));
  });
  for (const other of others.slice(0, 1)) expect(other).toEqual(first);
  return first!;
}

const journal = `
  # 2026

  day 2026-01-10
  soak V-1/A 19:00, GA3 500 ppm, 24 h
     MARK
    White.
  soak V-1/B 19:00, water

  day 2026-01-11
  lift V-1/A 18:45
  # 2027
  day 2027-01-01`;

test('a selection grows from the word to its fact, record, remarks, day, heading and file', () => {
  expect(selected(journal.replace('  MARK', `${' '.repeat('soak V-1/A 19:00, GA3 5'.length - 3)}^ here`))).toEqual([
    '500', 'GA3 500 ppm', 'soak V-1/A 19:00, GA3 500 ppm, 24 h', 'soak V-1/A 19:00, GA3 500 ppm, 24 h\n  White.',
    'day 2026-01-10\nsoak V-1/A 19:00, GA3 500 ppm, 24 h\n  White.\nsoak V-1/B 19:00, water',
    '# 2026\n\nday 2026-01-10\nsoak V-1/A 19:00, GA3 500 ppm, 24 h\n  White.\nsoak V-1/B 19:00, water\n\nday 2026-01-11\nlift V-1/A 18:45',
    readFixture(journal.replace('     MARK\n', '')).files[0]!.text,
  ]);
});

test('in a path it grows from the part to the whole path', () => {
  expect(selected(journal.replace('     MARK', '      ^ here')).slice(0, 3)).toEqual(['V-1', 'V-1/A', 'soak V-1/A 19:00, GA3 500 ppm, 24 h']);
});

test('in a remark it grows from the word to the line, then to the record', () => {
  expect(selected(`
    soak V-1/A 2026-01-10, water
      White and straight.
         ^ here
      Five.
    lift V-1/A 2026-01-11
  `).slice(0, 4)).toEqual(['White', 'White and straight.', 'soak V-1/A 2026-01-10, water\n  White and straight.\n  Five.',
    'soak V-1/A 2026-01-10, water\n  White and straight.\n  Five.\nlift V-1/A 2026-01-11\n']);
});

test('several positions are answered in their order, one in an empty file too', () => {
  const { text } = journalOf({ files: [{ name: 'a.germ', text: '' }], expected: [] }).files.get('a.germ')!;
  const empty = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
  expect(selectionsAt(text, [{ line: 0, character: 0 }, { line: 5, character: 5 }])).toEqual([[empty], [empty]]);
});
