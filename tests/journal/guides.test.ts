import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { genusOf } from '../../server/src/journal/guides.ts';
import { Journal } from '../../server/src/journal/journal.ts';

function journalOf(files: Readonly<Record<string, string>>): Journal {
  const journal = new Journal();
  for (const [name, text] of Object.entries(files)) journal.set(name, text);
  return journal;
}

describe('the guides of a plant', () => {
  const { guides } = journalOf({
    'guides.germ': [
      'guide Penstemon, chill 8 weeks', 'guide Penstemon digitalis, GA3 1000 ppm, 24 h, source "a list"', 'guide Penstemon strictus, GA3 720 uM',
      'guide Stachys germanica ssp. bithynica, GA3 250 ppm', 'guide Pen, GA3 1 ppm', 'guide Primula × kewensis, GA3 10 ppm', 'guide Heucherella, GA3 5 ppm',
    ].join('\n'),
  });
  const of = (plant: string | undefined) => guides.of(plant).map(guide => guide.plant);

  test.each([
    ['Penstemon digitalis', ['Penstemon digitalis', 'Penstemon']],
    ['penstemon  DIGITALIS Husker Red', ['Penstemon digitalis', 'Penstemon']],
    ['Penstemon', ['Penstemon']],
    ['Penstemon dig', ['Penstemon']],
    ['Stachys germanica subsp. bithynica', ['Stachys germanica ssp. bithynica']],
    ['Stachys germanica', []],
    ['Primula × kewensis', ['Primula × kewensis']],
    ['× Heucherella alba', ['Heucherella']],
    ['x Heucherella alba', ['Heucherella']],
    ['Penstemonia digitalis', []],
    ['', []],
  ])('of %s are those that name it or its genus, the fullest name first', (plant, found) => {
    expect(of(plant)).toEqual(found);
  });

  test('are none for a lot without a name', () => {
    expect(of(undefined)).toEqual([]);
  });

  test('tell the soak, the stages and the source', () => {
    expect(guides.of('Penstemon digitalis')).toMatchObject([
      { soak: { value: 24, unit: 'h' }, stages: [], source: 'a list' }, { soak: undefined, stages: [{ stage: 'chill' }], source: undefined },
    ]);
  });

  test('are found by the genus, in any case', () => {
    expect(genusOf('  Veratrum  nigrum')).toBe('veratrum');
  });
});

describe('a guide that changes', () => {
  test('is held at once against the soaks of its plants, in other files too, and of no others', () => {
    const journal = journalOf({
      'guides.germ': 'guide Veratrum, GA3 500 ppm\nguide Primula, GA3 100 ppm',
      'a.germ': 'lot VER-24 Veratrum nigrum, 60 seeds\nsoak VER-24 2026-01-10 19:00, GA3 400 ppm, 24 h\nsow VER-24 2026-01-12',
    });
    const book = new ProblemBook(journal);
    const codes = () => {
      book.update({ day: 20_500, minutes: undefined });
      return book.of('a.germ').map(({ problem }) => problem.code).filter(code => code === 'beyond-guides');
    };
    expect(codes()).toEqual([]);
    journal.edit('guides.germ', { start: { line: 0, character: 20 }, end: { line: 0, character: 21 } }, '3');
    expect(codes()).toEqual(['beyond-guides']);
    const touched = journal.follow();
    touched();
    journal.edit('guides.germ', { start: { line: 1, character: 19 }, end: { line: 1, character: 20 } }, '9');
    expect([...touched().ids]).toEqual([]);
    journal.remove('guides.germ');
    expect(codes()).toEqual([]);
  });
});
