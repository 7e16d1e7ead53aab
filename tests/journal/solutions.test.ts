import { describe, expect, test } from 'vitest';
import { staleOn, takesFrom, type Solution } from '../../server/src/journal/solutions.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOfIso, isoOf } from '../../server/src/model/day.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
import { parse } from '../../server/src/syntax/parse.ts';

function solution(id: string, ...lines: string[]): Solution {
  const journal = new Journal();
  journal.set('a.germ', lines.join('\n'));
  const found = journal.solution(id);
  if (!found) throw new Error(`no solution ${id}`);
  return found;
}

const ppm = ({ ppm: known }: Solution) => (known.ok ? toNumber(known.value) : known.refusal.code);
const keeps = ({ keeps: keeping }: Solution) => keeping && [isoOf(keeping.until), keeping.origin];

describe('the strength of a solution', () => {
  // Common practice: 10 mg in 10 mL is 1000 ppm. The salt: 346.379 / 384.469 of it is acid, from the standard weights.
  test.each([
    ['of powder', 'GA3 10 mg, 10 mL', 1000],
    ['of powder that is not pure', 'GA3 10 mg, purity 90 %, 10 mL', 900],
    ['of a salt whose label gives the salt', 'GA3K 10 mg, purity 75 % salt, 10 mL', 750],
    ['of a salt whose label gives the acid', 'GA3K 10 mg, purity 75 % acid, 10 mL', 832.4747],
    ['of an acid whose label gives the salt', 'GA3 10 mg, purity 75 % salt, 10 mL', 675.6962],
    ['of a packet halved twice, a quarter', 'GA3 40 mg halved 2 times, 10 mL', 1000],
    ['of a liquid as bought', 'peroxide 3 %, 250 mL', 30_000],
    ['of a liquid as bought, of which nobody knows how much there is', 'ethephon 480 g/L', 480_000],
    ['not known without a volume', 'GA3 10 mg', 'no-volume'],
    ['not known without a mass', 'GA3, 10 mL', 'no-strength'],
    ['not known for water', 'water 10 ppm, 10 mL', 'no-strength'],
  ])('%s', (_, facts, expected) => {
    const found = ppm(solution('S1', `stock S1 2026-01-09, ${facts}`));
    if (typeof expected === 'number') expect(found).toBeCloseTo(expected, 4);
    else expect(found).toBe(expected);
  });
});

test('what was in a bottle too long was made when the oldest of it was', () => {
  // The dilution is past its own day too, and so is the stock that it was drawn from.
  const lines = ['stock S1 2015-01-09, GA3 10 mg, 10 mL', 'dilute S2 2022-01-09, from S1 1 mL, to 2 mL, keeps 1 year'];
  const made = (...only: string[]) => {
    const since = staleOn(solution('S2', ...only), dayOfIso('2026-01-09')!);
    return since && isoOf(since.made);
  };
  expect(made(...lines)).toBe('2015-01-09');
  expect(made(lines[0]!, lines[1]!.replace('1 year', '9 years'))).toBe('2015-01-09');
  expect(made('stock S1 2021-01-09, GA3 10 mg, 10 mL', lines[1]!)).toBe('2022-01-09');
  expect(made('stock S1 2021-01-09, GA3 10 mg, 10 mL', lines[1]!.replace('1 year', '9 years'))).toBeUndefined();
});

describe('how long a solution keeps', () => {
  const stock = 'stock S1 2022-01-09, GA3 10 mg, 10 mL';

  test('is what its record says, else what the limit says', () => {
    expect(keeps(solution('S1', stock))).toEqual(['2026-01-09', 'keeps 4 years; default: common practice, no source']);
    expect(keeps(solution('S1', stock, 'limit stock, 18 months')))
      .toEqual(['2023-07-09', 'keeps 18 months; the “limit” record in a.germ']);
    expect(keeps(solution('S1', `${stock}, keeps 2 weeks`, 'limit stock, 18 months')))
      .toEqual(['2022-01-23', 'its record says “keeps 2 weeks”']);
  });

  test('is no longer than that of what it was made from, unless its own record says so', () => {
    const diluted = 'dilute S2 2024-01-09, from S1 1 mL, to 2 mL';
    expect(keeps(solution('S2', stock, diluted, 'limit stock, 4 years'))).toEqual(['2026-01-09', 'no longer than what it was made from']);
    expect(keeps(solution('S2', stock, `${diluted}, keeps 3 years`))?.[0]).toBe('2027-01-09');
    // Of a stock that keeps longer it is a year, as GA3 does once diluted, or as long as the limit says.
    expect(keeps(solution('S2', `${stock}, keeps 9 years`, diluted)))
      .toEqual(['2025-01-09', 'keeps 1 year; GA3 once diluted; default: common practice, no source']);
    expect(keeps(solution('S2', `${stock}, keeps 9 years`, diluted, 'limit stock, 4 years'))?.[0]).toBe('2028-01-09');
  });

  test('is not known without a date', () => {
    expect(keeps(solution('S1', 'stock S1, GA3 10 mg, 10 mL'))).toBeUndefined();
  });
});

describe('a record that takes from a stock', () => {
  test.each([
    ['soak X 2026-01-10, KNO3 0.2 %, S1 5 mL', true], ['apply X 2026-01-10, S1, 2 drops', true], ['dilute S2 2026-01-10, from S1 1 mL, to 2 mL', true],
    ['soak X 2026-01-10, S2 5 mL', false], ['note S1 2026-01-10, clear', false], ['stock S1 2026-01-10, GA3 1 mg, 1 mL', false],
    ['guide Primula, S1', false],
  ])('%s: %s', (line, takes) => {
    expect(takesFrom(parse(line).record!, 'S1')).toBe(takes);
  });
});
