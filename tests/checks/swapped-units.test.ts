/** F = 9C/5 + 32: 39 F is 3.9 C, 68 F is 20 C, 4 F is -15.6 C. */
import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

const codes = ['unit-slip'] as const;
const fixes = (line: string) => problemsIn('unit-slip', `lot L Iris sibirica, 40 seeds\n${line}`, { now: '2026-01-01' })
  .map(problem => problem.fixes.map(({ text }) => text));

describe('a temperature', () => {
  test.each([
    ['chill L 2026-01-10, 39 C, 90 days', ['39 F']],
    ['chill L 2026-01-10, 4 C, 90 days', undefined],
    ['chill L 2026-01-10, 39 F, 90 days', undefined],
    ['chill L 2026-01-10, 4 F, 90 days', ['4 C']],
    ['chill L 2026-01-10, 20 C, 90 days', ['warm']],
    ['chill L 2026-01-10, 68 F, 90 days', ['warm']],
    ['chill L 2026-01-10, 40 C, 90 days', ['40 F']],
    ['chill L 2026-01-10, -5 C, 90 days', undefined],
    ['chill L 2026-01-10, -18 C, 90 days', []],
    ['warm L 2026-01-10, 4 C, 60 days', ['chill']],
    ['warm L 2026-01-10, 68 C, 60 days', ['68 F']],
    ['warm L 2026-01-10, 20 F, 60 days', ['20 C']],
    ['warm L 2026-01-10, 12/5 C, 60 days', undefined],
    ['sow L 2026-01-10, 68 C', ['68 F']],
    ['sow L 2026-01-10, 680 F', ['68 F']],
    ['sow L 2026-01-10, 200 C', ['20 C']],
    ['sow L 2026-01-10, 100 C', ['10 C']],
    ['sow L 2026-01-10, 99 C', []],
    // 50 F is 10 C, 95 F is 35 C.
    ['warm L 2026-01-10, 50 C, 60 days', ['50 F']],
    ['chill L 2026-01-10, 50 C, 60 days', ['50 F']],
    ['chill L 2026-01-10, 51 C, 60 days', []],
    ['warm L 2026-01-10, 95 C, 60 days', ['95 F']],
    ['warm L 2026-01-10, 96 C, 60 days', []],
    // 35 F and 35 C: one of them is offered. 32 F is 0 C.
    ['sow L 2026-01-10, 350 F', ['35 F']],
    ['sow L 2026-01-10, 320 F', ['32 F']],
    ['sow L 2026-01-10, 20/-25 C', undefined],
    ['sow L 2026-01-10, 20/-26 C', []],
    ['sow L 2026-01-10, 70/50 C', ['70/50 F']],
    ['sow L 2026-01-10, 20/10 C', undefined],
    ['sow L 2026-01-10, -2 C', undefined],
    ['regime R, warm 68 C 60 days, chill 39 F 90 days', ['68 F']],
    ['guide Iris, chill 39 C 90 days', ['39 F']],
  ])('%s', (line, expected) => {
    expect(fixes(line)).toEqual(expected ? [expected] : []);
  });

  test('is marked at the number, and says what it may be', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      chill VER-24 2026-01-10, 39 C, 90 days
                               ^^^^ unit-slip
      regime R, warm 20 C 60 days, chill 39 C 90 days
                                         ^^^^ unit-slip
    `);
    expect(problemsIn('unit-slip', 'lot V Veratrum\nwarm V 2026-01-10, 4 C')[0]?.message)
      .toBe('4 C is not a likely temperature for “warm” (8 to 40 C; common practice, no source). Did you mean “chill”?');
  });
});

describe('a time', () => {
  test.each([
    ['soak L 2026-01-10, water, 24 days', ['24 h']],
    ['soak L 2026-01-10, water, 12 weeks', ['12 h']],
    ['soak L 2026-01-10, water, 2 days', undefined],
    ['soak L 2026-01-10, water, 24 h', undefined],
    ['soak L 2026-01-10, water, 24 months', ['24 h']],
    ['chill L 2026-01-10, 4 C, 90 h', ['90 days']],
    ['chill L 2026-01-10, 4 C, 12 weeks', undefined],
    ['chill L 2026-01-10, 4 C, 3 months', undefined],
    ['warm L 2026-01-10, 20 C, 1 day', undefined],
  ])('%s', (line, expected) => {
    expect(fixes(line)).toEqual(expected ? [expected] : []);
  });
});

describe('a volume', () => {
  test.each([
    ['soak L 2026-01-10, GA3 500 ppm, 20 L, 24 h', ['20 mL']],
    ['soak L 2026-01-10, GA3 500 ppm, 20 uL, 24 h', ['20 mL']],
    ['soak L 2026-01-10, GA3 500 ppm, 1 L, 24 h', undefined],
    // 20 mg in 18 L are 1.1 ppm, in 18 mL 1111 ppm.
    ['stock G1 2026-01-09, GA3 20 mg, 18 L', ['18 mL']],
    ['stock G1 2026-01-09, GA3 20 g, 18 mL', ['20 mg']],
    ['stock G1 2026-01-09, GA3 20 mg, 18 uL', ['18 mL']],
    ['stock G1 2026-01-09, GA3 20 mg, 18 mL', undefined],
    ['stock K 2026-01-09, KNO3 2 g, 1 L', undefined],
  ])('%s', (line, expected) => {
    expect(fixes(line)).toEqual(expected ? [expected] : []);
  });
});

test('a dose in the wrong unit has that of the other offered', () => {
  const slips = (line: string) => problemsIn('strength-slip', `lot L Iris\n${line}`).flatMap(each => each.fixes.map(({ text }) => text));
  // 0.5 mg/L of GA3 is nobody's, 0.5 g/L is 500 ppm; 500 g/L does not dissolve, 500 mg/L does.
  expect(slips('soak L 2026-01-10, GA3 0.5 mg/L, 24 h')[0]).toBe('0.5 g/L');
  expect(slips('soak L 2026-01-10, GA3 500 g/L, 24 h')[0]).toBe('500 mg/L');
  expect(slips('soak L 2026-01-10, KNO3 2 mg/L, 24 h')).toContain('2 g/L');
});

describe('a dilution, or what is poured into the dish, that comes down to a strength nobody uses', () => {
  const slips = (lines: string) => problemsIn('strength-slip', `lot L Iris\nstock G1 2026-01-01, GA3 18 mg, 18 mL\n${lines}`);

  test.each([
    // 1000 ppm, 4 uL in 20 mL are 0.2 ppm; 4 mL are 200 ppm.
    ['dilute G2 2026-01-01, from G1 4 uL, to 20 mL', ['4 mL'], 'GA3 0.2 ppm'],
    ['dilute G2 2026-01-01, from G1 4 mL, to 20 L', ['20 mL'], 'GA3 0.2 ppm'],
    // 10 mL in 10 L are 1 ppm, and 10 mL in 10 mL are no dilution.
    ['dilute G2 2026-01-01, from G1 10 mL, to 10 L', [], 'GA3 1 ppm'],
    ['dilute G2 2026-01-01, from G1 0.1 mL, to 20 mL', undefined, ''],
    ['soak L 2026-01-10, G1 4 uL, 20 mL, 24 h', ['4 mL'], 'GA3 0.2 ppm'],
    ['soak L 2026-01-10, G1 4 uL, water 20 mL, 24 h', ['4 mL'], 'GA3 0.2 ppm'],
    ['soak L 2026-01-10, G1 0.1 mL, 20 mL, 24 h', undefined, ''],
    ['apply L 2026-01-10, G1 2 uL, water 100 mL, 2 drops', ['2 mL'], 'GA3 0.02 ppm'],
  ])('%s', (line, fixes, strength) => {
    const found = slips(line);
    expect(found.map(each => each.fixes.map(({ text }) => text))).toEqual(fixes ? [fixes] : []);
    if (fixes) expect(found[0]!.message).toContain(`${strength} is far from what growers use`);
  });

  test('is told once, where the unit slipped, and not of all that is made from it', () => {
    expectMarked(['strength-slip'], `
      lot L Iris sibirica, 40 seeds
      stock G1 2026-01-01, GA3 18 mg, 18 mL
      dilute G2 2026-01-01, from G1 4 uL, to 20 mL
                                    ^^^^ strength-slip
      dilute G3 2026-01-01, from G2 10 mL, to 20 mL
      soak L 2026-01-10, G3 10 mL, 24 h
      soak L 2026-01-12, G3 5 mL, 10 mL, 24 h
      soak L 2026-01-14, G1 4 uL, 20 mL, 24 h
                            ^^^^ strength-slip
    `);
  });
});
