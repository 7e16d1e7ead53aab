import { describe, expect, test } from 'vitest';
import { photoCaption, photoDay, photosOf } from '../../server/src/features/photos.ts';
import { variantsOf } from '../support/fixture.ts';
import { journalOf } from './journals.ts';

/** Of V-1: each as its batch, its name, its path, and its day. */
function photos(source: string): string[] {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => {
    const journal = journalOf(fixture);
    return [...photosOf(journal, journal.lot('V-1')!)].flatMap(([id, own]) => own.map(({ entry, path, name }) =>
      [id, name, path ?? 'no path', photoDay(entry, journal) ?? 'no date'].join(' | ')));
  });
  for (const other of others) expect(other).toEqual(first);
  return first!;
}

const sown = `
  lot V-1 Veratrum nigrum, 60 seeds
  lot V-10 Iris alba, 5 seeds
  split V-1, A 24 seeds, B 24 seeds
  sow V-1/A 2026-01-11`;

describe('photos of a lot', () => {
  test('stand batch by batch in the order of time, those without a date last', () => {
    expect(photos(`${sown}
  photo V-1/A, undated.jpg
  photo V-1/A 2026-02-08, tray/late.jpg
  photo V-10 2026-01-11, of-another-lot.jpg
  photo V-1/B 2026-01-20, b.jpg
  day 2026-01-12
  photo V-1/A 18:00, evening.jpg
  photo V-1/A 07:00, morning.jpg
  photo V-1 2025-12-01, packet.jpg`)).toEqual([
      'V-1 | packet.jpg | packet.jpg | 2025-12-01',
      'V-1/A | morning.jpg | morning.jpg | 2026-01-12, day 1',
      'V-1/A | evening.jpg | evening.jpg | 2026-01-12, day 1',
      'V-1/A | late.jpg | tray/late.jpg | 2026-02-08, day 28',
      'V-1/A | undated.jpg | undated.jpg | no date',
      'V-1/B | b.jpg | b.jpg | 2026-01-20',
    ]);
  });

  test('have a path only from the file of the record; whatever is written has a name', () => {
    const paths = ['photos\\a.jpg', '../../etc/a.jpg', '/etc/a.jpg', 'C:\\a.jpg', 'https://host/a.jpg', 'file:///a.jpg', '//host/a.jpg', '/'];
    expect(photos(`${sown}\n${paths.map(path => `  photo V-1 2026-01-11, ${path}`).join('\n')}`)).toEqual([
      'V-1 | a.jpg | photos/a.jpg | 2026-01-11', 'V-1 | a.jpg | ../../etc/a.jpg | 2026-01-11',
      ...Array.from({ length: 5 }, () => 'V-1 | a.jpg | no path | 2026-01-11'), 'V-1 | / | no path | 2026-01-11',
    ]);
  });

  test('are told with the plant and the day', () => {
    const journal = journalOf({ files: [{ name: 'a.germ', text: `${sown.replaceAll(/^  /gm, '')}\nphoto V-1/A 2026-01-21, a.jpg\n` }], expected: [] });
    const [photo] = photosOf(journal, journal.lot('V-1')!).get('V-1/A')!;
    expect(photoCaption(photo!.entry, journal)).toBe('Photo of V-1/A, Veratrum nigrum, 2026-01-21, day 10');
  });
});
