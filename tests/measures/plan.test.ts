import { describe, expect, test } from 'vitest';
import { plan } from '../../server/src/measures/plan.ts';

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
});
