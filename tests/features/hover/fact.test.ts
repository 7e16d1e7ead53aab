import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

describe('hover on a fact', () => {
  test.each([
    ['18 C', '18 °C = 64.4 °F'],
    ['39 F', '39 °F = 3.9 °C'],
    ['20/10 C', '20 °C by day, 10 °C by night = 68 and 50 °F'],
    ['-40 C', '-40 °C = -40 °F'],
  ])('temperature %s gives it in the other unit', (written, text) => {
    expect(hover(`sow VER-24 2026-01-11, ${written}\n${' '.repeat(23)}${'^'.repeat(written.length)} here`, '2026-03-02')).toBe(text);
  });

  test('length of a stage that is over tells when it ended', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum, 20 seeds
      chill VER-24 2026-01-11, 4 C, 90 days
                                    ^^^^^^^ here
      warm VER-24 2026-02-11, 18 C
    `, '2026-03-02')).toBe('**VER-24** · 4 C for 31 of 90 days, since 2026-01-11, ended 2026-02-11');
  });

  test('length of a stage that is planned ahead, or to be ended ahead, tells of no end that has been', () => {
    expect(hover(`
      lot VER-24 Veratrum nigrum, 20 seeds
      warm VER-24 2026-02-01, 20 C, 4 weeks
                                    ^^^^^^^ here
      chill VER-24 2026-03-01, 4 C, 8 weeks
    `, '2026-02-20')).toBe('**VER-24** · 20 C for 19 of 28 days, since 2026-02-01, to end 2026-03-01 (in 9 days)');
    expect(hover(`
      lot VER-24 Veratrum nigrum, 20 seeds
      chill VER-24 2026-03-01, 4 C, 8 weeks
                                    ^^^^^^^ here
    `, '2026-02-20')).toBe('**VER-24** · 4 C 8 weeks to come, from 2026-03-01, to end 2026-04-26 (in 9 weeks)');
  });

  test('length in a limit says nothing more', () => {
    expect(hover(`
      limit soak, 12 h
                  ^^^^ here
    `, '2026-03-02')).toBeUndefined();
  });
});
