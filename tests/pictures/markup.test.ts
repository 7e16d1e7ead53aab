import { parseFragment, serialize } from 'parse5';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { element, joined, shortNumber } from '../../server/src/pictures/markup.ts';

describe('markup', () => {
  test('writes journal text as the characters that stand there', () => {
    const { markup } = element('text', { 'data-mark': '"><script>' }, '<b onload="x">&amp;');
    expect(markup).toBe(
      '<text data-mark="&#34;&#62;&#60;script&#62;">&#60;b onload=&#34;x&#34;&#62;&#38;amp;</text>',
    );
  });

  test('gives back any text through a parser of HTML', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), text => {
        const tree = parseFragment(element('p', {}, text).markup);
        const paragraph = tree.childNodes[0]!;
        const read =
          'childNodes' in paragraph
            ? paragraph.childNodes.map(node => ('value' in node ? node.value : '')).join('')
            : '';
        expect(tree.childNodes).toHaveLength(1);
        // Controls come out as blanks, lone halves of a character as the sign for what cannot be read.
        expect(read.replace(/[ \ufffd]/g, '')).toBe(
          text.replace(/[\p{Cc}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufffe\uffff\ufffd ]|\p{Cs}/gu, ''),
        );
      }),
    );
  });

  test('turns no direction, for `draw` may write it to a terminal', () => {
    expect(element('title', {}, 'a\u200eb\u200fc\u061cd\u202ee\u2066f').markup).toBe('<title>a b c d e f</title>');
  });

  test('leaves out what is undefined, and keeps two decimal places', () => {
    expect(element('g', { x: 1 / 3, y: undefined }, undefined, joined(['a', 2])).markup).toBe('<g x="0.33">a2</g>');
    expect(shortNumber(-0.001)).toBe('0');
  });

  test('ends each element as HTML does too', () => {
    const { markup } = element('table', {}, element('tbody', {}, element('tr', {}, element('td'), element('th'))));
    expect(serialize(parseFragment(markup))).toBe('<table><tbody><tr><td></td><th></th></tr></tbody></table>');
  });
});
