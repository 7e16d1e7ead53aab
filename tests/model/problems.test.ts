import { describe, expect, test } from 'vitest';
import { problem, problemKinds, type ProblemCode } from '../../server/src/model/problems.ts';

describe('the table of problems', () => {
  test.each(Object.entries(problemKinds))('says of %s what is wrong and what to do, in a sentence each', (_, { message, advice }) => {
    for (const sentence of [message, advice]) expect(sentence).toMatch(/^(“|[A-Z]|\{)/);
    expect(message).toMatch(/([.?]|^\{\w+\})$/);
    expect(advice).toMatch(/([.?]|\{\w+\})$/);
  });

  test('fills in what is named, and nothing that a grower wrote', () => {
    const { message } = problem('unknown-keyword', { start: 0, end: 3 }, { word: '{suggestion}', suggestion: 'Try $& or $1.' });
    expect(message).toBe('“{suggestion}” is not a keyword. Try $& or $1.');
  });

  test('leaves in braces what no value was given for, so that a test can see it', () => {
    expect(problem('bad-unit', { start: 0, end: 1 }).message).toContain('{unit}');
  });

  test('has codes of small letters and hyphens', () => {
    for (const code of Object.keys(problemKinds) as ProblemCode[]) expect(code).toMatch(/^[a-z]+(-[a-z]+)+$/);
  });
});
