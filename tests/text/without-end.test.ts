import fc from 'fast-check';
import { expect, test } from 'vitest';
import { withoutEnd } from '../../server/src/text/without-end.ts';

test.each([
  ['potted?!', '?!', 'potted'],
  ['…and, then,', ',', '…and, then'],
  ['?!?', '?!', ''],
  ['', '?!', ''],
  ['potted', '', 'potted'],
])('%j without %j at its end is %j', (text, signs, rest) => {
  expect(withoutEnd(text, signs)).toBe(rest);
});

test('what is left and what was cut make the text, and nothing more could be cut', () => {
  const some = fc.string({ unit: fc.constantFrom('a', 'é', '.', ',', '”'), maxLength: 30 });
  fc.assert(fc.property(some, fc.constantFrom('.', '.,', '”,'), (text, signs) => {
    const rest = withoutEnd(text, signs);
    expect(text.startsWith(rest)).toBe(true);
    expect(text.slice(rest.length).split('').every(sign => signs.includes(sign))).toBe(true);
    expect(rest === '' || !signs.includes(rest.at(-1)!)).toBe(true);
  }));
});
