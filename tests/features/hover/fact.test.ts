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

  test('length in a limit says nothing more', () => {
    expect(hover(`
      limit soak, 12 h
                  ^^^^ here
    `, '2026-03-02')).toBeUndefined();
  });
});
