import { describe, expect, test } from 'vitest';
import { expectAllMarked, problemsIn } from './marked.ts';

describe('a limit for something that has none', () => {
  test('is marked; soaks, stocks, counts and agents have one, whatever the case', () => {
    expectAllMarked(`
      limit soak, 24 h
      limit Stock, 4 years
      limit count, 7 days
      limit ga3, 500 ppm
      limit kelp, 5 ppm
      limit soaks, 24 ppm
            ^^^^^ unknown-agent
      agent kelp, seaweed
    `);
  });

  test('is taken for what is like it', () => {
    expect(problemsIn('unknown-agent', 'limit GA33, 500 ppm')[0]?.message)
      .toBe('“GA33” is neither an agent nor a stock of this journal. Did you mean “GA3”?');
    expect(problemsIn('unknown-agent', 'limit GA33, 500 ppm')[0]?.fixes).toMatchObject([{ start: 6, end: 10, text: 'GA3' }]);
    expect(problemsIn('unknown-agent', 'limit everything, 500 ppm')[0]?.fixes).toEqual([]);
    expect(problemsIn('unknown-agent', 'limit everything, 500 ppm')[0]?.message)
      .toBe('“everything” is neither an agent nor a stock of this journal. Write soak, stock, count or an agent.');
  });
});
