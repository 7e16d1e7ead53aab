import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn, relatedIn } from './marked.ts';

describe('two limits of one thing', () => {
  test('are pointed out at the one that counts, also for a plant alone', () => {
    expectMarked(['limit-twice'], `
      limit GA3, 500 ppm
      limit soak, 12 h
      limit GA3, 400 ppm, for Primula
      limit ga3, 1000 ppm
                 ^^^^^^^^ limit-twice
      limit soak, 24 h
                  ^^^^ limit-twice
      limit GA3, 300 ppm, for primula
                 ^^^^^^^ limit-twice
      limit stock, 4 years
      limit stock, 3 years
                   ^^^^^^^ limit-twice
    `);
  });

  test('may say the same, in whatever unit, or be for other plants and things', () => {
    expectMarked(['limit-twice'], `
      limit GA3, 1000 ppm
      limit GA3, 1 g/L
      limit GA3, 0.1 %
      limit GA3, 500 ppm, for Primula
      limit GA3, 250 ppm, for Primula vulgaris
      limit kelp, 5 ppm
      limit soak, 24 h
      limit soak, 1 day
      limit count, 7 days
      limit count, 1 week
    `);
  });

  test('are told with both values and where the other one is', () => {
    const text = 'limit GA3, 500 ppm\nlimit GA3, 1000 ppm\nlimit soak, 10 h, for Iris\nlimit soak, 2 h, for Iris\n';
    expect(problemsIn('limit-twice', text).map(({ message }) => message.split('. ')[0])).toEqual([
      'There are two limits of GA3: this one, 1000 ppm, counts, and 500 ppm further up in this file does not',
      'There are two limits of soak for Iris: this one, 2 h, counts, and 10 h further up in this file does not',
    ]);
    expect(relatedIn('limit-twice', text)).toEqual(['1 The other one']);
  });
});
