import { describe, expect, it } from 'vitest';
import { ProblemBook } from '../../../../server/src/checks/problem-book.ts';
import { quickFixes } from '../../../../server/src/features/actions/quick-fixes.ts';
import { at } from '../../journals.ts';
import { applied, journalIn } from '../applied.ts';

const ABOVE = 'lot L Iris sibirica, 30 seeds\n\nday 2026-01-25\ncount L, 0\n';

/** What each fix of the first conflict makes of a file. */
function fixed(text: string): Record<string, string> {
  const journal = journalIn({ 'a.germ': text });
  const now = at('2026-03-01');
  const book = new ProblemBook(journal);
  book.update(now);
  const found = book.of('a.germ').filter(({ problem }) => problem.code === 'merge-conflict').slice(0, 1);
  return Object.fromEntries(quickFixes(found, 0, Infinity, { journal, file: 'a.germ', now })
    .map(({ title, edits }) => [title, applied(journal, edits)['a.germ']!]));
}

describe('a conflict that a merge left', () => {
  it('becomes one of the versions, or both merged by their records', () => {
    const [ours, theirs] = ['day 2026-02-08\ncount L, 5\n', 'day 2026-02-05\nnote L, dry\n  Very.\n\nday 2026-02-08\nnote L, wet\n'];
    expect(fixed(`${ABOVE}\n<<<<<<< HEAD\n${ours}=======\n${theirs}>>>>>>> bench\n# The end\n`)).toEqual({
      'Keep the first version, “HEAD”': `${ABOVE}\n${ours}# The end\n`,
      'Keep the second version, “bench”': `${ABOVE}\n${theirs}# The end\n`,
      'Keep both, merged by records': `${ABOVE}\nday 2026-02-05\nnote L, dry\n  Very.\n\nday 2026-02-08\ncount L, 5\nnote L, wet\n# The end\n`,
    });
  });

  it('goes altogether where the version that is kept has nothing', () => {
    const note = 'note L, dry\n';
    expect(fixed(`${ABOVE}<<<<<<< a\n=======\n${note}>>>>>>> b\n`)).toEqual({
      'Keep the first version, “a”': ABOVE,
      'Keep the second version, “b”': ABOVE + note,
      'Keep both, merged by records': ABOVE + note,
    });
  });

  it('keeps the line ends, and other conflicts of the file', () => {
    const other = '<<<<<<< a\r\nnote L, dry\r\n=======\r\nnote L, wet\r\n>>>>>>> b\r\n';
    const above = ABOVE.replaceAll('\n', '\r\n');
    expect(fixed(`${above}<<<<<<<\r\ncount L, 1\r\n=======\r\ncount L, 2\r\n>>>>>>>\r\n${other}`)).toEqual({
      'Keep the first version': `${above}count L, 1\r\n${other}`,
      'Keep the second version': `${above}count L, 2\r\n${other}`,
      'Keep both, merged by records': `${above}count L, 1\r\ncount L, 2\r\n${other}`,
    });
  });

  it('goes by what both began with, where that is shown', () => {
    const block = '<<<<<<< a\nday 2026-02-02\ncount L, 1\n||||||| base\nday 2026-02-01\ncount L, 1\n=======\nday 2026-02-01\ncount L, 1\nnote L, wet\n>>>>>>> b';
    expect(fixed(`${ABOVE}${block}`)['Keep both, merged by records']).toBe(`${ABOVE}day 2026-02-02\ncount L, 1\nnote L 2026-02-01, wet`);
  });
});
