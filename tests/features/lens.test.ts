import { describe, expect, test } from 'vitest';
import { lensesOf, lensTitle } from '../../server/src/features/lens.ts';
import { variantsOf } from '../support/fixture.ts';
import { at, journalOf } from './journals.ts';

/** Each lens as its line, counted from 1, and its title. */
function lenses(source: string, now = '2026-01-26'): string[] {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => {
    const journal = journalOf(fixture);
    return fixture.files.flatMap(({ name }) => lensesOf(journal, name))
      .map(lens => `${lens.place.line + 1}: ${lensTitle(journal, lens, at(now))}`);
  });
  for (const other of others) expect(other).toEqual(first);
  return first!;
}

const sown = `
  lot V-1 Veratrum nigrum, 60 seeds
  split V-1, A 24 seeds, B 24 seeds
  sow V-1/A 2026-01-11
  sow V-1/B 2026-01-11`;

describe('above a lot', () => {
  test('stand its batches with their shares, and what is due', () => {
    expect(lenses(`${sown}\n  count V-1/A 2026-01-18, 3\n  count V-1/B 2026-01-18, 0`)).toEqual([
      '1: compare', '1: 2 of 2 open · count A, B due yesterday', '1: A 3 of 24 = 12.5 % · B 0 of 24 = 0 %',
    ]);
  });

  test('stand the treatments by name, and the verdict', () => {
    const treated = `${sown}\n  soak V-1/A 2026-01-10, GA3 500 ppm, 24 h\n  soak V-1/B 2026-01-10, water, 24 h`;
    expect(lenses(`${treated}\n  count V-1/A 2026-01-25, 20\n  count V-1/B 2026-01-25, 2`)).toEqual([
      '1: compare',
      '1: 2 of 2 open · worth repeating so far',
      '1: GA3 500 ppm 24 h (A) 20 of 24 = 83.3 % · water 24 h (B) 2 of 24 = 8.3 %',
    ]);
  });

  test('stand the verdicts of several treatments with their batches', () => {
    const of = (part: string, liquid: string, n: number) => [
      `soak V-1/${part} 2026-01-10, ${liquid}, 24 h`, `sow V-1/${part} 2026-01-11`, `count V-1/${part} 2026-01-25, ${n}`];
    const text = ['lot V-1 Iris, 48 seeds', 'split V-1, A 12 seeds, B 12 seeds, C 12 seeds, D 12 seeds',
      ...of('A', 'GA3 1000 ppm', 6), ...of('B', 'GA3 500 ppm', 6), ...of('C', 'KNO3 0.2 %', 6), ...of('D', 'water', 6)].join('\n');
    expect(lenses(text).slice(1)).toEqual([
      '1: 4 of 4 open · A cannot tell yet · B cannot tell yet · 1 more verdict',
      '1: GA3 1000 ppm 24 h (A) 6 of 12 = 50 % · GA3 500 ppm 24 h (B) 6 of 12 = 50 % · KNO3 0.2 % 24 h (C) 6 of 12 = 50 % · '
      + 'water 24 h (D) 6 of 12 = 50 %',
    ]);
  });

  test('stands no comparison until two batches are counted', () => {
    expect(lenses(`${sown}\n  count V-1/A 2026-01-18, 3`)).toEqual([
      '1: 2 of 2 open · count B due 8 days ago, 1 more', '1: A 3 of 24 = 12.5 %',
    ]);
  });

  test('stands the way to the advice as long as nothing was done to the seed', () => {
    expect(lenses('lot V-1 Iris, 60 seeds\nnote V-1 2026-01-01, hard')).toEqual(['1: what to do with it']);
  });

  test('stands that all is closed', () => {
    expect(lenses(`${sown}\n  count V-1/A 2026-01-18, 3\n  discard V-1/A 2026-01-20, dry\n  discard V-1/B 2026-01-20, dry`)).toEqual([
      '1: all closed', '1: A 3 of 24 = 12.5 %',
    ]);
  });

  test('is a lot without batches called open or closed; seed that stayed of a divided one is called the rest', () => {
    expect(lenses('lot V-1 Iris, 60 seeds\nsow V-1 2026-01-20\ncount V-1 2026-01-25, 6')).toEqual(['1: open', '1: 6 of 60 = 10 %']);
    expect(lenses('lot V-1 Iris, 60 seeds\nsplit V-1, A 50 seeds\nsow V-1 2026-01-20\ncount V-1 2026-01-25, 1')).toEqual(['1: open', '1: rest 1 of 10 = 10 %']);
  });

  test('is a share without a known number only a number, and a mistake said', () => {
    expect(lenses('lot V-1 Iris\nsow V-1 2026-01-20\ncount V-1 2026-01-25, 6\ncount V-1 2026-01-26, 1 sprouted')).toEqual([
      '1: open · a record with an error is left out', '1: 6 germinated',
    ]);
  });

  test('stand four batches one by one, the others as a number', () => {
    const parts = ['A', 'B', 'C', 'D', 'E', 'F'];
    const text = ['lot V-1 Iris, 60 seeds', `split V-1, ${parts.map(part => `${part} 10 seeds`).join(', ')}`,
      ...parts.map(part => `sow V-1/${part} 2026-01-20`), ...parts.map(part => `count V-1/${part} 2026-01-25, 5`)].join('\n');
    expect(lenses(text)).toEqual([
      '1: compare', '1: 6 of 6 open', '1: A 5 of 10 = 50 % · B 5 of 10 = 50 % · C 5 of 10 = 50 % · D 5 of 10 = 50 % · 2 more',
    ]);
  });

  test('stand verdict and state within the first hundred signs, however many batches there are and whatever they are called', () => {
    const parts = Array.from({ length: 12 }, (_, i) => `dish-${i + 1}`);
    const agents = ['GA3 1000 ppm', 'GA3 500 ppm', 'KNO3 0.2 %', 'water'];
    const text = ['lot V-1 Iris, 480 seeds', `split V-1, ${parts.map(part => `${part} 40 seeds`).join(', ')}`,
      ...parts.flatMap((part, i) => [
        `soak V-1/${part} 2026-01-10, ${agents[i % 4]!}, 24 h`, `sow V-1/${part} 2026-01-11`, `count V-1/${part} 2026-01-25, ${i % 4 === 3 ? 1 : 30}`,
      ])].join('\n');
    const seen = lenses(text).slice(0, 2).map(title => title.slice(3)).join(' | ').slice(0, 100);
    expect(seen).toContain('compare | 12 of 12 open · dish-1, dish-5 and dish-9 worth repeating so far · ');
  });

  test('stands seed that was treated late by its batch: its count is of what came up before and after', () => {
    const late = `${sown}\n  count V-1/A 2026-01-18, 3\n  count V-1/B 2026-01-18, 3\n  soak V-1/A 2026-01-19 10:00, GA3 500 ppm, 24 h
      soak V-1/B 2026-01-19 10:00, water, 24 h\n  sow V-1/A 2026-01-20 11:00\n  sow V-1/B 2026-01-20 11:00
      count V-1/A 2026-01-26, 9\n  count V-1/B 2026-01-26, 1`.replaceAll('      soak', '  soak').replaceAll('      count', '  count');
    const all = lenses(late).join('\n');
    expect(all).toContain('A 12 of 24 = 50 %');
    expect(all).toContain('water 24 h (B) 4 of 24 = 16.7 %');
    expect(all).not.toContain('(A) 12 of 24');
  });

  test('stands a soak that is to end', () => {
    expect(lenses('lot V-1 Iris, 60 seeds\nsoak V-1 2026-01-26 07:00, water, 24 h', '2026-01-26 08:00')).toEqual(['1: open · lift due tomorrow']);
  });
});

test('the second definition of an id has no lens, and a lot that is gone no title', () => {
  const journal = journalOf({ files: [{ name: 'a.germ', text: 'lot V-1 Iris\nlot V-1 Iris\nsow V-1 2026-01-20\n' }], expected: [] });
  expect(lensesOf(journal, 'a.germ').map(({ place }) => place.line)).toEqual([0]);
  expect(lensTitle(journal, { lot: 'V-2', about: 'state' }, at('2026-01-26'))).toBeUndefined();
});
