import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { circleFrom } from '../../server/src/journal/replacing.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { journalIn } from '../features/actions/applied.ts';
import { at } from '../report/helpers.ts';
import { expectAllMarked, problemsIn } from './marked.ts';

const now = at('2026-01-01');

describe('a slip in what a lot replaces', () => {
  test('is a lot that is not there, and a lot that replaces itself, at once or by way of others', () => {
    expectAllMarked(`
      lot A Iris sibirica, replaces B
                                    ^ replaces-itself
      lot B Iris sibirica, replaces C
                                    ^ replaces-itself
      lot C Iris sibirica, replaces A, replaces D
                                    ^ replaces-itself
      lot D Iris sibirica
      lot E Iris sibirica, replaces E
                                    ^ replaces-itself
      lot F Iris sibirica, replaces A
      lot G Iris sibirica, replaces IRI-22
                                    ^^^^^^ unknown-lot
      stock G1 2026-01-02, GA3 20 mg, 20 mL
      lot H Iris sibirica, replaces G1
                                    ^^ unknown-lot
    `);
  });

  test('is told with the way from the lot to itself, and can be taken out', () => {
    const [first, , third] = problemsIn('replaces-itself', `
      lot A Iris, 20 seeds, replaces B, from a friend
      lot B Iris, replaces A
      lot C Iris, replaces C
    `);
    expect(first!.message).toBe('A replaces B, which replaces A. Correct the id, or take out “replaces B”.');
    expect(first!.fixes).toEqual([{ title: 'Take out “replaces B”', start: 20, end: 32, text: '' }]);
    expect(third!.message).toBe('C cannot replace itself. Correct the id, or take out “replaces C”.');
  });

  test('offers the lot that was meant', () => {
    const [problem] = problemsIn('unknown-lot', 'lot GEN-23 Gentiana\nlot GEN-25 Gentiana, replaces GNE-23\n');
    expect(problem!.fixes.map(({ text }) => text)).toEqual(['GEN-23']);
    expect(parse('lot GEN-25 Gentiana, replaces GEN-23/A').problems).toMatchObject([
      { code: 'bad-value', fixes: [{ text: 'GEN-23' }] },
    ]);
    expect(parse('lot GEN-25 Gentiana, replaces').problems.map(({ code }) => code)).toEqual(['bad-value']);
    expect(parse('lot GEN-25 Gentiana, replaces A, replaces A').problems.map(({ code }) => code)).toEqual(['repeated-fact']);
  });

  test('is found again after any edit as if the journal were read anew', () => {
    const ids = ['A', 'B', 'C', 'D'];
    const line = fc.tuple(fc.constantFrom(...ids), fc.constantFrom('', ...ids))
      .map(([id, old]) => `lot ${id} Iris${old && `, replaces ${old}`}`);
    const changes = fc.array(fc.tuple(fc.nat(5), line), { maxLength: 6 });
    fc.assert(fc.property(fc.array(line, { minLength: 4, maxLength: 6 }), changes, (lines, edits) => {
      const journal = new Journal();
      journal.set('j.germ', lines.join('\n'));
      const book = new ProblemBook(journal);
      book.update(now);
      const texts = [...lines];
      for (const [place, text] of edits) {
        texts[place % texts.length] = text;
        journal.set('j.germ', texts.join('\n'));
        book.update(now);
      }
      const anew = new Journal();
      anew.set('j.germ', texts.join('\n'));
      const fresh = new ProblemBook(anew);
      fresh.update(now);
      const said = (each: ProblemBook) => each.of('j.germ').map(found => `${found.line.number} ${found.problem.message}`);
      expect(said(book)).toEqual(said(fresh));
    }));
  });

  test('is found in a long row of lots too', () => {
    const rows = Array.from({ length: 300 }, (_, n) => `lot L${n} Iris, replaces L${(n + 1) % 300}`);
    const journal = journalIn({ 'j.germ': rows.join('\n') });
    expect(circleFrom(journal, 'L0', 'L1')?.length).toBe(300);
    const [problem] = problemsIn('replaces-itself', rows.join('\n'));
    expect(problem!.message).toBe('L0 replaces L1, which replaces L2, which replaces L3, which replaces L4, which replaces …, which replaces L0. '
      + 'Correct the id, or take out “replaces L1”.');
  });
});
