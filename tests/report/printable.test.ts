import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { printable, printableJson } from '../../server/src/report/printable.ts';

const STEERING = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069]/;
const written = fc.array(fc.oneof(
  fc.string({ unit: 'binary', maxLength: 5 }),
  fc.constantFrom('\u001b[31m', '\u009b31m', '\u202e', '\u2066', '\u200f', '\u061c', '\u2028', '\n', '"', '\\', '🌱'),
)).map(parts => parts.join(''));

describe('text of a journal', () => {
  test('on a terminal neither steers it nor ends its line', () => {
    fc.assert(fc.property(written, text => {
      expect(printable(text)).not.toMatch(STEERING);
      expect(printable(text)).not.toContain('\n');
    }));
    expect(printable('a\u200eb\u200fc\u061cd')).toBe('a\ufffdb\ufffdc\ufffdd');
    expect(printable('Iris \u001b[31mrosea\u202e 🌱 種子')).toBe('Iris \ufffd[31mrosea\ufffd 🌱 種子');
  });

  test('in JSON is whole, and does not steer a terminal either', () => {
    fc.assert(fc.property(written, text => {
      const json = printableJson({ plant: text });
      expect(JSON.parse(json)).toEqual({ plant: text });
      expect(json).not.toMatch(STEERING);
    }));
    expect(printableJson(['\u009b\u202e'])).toBe('[\n  "\\u009b\\u202e"\n]\n');
  });
});
