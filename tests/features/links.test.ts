import { describe, expect, test } from 'vitest';
import { linksOf, picturePath } from '../../server/src/features/links.ts';
import { differences, variantsOf } from '../support/fixture.ts';
import { journalOf } from './journals.ts';

describe.each(variantsOf(`
  photo V-1 2026-01-19, photos/tray 4.jpg
                        ^^^^^^^^^^^^^^^^^ picture photos/tray 4.jpg
  photo V-1 2026-01-19, "photos\\a, b.jpg"
                         ^^^^^^^^^^^^^^^ picture photos/a, b.jpg
  photo V-1 2026-01-19, /etc/passwd
  photo V-1 2026-01-19, //host/x
  photo V-1 2026-01-19, C:\\a.jpg
  photo V-1 2026-01-19, \\\\host\\a.jpg
  photo V-1 2026-01-19, https://example.org/a.jpg
  guide Iris, source https://example.org/a?b=c#d
                     ^^^^^^^^^^^^^^^^^^^^^^^^^^^ web https://example.org/a?b=c#d
  guide Iris, source "see (HTTP://example.org/x_(y)), p. 12"
                           ^^^^^^^^^^^^^^^^^^^^^^^^ web HTTP://example.org/x_(y)
  lot V-1 Iris, from https://example.org/list., stored dry
                     ^^^^^^^^^^^^^^^^^^^^^^^^ web https://example.org/list
  note V-1 2026-01-19, see https://example.org/1, and http://example.org/2
                           ^^^^^^^^^^^^^^^^^^^^^ web https://example.org/1
                                                      ^^^^^^^^^^^^^^^^^^^^ web http://example.org/2
  note V-1 2026-01-19, javascript:alert(1) file:///etc/passwd command:x ftp://example.org http:// xhttps://example.org
  move V-1 2026-01-19, at https://example.org
`))('links, $name', ({ fixture }) => {
  test('are those marked, and nothing else', () => {
    const { text } = journalOf(fixture).files.get('journal.germ')!;
    const found = linksOf(text).map(({ line, start, end, target }) => ({
      file: 'journal.germ', line, start, end, label: target.kind === 'web' ? `web ${target.url}` : `picture ${target.path}`,
    }));
    expect(differences(fixture, found)).toBe('');
  });
});

test('a path with a control character is none', () => {
  expect(picturePath('a\u0000.jpg')).toBeUndefined();
});

test('a path with half a character is none, and the links around it stay', () => {
  expect(picturePath('a\ud83c.jpg')).toBeUndefined();
  expect(picturePath('a\ud83c\udf31.jpg')).toBe('a\ud83c\udf31.jpg');
});
