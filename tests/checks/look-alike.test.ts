import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOf } from '../../server/src/model/day.ts';
import { expectMarked, problemsIn } from './marked.ts';

// Cyrillic letters are written as such below; where a row looks like another one, that is the point.
const codes = ['look-alike'] as const;

describe('a name that looks like another one', () => {
  test('is marked where it is not written in the usual letters: an id, a batch, a stock, in each file once', () => {
    expectMarked(codes, `
      --- a.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds, B 24 seeds
      sow VЕR-24/A 2026-01-10
          ^^^^^^ look-alike
      count VЕR-24/A 2026-01-17, 0
      count VER-24/В 2026-01-17, 0
                   ^ look-alike
      --- b.germ
      count VЕR-24/B 2026-01-24, 0
            ^^^^^^ look-alike
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      stock М1 2026-01-09, GA3 20 mg, 20 mL
            ^^ look-alike
      dilute M1 2026-01-09, from G1 1 mL, to 2 mL
      soak VER-24/B 2026-01-10, М1 2 mL, 24 h
    `);
  });

  test('is marked in a split, a plant, a guide and a place', () => {
    expectMarked(codes, `
      lot PRI-24 Primula vulgaris, 60 seeds, at bag A
      lot PRI-25 Primula vulgarіs, 60 seeds, at bag А
                 ^^^^^^^^^^^^^^^^ look-alike
                                                ^^^^^ look-alike
      guide Рrimula, GA3 500 ppm, 24 h
            ^^^^^^^ look-alike
      split PRI-24, A 10 seeds, А 10 seeds
                                ^ look-alike
    `);
  });

  test('is marked in one of several guides', () => {
    expectMarked(codes, `
      guide Iris, GA3 500 ppm, 24 h
      guide Рrimula, GA3 500 ppm, 24 h
            ^^^^^^^ look-alike
      guide , GA3 500 ppm, source "Книга"
    `);
  });

  test('may have an accent of its own, or a sign that nobody can see', () => {
    const source = (place: string) => `lot A Iris, at cafe\u0301\nlot B Iris, at ${place}`;
    expect(problemsIn('look-alike', source('caf\u00e9'))).toMatchObject([{
      start: 15, end: 20,
      message: '“cafe\u0301” looks like “caf\u00e9” but is another name, because its accents are characters of their own. Write it in the same way everywhere: what you cannot see, you cannot find.',
      fixes: [{ title: 'Write it with the usual characters', text: 'caf\u00e9' }],
    }]);
    expect(problemsIn('look-alike', source('cafe\u0301'))).toEqual([]);
    expect(problemsIn('look-alike', 'lot A Iris, at shelf\nlot B Iris, at sh\u200belf')).toMatchObject([{
      message: expect.stringMatching(/^“sh\ufffdelf” looks like “shelf” but is another name, because it has an invisible character in it\. /) as string,
      fixes: [{ text: 'shelf' }],
    }]);
  });

  test('says which alphabet, which letter, how often, and where the other one is', () => {
    const [problem] = problemsIn('look-alike', 'lot KAM Campanula\nnote ΚAM 2026-01-02, dry\nnote ΚAM 2026-01-03, wet');
    expect(problem).toMatchObject({
      message: '“ΚAM” looks like “KAM” but is another name, because its “Κ” is a Greek letter; one more record in this file uses it. Write it in the same way everywhere: what you cannot see, you cannot find.',
      fixes: [{ title: 'Write it in Latin letters', start: 5, end: 8, text: 'KAM' }],
    });
  });
});

describe('a name in two alphabets', () => {
  test('is marked even where nothing looks like it', () => {
    expectMarked(codes, `
      lot VЕR-24 Veratrum nigrum, 60 seeds
          ^^^^^^ look-alike
    `);
    expect(problemsIn('look-alike', 'lot VЕR-24 Veratrum nigrum')[0]?.message).toMatch(/^“VЕR-24” mixes two alphabets: its “Е” is a Cyrillic letter\. /);
  });

  test('is none where other letters show which alphabet is meant', () => {
    expectMarked(codes, `
      lot РОЗА-24 Rosa canina – Роза собачья, 60 seeds, at полка 3, from Мария
      lot СОРТ Роса, 60 seeds, at β
      lot ÉTÉ Été, 60 seeds, at Übertopf 3 °C 🌱
      lot ROS Rosa (роса), 60 seeds, at А–B
    `);
  });
});

test('goes when the name that it looks like goes, comes when that comes, and again in a second file', () => {
  const journal = new Journal();
  journal.set('a.germ', 'lot А Iris, 60 seeds\n');
  const book = new ProblemBook(journal);
  const now = { day: dayOf(2026, 6, 1)!, minutes: undefined };
  const codesIn = (file: string) => {
    book.update(now);
    return book.of(file).map(({ problem }) => problem.code).filter(code => code === 'look-alike').length;
  };
  expect(codesIn('a.germ')).toBe(0);
  journal.set('b.germ', 'lot A Iris, 60 seeds\n');
  expect(codesIn('a.germ')).toBe(1);
  journal.set('c.germ', 'guide Рrimula, GA3 500 ppm\n');
  expect(codesIn('c.germ')).toBe(1);
  journal.remove('b.germ');
  expect(codesIn('a.germ')).toBe(0);
  expect(codesIn('c.germ')).toBe(1);
  journal.remove('c.germ');
  expect(codesIn('c.germ')).toBe(0);
});
