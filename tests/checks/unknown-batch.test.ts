import { describe, expect, test } from 'vitest';
import { expectAllMarked, problemsIn } from './marked.ts';

describe('a batch that was never split off', () => {
  test('is marked by its whole path, nested ones and remarks too', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds, B 24 seeds
      day 2026-01-10
      sow VER-24/A, 24 seeds
      sow VER-24/C, 24 seeds
          ^^^^^^^^ unknown-batch
      note VER-24/A/1, nothing
           ^^^^^^^^^^ unknown-batch
      split VER-24/D, 1 12 seeds
            ^^^^^^^^ unknown-batch
    `, { now: '2026-01-20' });
  });

  test('is known wherever the split stands, whatever its date', () => {
    expectAllMarked(`
      --- a.germ
      sow VER-24/A 2026-01-10, 24 seeds
      sow VER-24/B/1 2026-01-10, 12 seeds
      --- b.germ
      split VER-24/B 2026-01-10, 1 12 seeds, 2 12 seeds
      split VER-24 2026-01-09, A 24 seeds, B 24 seeds
      lot VER-24 Veratrum nigrum, 60 seeds
    `, { now: '2026-01-20' });
  });

  test('is not said while the split that may name it cannot be read in full', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds, B 2O seeds
                                  ^^ bad-value
      sow VER-24/A 2026-01-10, 24 seeds
      sow VER-24/B 2026-01-10, 20 seeds
    `, { now: '2026-01-20' });
  });

  const suggestion = (source: string) => problemsIn('unknown-batch', source).map(({ message, fixes }) =>
    [message.replace(/^No “split” gives out a batch “\S+”\. /, ''), ...fixes.map(({ text }) => text)]);

  test('is taken for another only where the name is long enough to hold a slip, or differs in case alone', () => {
    const lot = 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 24 seeds, north 24 seeds\n';
    expect(suggestion(`${lot}count VER-24/B 2026-01-10, 0`)).toEqual([['VER-24 was split into VER-24/A and VER-24/north.']]);
    expect(suggestion(`${lot}count VER-24/a 2026-01-10, 0`)).toEqual([['Did you mean “VER-24/A”?', 'VER-24/A']]);
    expect(suggestion(`${lot}count VER-24/norht 2026-01-10, 0`)).toEqual([['Did you mean “VER-24/north”?', 'VER-24/north']]);
  });

  test('is said to need a split where there was none', () => {
    expect(suggestion('lot V Veratrum\ncount V/A 2026-01-10, 0')).toEqual([['Write how V was split, such as: split V, A 24 seeds.']]);
  });

  test('is one mistake in each file, at its first use, which says how many more records use it', () => {
    const source = `
      lot VER-24 Veratrum nigrum, 60 seeds
      day 2026-01-10
      sow VER-24/A, 24 seeds
          ^^^^^^^^ unknown-batch
      sow VER-24/B/1, 12 seeds
          ^^^^^^^^ unknown-batch
      count VER-24/A 2026-01-17, 1
      count VER-24/A 2026-01-24, 1
      count VER-24/B/1 2026-01-24, 1
    `;
    expectAllMarked(source, { now: '2026-01-24' });
    expect(problemsIn('unknown-batch', source).map(({ message }) => message)).toEqual([
      'No “split” gives out a batch “VER-24/A”; 2 more records in this file use it. Write how VER-24 was split, such as: split VER-24, A 24 seeds.',
      'No “split” gives out a batch “VER-24/B”; one more record in this file uses it. Write how VER-24 was split, such as: split VER-24, B 24 seeds.',
    ]);
  });

  test('says of 2476 records what one missing split is', () => {
    const counts = Array.from({ length: 2476 }, (_, n) => `count V/${'ABCD'.charAt(n % 4)} 2026-01-10, 0`);
    const problems = problemsIn('unknown-batch', ['lot V Veratrum', ...counts].join('\n'));
    expect(problems.map(({ message }) => /; (\d+) more records/.exec(message)?.[1])).toEqual(['618', '618', '618', '618']);
  });
});
