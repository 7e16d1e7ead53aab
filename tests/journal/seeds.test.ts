import { describe, expect, test } from 'vitest';
import { denominator } from '../../server/src/journal/life.ts';
import { batchOf } from './helpers.ts';

const lot = 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 24 seeds\n';
/** Seeds sown and tested, and what percentages are of. */
function numbers(source: string, path = 'VER-24/A') {
  const batch = batchOf(lot + source.trim().replace(/^ +/gm, ''), path);
  return { sown: batch.sown, tested: batch.tested, of: denominator(batch) };
}

describe('the seeds that percentages are of', () => {
  test('are those sown, less those lost; without a number all that is left', () => {
    expect(numbers('sow VER-24/A 2026-01-10, 20 seeds\ncount VER-24/A 2026-01-20, 9, 2 rotted, 3 lost')).toEqual({ sown: 20, tested: 20, of: 17 });
    expect(numbers('sow VER-24/A 2026-01-10')).toEqual({ sown: 24, tested: 24, of: 24 });
    expect(numbers('sow VER-24 2026-01-10', 'VER-24')).toEqual({ sown: 36, tested: 36, of: 36 });
  });

  test('are known where it is known of every seed what became of it', () => {
    expect(numbers('sow VER-24/A 2026-01-10\ncount VER-24/A 2026-01-20, 20, 3 rotted, 1 lost').of).toBe(23);
  });

  test('are those that stayed where none was sown', () => {
    expect(numbers('chill VER-24/A 2026-01-10, 4 C\ncount VER-24/A 2026-01-20, 9, 3 lost')).toEqual({ sown: undefined, tested: 24, of: 21 });
    expect(numbers('# nothing', 'VER-24')).toEqual({ sown: undefined, tested: 36, of: 36 });
  });

  test('grow with a second portion, by what is left where no number is written', () => {
    expect(numbers('sow VER-24/A 2026-01-10, 12 seeds\nsow VER-24/A 2026-01-17, 6 seeds')).toEqual({ sown: 18, tested: 18, of: 18 });
    expect(numbers('sow VER-24/A 2026-01-10, 12 seeds\ncount VER-24/A 2026-01-16, 5\nsow VER-24/A 2026-01-17').sown).toBe(24);
  });

  test('do not grow when the same seed is sown again after another treatment', () => {
    for (const treatment of ['soak VER-24/A 2026-03-10, water, 12 h', 'scarify VER-24/A 2026-03-10, nicked', 'chill VER-24/A 2026-03-10, 4 C']) {
      expect(numbers(`sow VER-24/A 2026-01-10, 24 seeds\n${treatment}\nsow VER-24/A 2026-03-11, 24 seeds`)).toEqual({ sown: 24, tested: 24, of: 24 });
      expect(numbers(`sow VER-24/A 2026-01-10\n${treatment}\nsow VER-24/A 2026-03-11`).sown).toBe(24);
    }
    expect(numbers('sow VER-24/A 2026-01-10, 12 seeds\nsoak VER-24/A 2026-01-11, water, 12 h\nsow VER-24/A 2026-01-12, 12 seeds').sown).toBe(24);
  });

  test('have those with them that germinated, rotted or were lost before they were sown', () => {
    const before = 'chill VER-24/A 2026-01-10, 4 C\ncount VER-24/A 2026-02-10, 3, 2 rotted, 1 lost\n';
    expect(numbers(`${before}sow VER-24/A 2026-03-10, 18 seeds`)).toEqual({ sown: 18, tested: 24, of: 23 });
    // The three that had germinated were sown with the others.
    expect(numbers(`${before}sow VER-24/A 2026-03-10, 21 seeds`)).toEqual({ sown: 21, tested: 24, of: 23 });
    expect(numbers(`${before}sow VER-24/A 2026-03-10`)).toEqual({ sown: 21, tested: 24, of: 23 });
    expect(numbers(`${before}sow VER-24/A 2026-03-10, 10 seeds`)).toEqual({ sown: 10, tested: 16, of: 15 });
    // What had rotted or been lost is not there to be sown.
    expect(numbers('count VER-24/A 2026-02-10, 2 rotted, 1 lost\nsow VER-24/A 2026-03-10')).toEqual({ sown: 21, tested: 24, of: 23 });
    expect(numbers('count VER-24/A 2026-02-10, 2 rotted\nsow VER-24/A 2026-03-10, 22 seeds')).toEqual({ sown: 22, tested: 24, of: 24 });
  });

  test('are not known where the lot says no number and none was sown by number', () => {
    const of = (source: string) => denominator(batchOf(`lot VER-24 Veratrum nigrum\n${source}`));
    expect(of('sow VER-24 2026-01-10')).toBe(undefined);
    expect(of('sow VER-24 2026-01-10, 20 seeds')).toBe(20);
    expect(of('sow VER-24 2026-01-10, 20 seeds\nsow VER-24 2026-01-11')).toBe(undefined);
    expect(of('sow VER-24 2026-01-10\nsow VER-24 2026-01-11, 20 seeds')).toBe(undefined);
    expect(of('count VER-24 2026-01-10, 3')).toBe(undefined);
    // Whether the three were sown with the twenty is not written, and no number of all seeds tells.
    expect(of('chill VER-24 2026-01-09, 4 C\ncount VER-24 2026-01-10, 3\nsow VER-24 2026-01-11, 20 seeds')).toBe(undefined);
    const first = 'sow VER-24 2026-01-10, 20 seeds\nsoak VER-24 2026-03-10, water, 1 h\n';
    const again = (seeds: number) => `${first}sow VER-24 2026-03-11, ${seeds} seeds`;
    expect(of(again(15))).toBe(20);
    expect(of(again(20))).toBe(20);
    // More than were sown before cannot be the same seed once more.
    expect(of(again(21))).toBe(41);
    // What rotted before the sowing was there to be tested, as where the lot says its number.
    expect(of('chill VER-24 2026-01-09, 4 C\ncount VER-24 2026-01-10, 2 rotted\nsow VER-24 2026-01-11, 20 seeds')).toBe(22);
  });

  test('are not known where a number cannot be read', () => {
    const none = { sown: undefined, tested: undefined, of: undefined };
    expect(numbers('sow VER-24/A 2026-01-10, 2O seeds')).toEqual(none);
    expect(numbers('sow VER-24/A 2026-01-10, 2O seeds\nsplit VER-24/A 2026-01-11, 1 5 seeds')).toEqual(none);
  });

  test('are not known where more was counted or given out than there is', () => {
    expect(numbers('sow VER-24/A 2026-01-10, 20 seeds\ncount VER-24/A 2026-01-20, 19, 2 rotted').of).toBe(undefined);
    expect(numbers('split VER-24 2026-01-10, C 37 seeds', 'VER-24')).toEqual({ sown: undefined, tested: undefined, of: undefined });
    // Of 24 six were accounted for before the sowing and eight came up after it: these stay, whatever is given out.
    const before = 'chill VER-24/A 2026-01-10, 4 C\ncount VER-24/A 2026-02-10, 3, 2 rotted, 1 lost\nsow VER-24/A 2026-03-10, 18 seeds\n';
    expect(numbers(`${before}count VER-24/A 2026-03-20, 8\nsplit VER-24/A 2026-03-21, 1 12 seeds`).sown).toBe(8);
  });
});

