import { describe, expect, test } from 'vitest';
import { plan } from '../../server/src/measures/plan.ts';
import { power } from '../../server/src/measures/power.ts';

describe('the plan of a trial', () => {
  test('tells what these numbers of seed can show, and a division that shows more', () => {
    expect(plan(20, 4, 0.2).sentence).toBe('With 20 treated and 4 untreated seeds, 20 % untreated can be told from 91 % '
      + 'treated or more (power 80 %); 14 and 10 would tell it from 78 %.');
  });

  test('does not speak of a division that is hardly better', () => {
    // R 4.2.2: the exact power of 12 against 12 at 20 and 80 % is 0.8115.
    expect(plan(14, 10, 0.2).sentence).toMatch(/^With 14 treated and 10 untreated seeds, 20 % untreated .* \(power 80 %\)\.$/);
  });

  test('says where nothing can be shown', () => {
    expect(plan(3, 3, 0.4).sentence).toBe('With 3 treated and 3 untreated seeds, 40 % untreated cannot be told from any '
      + 'treated share.');
  });

  test('says what a better division would show where this one shows nothing', () => {
    expect(plan(22, 2, 0.2)).toMatchObject({
      visible: { undefined: expect.any(String) as string }, sentence: expect.stringContaining('; 14 and 10 would tell it from 78 %.'),
    });
  });

  test('of more seeds than are reckoned with says what so many show at least', () => {
    expect(plan(400, 300, 0.5)).toMatchObject({
      visible: { undefined: 'Plumule does not calculate with so many seeds' },
      sentence: 'With 400 treated and 300 untreated seeds, any two shares that differ by 15 points can be told apart (power 80 %).',
    });
    // R 4.2.2, the exact power of fisher.test for 250 a side at 42.5 and 57.5 %, where it is least: 0.9123.
    expect(power(250, 250, 0.425, 0.575)).toBeGreaterThan(0.91);
    expect(plan(6000, 40, 0.5).sentence).toBe('6000 treated and 40 untreated seeds are more than Plumule calculates with.');
    expect(plan(600, 20, 0.1).best).toMatchObject({ treated: 370, untreated: 250 });
  });

  test('is the same when it is asked for again', () => {
    expect(plan(9, 9, 0.3)).toBe(plan(9, 9, 0.3));
  });
});
