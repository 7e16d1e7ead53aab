import { describe, expect, test } from 'vitest';
import { expectAllMarked, problemsIn } from './marked.ts';

const now = '2026-03-20';

describe('more counted than sown', () => {
  test('is marked where the sum first passes the seeds, and again where it grows', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 10 seeds, B 10 seeds
      day 2026-03-01
      sow VER-24/A, 10 seeds
      sow VER-24/B, 10 seeds
      day 2026-03-08
      count VER-24/A, 6, 2 rotted, 2 lost
      count VER-24/B, 6, 2 rotted, 3 lost
                                   ^^^^^^ count-exceeds-sown
      day 2026-03-15
      count VER-24/A, 0, 3 emerged
      count VER-24/B, 0, 3 emerged
      day 2026-03-16
      count VER-24/B, 1, 1 leggy
                      ^ count-exceeds-sown
    `, { now });
  });

  test('goes by dates, whatever the order of lines and files', () => {
    expectAllMarked(`
      --- a.germ
      count VER-24 2026-03-15, 5
                               ^ count-exceeds-sown
      count VER-24 2026-03-08, 6
      --- b.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-03-01, 10 seeds
    `, { now });
  });

  test('knows what later stages imply, and totals', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 10 seeds
      sow VER-24 2026-03-01
      count VER-24 2026-03-08, 6
      count VER-24 2026-03-09, =10 germinated
      count VER-24 2026-03-10, 11 leaf
                               ^^^^^^^ count-exceeds-sown
    `, { now });
  });

  test('is said of the seeds that stayed where none was sown, and not of a number that nobody wrote', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 20 seeds
      split VER-24, A 10 seeds
      chill VER-24/A 2026-03-01, 4 C
      count VER-24/A 2026-03-08, 11
                                 ^^ count-exceeds-sown
      lot VER-25 Veratrum nigrum
      sow VER-25 2026-03-01
      count VER-25 2026-03-08, 1100
    `, { now });
  });

  test('counts what germinated in the cold with what was sown after it', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 24 seeds
      chill VER-24 2026-01-01, 4 C, 60 days
      count VER-24 2026-03-01 09:00, 3
      sow VER-24 2026-03-01 10:00, 21 seeds
      count VER-24 2026-03-08, 21
      count VER-24 2026-03-15, 1
                               ^ count-exceeds-sown
    `, { now });
  });

  test('knows by then only what was sown by then', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-03-01, 10 seeds
      count VER-24 2026-03-08, 11
                               ^^ count-exceeds-sown
      sow VER-24 2026-03-09, 10 seeds
      count VER-24 2026-03-10, 9
    `, { now });
  });

  test('is not upset by seed that is given to others later', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-03-01
      count VER-24 2026-03-08, 20
      split VER-24 2026-03-09, A 20 seeds, B 20 seeds
      count VER-24/A 2026-03-15, 20
      count VER-24/B 2026-03-15, 21
                                 ^^ count-exceeds-sown
    `, { now });
  });

  test('shows the sum', () => {
    expect(problemsIn('count-exceeds-sown', 'lot V Veratrum, 60 seeds\nsow V 2026-03-01, 10 seeds\ncount V 2026-03-08, 9, 2 rotted')[0]?.message)
      .toBe('In V 9 germinated, 2 rotted and 0 lost make 11, more than the 10 sown. '
        + 'Correct a number. With “=” it is the total so far; without, it is new since the last count.');
  });

  const countsOf = (...counts: string[]) => {
    const lines = counts.map((count, n) => `count V 2026-03-0${n + 2}, ${count}`);
    return problemsIn('count-exceeds-sown', `lot V Veratrum, 60 seeds\nsow V 2026-03-01, 24 seeds\n${lines.join('\n')}`)[0]?.message;
  };

  test('shows what was added to what, and that it may be a total', () => {
    expect(countsOf('14', '1 rotted, 20')).toBe('In V 34 germinated, 1 rotted and 0 lost make 35, more than the 24 sown. '
      + '14 germinated before and 20 new make 34: if 20 is the total so far, write =20; if not, correct a number.');
  });

  test('offers no total that falls, or that is too many as well', () => {
    for (const last of ['13', '24, 1 rotted']) {
      expect(countsOf('14', last)).toMatch(new RegExp(`14 germinated before and ${last.split(',')[0]!} new make \\d+: correct a number\\.$`));
    }
  });
});