describe('seed that is given out', () => {
  test('is seed that was not sown, as long as there is enough', () => {
    const source = 'sow VER-24/A 2026-01-10, 12 seeds\nsplit VER-24/A 2026-01-20, 1 12 seeds';
    expect(numbers(source)).toEqual({ sown: 12, tested: 12, of: 12 });
    expect(batchOf(lot + source, 'VER-24/A/1').sowing).toBe(undefined);
  });

  test('is sown seed where nothing else is left, or all was sown', () => {
    const source = 'sow VER-24/A 2026-01-10\nsplit VER-24/A 2026-01-20, 1 10 seeds';
    expect(numbers(source)).toEqual({ sown: 14, tested: 14, of: 14 });
    expect(numbers(source, 'VER-24/A/1')).toEqual({ sown: 10, tested: 10, of: 10 });
  });

  test('leaves what has germinated with the parent, of which no share is known then', () => {
    const source = 'sow VER-24/A 2026-01-10\ncount VER-24/A 2026-01-20, 8, 2 rotted\nsplit VER-24/A 2026-01-21, 1 10 seeds';
    expect(numbers(source)).toEqual({ sown: 14, tested: 14, of: undefined });
    expect(batchOf(lot + source, 'VER-24/A').thinned).toBe(true);
    expect(numbers(source, 'VER-24/A/1').of).toBe(10);
  });

  test('leaves what has rotted with the parent too', () => {
    const source = 'sow VER-24/A 2026-01-10\ncount VER-24/A 2026-01-20, 2 rotted\nsplit VER-24/A 2026-01-21, 1 10 seeds';
    expect(batchOf(lot + source, 'VER-24/A').thinned).toBe(true);
    expect(numbers(source.replace('rotted', 'lost'))).toMatchObject({ tested: 14, of: 12 });
  });

  test('takes nothing from what is tested before anything has come up, or where it was never sown', () => {
    expect(batchOf(`${lot}sow VER-24/A 2026-01-10\ncount VER-24/A 2026-01-20, 0\nsplit VER-24/A 2026-01-21, 1 9 seeds`, 'VER-24/A').thinned).toBe(false);
    expect(batchOf(`${lot}sow VER-24 2026-01-10, 6 seeds\ncount VER-24 2026-01-20, 5\nsplit VER-24 2026-01-21, B 9 seeds`).thinned).toBe(false);
  });
});

describe('a count', () => {
  test('is about the seeds that were tested by then', () => {
    const { events } = batchOf(`${lot}sow VER-24/A 2026-01-10, 12 seeds\ncount VER-24/A 2026-01-12, 1\nsow VER-24/A 2026-01-17\ncount VER-24/A 2026-01-19, 1`, 'VER-24/A');
    expect(events.flatMap(event => (event.type === 'count' ? [event.tested] : []))).toEqual([12, 24]);
  });
});
