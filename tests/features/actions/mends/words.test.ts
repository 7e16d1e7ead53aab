import { expect, test } from 'vitest';
import { linesOf, mended } from './mending.ts';

test.each([['Europe/Viena', 'Europe/Vienna'], ['vienna', 'Europe/Vienna']])(
  'a zone written %s is %s', (written, zone) => {
    expect(mended('unknown-zone', `zone ${written}\n     ${'^'.repeat(written.length)} unknown-zone`)).toEqual([
      { title: `Change to “${zone}”`, lines: [`zone ${zone}`], preferred: true, left: [] },
    ]);
  });

test('a zone that is like none stays', () => {
  expect(linesOf('unknown-zone', 'zone Mars/Olympus\n     ^^^^^^^^^^^^ unknown-zone')).toEqual([]);
});

test('a strength that is missing may never have been measured', () => {
  expect(linesOf('strength-missing', `
    lot VER-24 Veratrum nigrum, 60 seeds
    soak VER-24 2026-01-10, KNO3 0.2 %, GA3, 24 h
                                        ^^^ strength-missing
  `)).toEqual([[
    'Say that it was not measured: “GA3 unmeasured”', 'soak VER-24 2026-01-10, KNO3 0.2 %, GA3 unmeasured, 24 h',
  ]]);
});

test('nor may the powder of a stock, but a mass is not thrown away for its missing volume', () => {
  expect(linesOf('strength-missing', `
    stock G1 2026-01-09, GA3, 18 mL
                         ^^^ strength-missing
  `)).toEqual([['Say that it was not measured: “GA3 unmeasured”', 'stock G1 2026-01-09, GA3 unmeasured, 18 mL']]);
  expect(linesOf('strength-missing', `
    stock G1 2026-01-09, GA3 50 mg
                         ^^^ strength-missing
  `)).toEqual([]);
});
