import { describe, expect, test } from 'vitest';
import { hoverAt } from '../../../server/src/features/hover/hover.ts';
import { readFixture } from '../../support/fixture.ts';
import { at, cursorOf, hover, journalOf } from '../journals.ts';

const lot = `
  lot V-1 Veratrum *nigrum*, 60 seeds
  split V-1, A 24 seeds
  sow V-1/A 2026-01-11`;

function pictureIn(line: string, mark: string) {
  const fixture = readFixture(`${lot}\n  ${line}\n  ${mark} here`);
  const { file, position } = cursorOf(fixture, 'here');
  return hoverAt(journalOf(fixture), file, position, at('2026-03-01'))?.picture;
}

describe('hover on the path of a photo', () => {
  test('says in words what the picture is of, escaped', () => {
    expect(hover(`${lot}
  photo V-1/A 2026-01-25, photos/tray 4.jpg
                          ^^^^^^^^^^^^^^^^^ here`, '2026-03-01')).toBe(
      String.raw`Photo of V-1/A, Veratrum \*nigrum\*, 2026-01-25, day 14`);
  });

  test('has the path with slashes, whatever the machine that wrote it had', () => {
    expect(pictureIn('photo V-1/A 2026-01-25, photos\\tray.jpg', '                        ^^^^^^^^^^^^^^^')).toEqual({
      path: 'photos/tray.jpg', caption: 'Photo of V-1/A, Veratrum *nigrum*, 2026-01-25, day 14',
    });
  });

  test('counts no day before the sowing', () => {
    expect(pictureIn('photo V-1/A 2026-01-02, tray.jpg', '                        ^^^^^^^^')?.caption).toBe(
      'Photo of V-1/A, Veratrum *nigrum*, 2026-01-02');
  });

  test.each([
    '/etc/tray.jpg', '\\\\host\\a\\tray.jpg', '//host/tray.jpg', 'https://x.org/tray.jpg', 'file:///tray.jpg', 'C:\\tray.jpg',
  ])('has no path for %s, which leads out of any folder', path => {
    const picture = pictureIn(`photo V-1/A 2026-01-25, ${path}`, `${' '.repeat(24)}${'^'.repeat(path.length)}`);
    expect(picture).toMatchObject({ path: undefined });
  });

  test('is there over the path alone', () => {
    expect(pictureIn('photo V-1/A 2026-01-25, tray.jpg', '      ^^^')).toBeUndefined();
  });
});
