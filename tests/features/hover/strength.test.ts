import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

/** Over a strength in a soak of Veratrum. */
function strength(agent: string, written: string, limit = ''): string[] | undefined {
  const before = ' '.repeat(`soak VER-24 2026-01-10, ${agent} `.length);
  return hover(`--- limits.germ\n${limit}\n--- a.germ\nlot VER-24 Veratrum nigrum, 60 seeds
soak VER-24 2026-01-10, ${agent} ${written}, 24 h\n${before}${'^'.repeat(written.length)} here`, '2026-02-10')?.split('\n\n');
}

// Conversions: GA3 346.379 g/mol from the standard atomic weights of IUPAC; 500 / 346.379 = 1.4435.
describe('hover on a strength', () => {
  test('gives its equivalents, how it stands to the limit, and what is taken for granted', () => {
    expect(strength('GA3', '500 ppm')).toEqual([
      'GA3 500 ppm = 500 mg/L = 0.5 g/L = 0.05 % ≈ 1.444 mM',
      '50 % of the limit of 1000 ppm (default: common practice, no source).',
      '1 ppm counts as 1 mg/L, as in dilute water. % means weight in volume: 1 % is 10 g/L. Molar mass 346.379 g/mol, from standard atomic weights.',
    ]);
  });

  test.each([
    ['0.05 %', 'GA3 0.05 % = 500 ppm = 500 mg/L = 0.5 g/L ≈ 1.444 mM'],
    ['0.5 g/L', 'GA3 0.5 g/L = 500 ppm = 500 mg/L = 0.05 % ≈ 1.444 mM'],
    ['1.44 mM', 'GA3 1.44 mM ≈ 498.8 ppm ≈ 498.8 mg/L ≈ 0.4988 g/L ≈ 0.04988 %'],
    ['100 uM', 'GA3 100 uM = 34.6379 ppm = 34.6379 mg/L = 0.0346379 g/L = 0.00346379 %'],
    ['1 ppm', 'GA3 1 ppm = 1 mg/L = 0.001 g/L = 0.0001 % ≈ 2.887 µM'],
  ])('of %s in the other units', (written, text) => {
    expect(strength('GA3', written)?.[0]).toBe(text);
  });

  test('names where its limit comes from', () => {
    expect(strength('GA3', '500 ppm', 'limit GA3, 500 ppm, for Veratrum')?.[1])
      .toBe('At the limit of 500 ppm (the “limit” record in limits.germ, line 1).');
    expect(strength('GA3', '750 ppm', 'limit GA3, 500 ppm')?.[1])
      .toBe('Above the limit of 500 ppm (the “limit” record in limits.germ, line 1): 1.5 times as strong.');
  });

  test('of a salt gives the acid in it, and holds that against the limit', () => {
    expect(strength('GA3K', '500 ppm')?.slice(0, 2)).toEqual([
      'GA3K 500 ppm = 500 mg/L = 0.5 g/L = 0.05 % ≈ 1.3 mM ≈ 450 ppm GA3',
      '45 % of the limit of 1000 ppm GA3 (default: common practice, no source).',
    ]);
  });

  test('of bleach gives the available chlorine', () => {
    expect(strength('bleach', '1 %')?.[0]).toBe('bleach 1 % = 10000 ppm = 10000 mg/L = 10 g/L ≈ 134.3 mM ≈ 0.9525 % available chlorine');
  });

  test('that cannot be converted says why', () => {
    expect(strength('smoke', '5 g/L')).toEqual([
      'smoke 5 g/L',
      'smoke is measured by volume, and what it holds is unknown. Use %. % means parts by volume of the liquid as bought: 10 % is 1 part in 10.',
    ]);
  });

  test('by volume has no other unit than %', () => {
    expect(strength('smoke', '10 %')).toEqual(['smoke 10 %', '% means parts by volume of the liquid as bought: 10 % is 1 part in 10.']);
  });

  test('that does not dissolve says so', () => {
    expect(strength('GA3', '6000 ppm')?.[2]).toBe('More than dissolves in water: 5 g/L (a supplier’s product data page, unverified).');
  });

  test('that was not measured has no ppm', () => {
    expect(strength('GA3', 'unmeasured')?.[0]).toMatch(/^GA3 unmeasured: Nothing was measured, so .* no ppm/);
  });

  test('of something unknown is none', () => {
    expect(strength('kelp', '5 ppm')).toBeUndefined();
  });

  test('in a limit record is held against nothing', () => {
    expect(hover(`
      limit GA3, 500 ppm
                 ^^^^^^^ here
    `, '2026-02-10')).not.toContain('limit of');
  });

  test('in a guide is held against the limit for its plant', () => {
    expect(hover(`
      limit GA3, 400 ppm, for Veratrum
      guide Veratrum nigrum, GA3 200 ppm
                                 ^^^^^^^ here
    `, '2026-02-10')?.split('\n\n')[1]).toBe('50 % of the limit of 400 ppm (the “limit” record in journal.germ, line 1).');
  });
});
