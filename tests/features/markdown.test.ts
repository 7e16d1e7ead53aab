import fc from 'fast-check';
import { marked } from 'marked';
import { describe, expect, test } from 'vitest';
import { escapeMarkdown, markdownTable } from '../../server/src/features/markdown.ts';

/** What a reader sees of Markdown, by the renderer that editors use; throws when anything but text comes of it. */
function rendered(markdown: string): string {
  const html = marked.parse(markdown, { async: false, gfm: true });
  const [, inner] = /^<p>([^<]*)<\/p>\n$/.exec(html) ?? [];
  if (inner === undefined) throw new Error(`more than a paragraph of text: ${html}`);
  return inner.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&#39;', '\'').replaceAll('&amp;', '&');
}


describe('text of a journal in Markdown', () => {
  test.each([
    ['a link', '[click](https://example.org)'],
    ['a link that runs a command', '[click](command:workbench.action.quit)'],
    ['a link in angle brackets', '<command:workbench.action.quit>'],
    ['a picture', '![x](https://example.org/x.png)'],
    ['a bare address', 'see https://example.org/x and www.example.org or WWW.EXAMPLE.ORG'],
    ['a mail address', 'grower@example.org'],
    ['HTML', '<img src=x onerror=alert(1)> <b>bold</b> <!-- gone -->'],
    ['an entity', '&lt; &amp;lt; &#60;'],
    ['code', '`rm -rf` ``x`` ```'],
    ['emphasis', '*a* **b** _c_ __d__ ~~e~~ ~f~'],
    ['a heading', '# heading'],
    ['a list', '- item'],
    ['another list', '+ item'],
    ['a numbered list', '1. item'],
    ['a rule', '---'],
    ['a quotation', '> said'],
    ['a backslash', 'a\\*b\\'],
    ['an icon', '$(flame)'],
    ['a table cell', 'a | b'],
    ['other scripts', '黄花 藜芦 🌱 Ёлка'],
  ])('%s comes out as it was written', (_, text) => {
    expect(rendered(escapeMarkdown(text))).toBe(text);
  });

  test('any text comes out as it was written, but for blanks', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), text => {
      const visible = text.replace(/[\s\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]+/gu, ' ').trim();
      fc.pre(visible !== '');
      expect(rendered(escapeMarkdown(text))).toBe(visible);
    }));
  });

  test('any row of marks comes out as it was written', () => {
    const marks = fc.string({ unit: fc.constantFrom(...'\\`*_[]()<>&~|$@!#+-=:/.1 awhtps"\'{}^'.split('')) });
    fc.assert(fc.property(marks, text => {
      const visible = text.replace(/\s+/g, ' ').trim();
      fc.pre(visible !== '');
      expect(rendered(escapeMarkdown(text))).toBe(visible);
    }), { numRuns: 2000 });
  });

  test('it stays on one line, whatever ends a line elsewhere', () => {
    expect(escapeMarkdown('one\r\ntwo\u2028three\u0085four\vfive')).toBe('one two three four five');
  });

  test('marks that turn the direction of the text after them are dropped', () => {
    expect(escapeMarkdown('seed \u202eyrtne')).toBe('seed yrtne');
  });

  test('ids and ordinary names stay readable', () => {
    expect(escapeMarkdown('VER-24/A · Veratrum nigrum, 60 seeds at 4.5 C + 3')).toBe('VER-24/A · Veratrum nigrum, 60 seeds at 4.5 C + 3');
  });
});

describe('a table', () => {
  test('keeps a cell with a pipe in one cell', () => {
    const html = marked.parse(markdownTable(['Name', 'Seeds'], [[escapeMarkdown('a | b'), '3']]), { async: false });
    expect(html.match(/(?<=<td[^>]*>)[^<]*(?=<\/td>)/g)).toEqual(['a | b', '3']);
  });
});
