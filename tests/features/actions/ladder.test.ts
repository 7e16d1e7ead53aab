import { describe, expect, test } from 'vitest';
import { ladderAction } from '../../../server/src/features/actions/ladder.ts';
import { variantsOf } from '../../support/fixture.ts';
import { at, cursorOf, journalOf } from '../journals.ts';

/** The action on the line marked `here`, the same in all variants but for the ends of lines. */
function ladder(source: string, now = '2026-02-10') {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => {
    const { file, position } = cursorOf(fixture, 'here');
    return ladderAction(journalOf(fixture), file, position, at(now));
  });
  const plain = (action: typeof first) => JSON.stringify(action ?? null).replaceAll('\\r\\n', '\\n');
  for (const other of others) expect(plain(other)).toBe(plain(first));
  return first;
}

const lines = (source: string, now?: string) => ladder(source, now)?.edits[0]?.text.split('\n').slice(1);

describe('the ladder from a stock', () => {
  test('of 2000 ppm has the three rungs, each drawn from the stock, below its remarks', () => {
    expect(ladder(`
      # Bench
      stock G1 2026-01-09, GA3 200 mg, 100 mL
            ^^ here
        Cleared after ten minutes.
      lot VER-24 Veratrum nigrum, 60 seeds
    `)).toEqual({
      title: 'Write the ladder 1000, 500 and 250 ppm from G1',
      edits: [{
        file: 'journal.germ', line: 2, start: 28, end: 28,
        text: '\ndilute G1-1000 2026-02-10, from G1 10 mL, to 20 mL' +
          '\ndilute G1-500 2026-02-10, from G1 5 mL, to 20 mL' +
          '\ndilute G1-250 2026-02-10, from G1 2.5 mL, to 20 mL',
      }],
    });
  });

  test('has only the rungs below its strength, and is no earlier than the stock', () => {
    expect(lines(`
      stock G1 2026-03-01, GA3 20 mg, purity 90 %, 18 mL
            ^^ here
    `)).toEqual(['dilute G1-500 2026-03-01, from G1 10 mL, to 20 mL', 'dilute G1-250 2026-03-01, from G1 5 mL, to 20 mL']);
  });

  test('has no rung that is the stock itself, and none of what has not dissolved', () => {
    // 20.0 mg of 90.5 % in 18.0 mL are 1005.6 ppm.
    expect(lines(`
      stock G1 2026-03-01, GA3 20.0 mg, purity 90.5 %, 18.0 mL
            ^^ here
    `)).toHaveLength(2);
    expect(lines(`
      stock G1 2026-03-01, GA3 60 mg, 10 mL
            ^^ here
    `)).toBeUndefined();
  });

  test('takes no more than is left', () => {
    expect(lines(`
      stock G1 2026-01-09, GA3 20 mg, 20 mL
            ^^ here
      dilute G2 2026-01-09, from G1 12 mL, to 24 mL
    `)).toEqual(['dilute G1-500 2026-02-10, from G1 5 mL, to 10 mL', 'dilute G1-250 2026-02-10, from G1 2.5 mL, to 10 mL']);
    expect(lines(`
      stock G1 2026-01-09, GA3 20 mg, 20 mL
            ^^ here
      dilute G2 2026-01-09, from G1 19 mL, to 24 mL
    `)).toBeUndefined();
  });

  test('goes down from rung to rung where that spares rounding', () => {
    // From 1200 ppm 20 mL of 1000 ppm would take 16.666... mL; down the ladder 35 mL of it take 29.166... mL. Neither
    // is exact, so each is drawn from the stock, rounded to what a syringe shows.
    expect(lines(`
      stock G1 2026-01-09, GA3 240 mg, 200 mL
            ^^ here
    `)).toEqual([
      'dilute G1-1000 2026-02-10, from G1 16.6 mL, to 20 mL', 'dilute G1-500 2026-02-10, from G1 8.4 mL, to 20 mL',
      'dilute G1-250 2026-02-10, from G1 4.2 mL, to 20 mL',
    ]);
    // Of 32000 ppm 20 mL of 250 ppm would take 156.25 µL; down the ladder nothing is that small.
    expect(lines(`
      stock G1 2026-01-09, GA3K 640 mg, 20 mL
            ^^ here
    `)).toEqual([
      'dilute G1-1000 2026-02-10, from G1 1.09 mL, to 35 mL', 'dilute G1-500 2026-02-10, from G1-1000 15 mL, to 30 mL',
      'dilute G1-250 2026-02-10, from G1-500 10 mL, to 20 mL',
    ]);
  });

  test('gives each rung a name that is free', () => {
    expect(lines(`
      stock G1 2026-01-09, GA3 20 mg, 20 mL
            ^^ here
      lot G1-500 Primula, 3 seeds
    `)?.map(line => line.split(' ')[1])).toEqual(['G1-500-2', 'G1-250']);
  });

  test.each([
    ['a dilution', 'dilute G1 2026-01-09, from G0 10 mL, to 20 mL'],
    ['one that is weaker than every rung', 'stock G1 2026-01-09, GA3 5 mg, 20 mL'],
    ['one whose strength is not known', 'stock G1 2026-01-09, GA3 5 mg'],
    ['one past its time', 'stock G1 2020-01-09, GA3 20 mg, 20 mL'],
    ['what is no hormone', 'stock G1 2026-01-09, KNO3 2 g, 1 L'],
    ['one without a date', 'stock G1, GA3 20 mg, 20 mL'],
    ['another record', 'note G1 2026-01-09, clear'],
  ])('is not offered for %s', (_, record) => {
    expect(ladder(`${record}\n${' '.repeat(record.indexOf('G1'))}^^ here`)).toBeUndefined();
  });
});
