import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { problemKinds } from '../../server/src/model/problems.ts';
import { journal } from './arbitrary-journal.ts';

describe('a journal made for property tests', () => {
  it('adds up: no check finds an error in it', () => {
    fc.assert(fc.property(journal, ({ files, today }) => {
      const read = new Journal();
      for (const { name, text } of files) read.set(name, text);
      const book = new ProblemBook(read);
      book.update({ day: today, minutes: 720 });
      const errors = files.flatMap(({ name }) => book.of(name))
        .filter(({ problem }) => problemKinds[problem.code].severity === 'error')
        .map(({ line, problem }) => `${line.text}: ${problem.message}`);
      expect(errors).toEqual([]);
    }), { numRuns: 300 });
  });
});
