import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quantityOf } from '../../server/src/syntax/quantity-text.ts';

function messageOf(...[what, text]: Parameters<typeof quantityOf>): string {
  const read = quantityOf(what, text);
  if (read.ok) throw new Error(`${text} was read as ${JSON.stringify(read.value)}`);
  return read.message;
}

describe('a quantity that stands alone', () => {
  test.each([
    ['strength', '500 ppm', { value: 500, unit: 'ppm' }],
    ['strength', ' 500ppm ', { value: 500, unit: 'ppm' }],
    ['strength', '0.05 %', { value: 0.05, unit: '%' }],
    ['strength', '0.5 g/l', { value: 0.5, unit: 'g/L' }],
    ['volume', '20\tml', { value: 20, unit: 'mL' }],
    ['volume', '250 µL', { value: 250, unit: 'uL' }],
    ['mass', '20.0 mg', { value: 20, unit: 'mg', decimals: 1 }],
  ] as const)('%s %s is read as in a journal', (what, text, value) => {
    expect(quantityOf(what, text)).toEqual({ ok: true, value });
  });

  test.each([
    ['90', { percent: 90 }], ['90 %', { percent: 90 }], ['87.5%', { percent: 87.5 }], ['90 % acid', { percent: 90, form: 'acid' }],
    ['75 acid', { percent: 75, form: 'acid' }], ['75 salt', { percent: 75, form: 'salt' }],
  ])('a purity of %s needs no sign', (text, purity) => {
    expect(quantityOf('purity', text)).toMatchObject({ ok: true, value: purity });
  });

  test('is refused with the words of the journal, and the fix', () => {
    expect(messageOf('strength', '0,5 g/L')).toContain('Write 0.5');
    expect(messageOf('strength', '500')).toContain('has no unit');
    expect(messageOf('strength', '500 pmm')).toContain('Did you mean “ppm”?');
    expect(messageOf('strength', '20 mL')).toContain('“mL” is not a unit of strength');
    expect(messageOf('volume', '-3 mL')).toContain('above 0');
    expect(messageOf('volume', '1/2 L')).toContain('Write it as a decimal number');
    expect(messageOf('purity', '120 %')).toContain('up to 100');
    expect(messageOf('purity', '9,5')).toContain('9.5');
  });

  test.each([
    ['strength', ''], ['strength', 'some'], ['strength', '500 ppm, 20 mL'], ['strength', '500 ppm 20 mL'], ['strength', '2026-01-19'],
    ['volume', 'mL 20'], ['mass', '"20 mg"'], ['purity', '90 % powder'], ['purity', '90 %, 20 mL'],
  ] as const)('%s “%s” is none, and an example is given', (what, text) => {
    expect(messageOf(what, text)).toMatch(/^“.*” is not a \w+ such as “\d+ .+”\.$/);
  });

  test('any text is a quantity or a message, and nothing is thrown', () => {
    const what = fc.constantFrom('strength' as const, 'volume' as const, 'mass' as const, 'purity' as const);
    fc.assert(fc.property(what, fc.oneof(fc.string(), fc.string({ unit: 'grapheme' })), (kind, text) => {
      const read = quantityOf(kind, text);
      expect(read.ok || read.message.length > 0).toBe(true);
    }), { numRuns: 500 });
  });
});
