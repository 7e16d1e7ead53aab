import { describe, expect, test } from 'vitest';
import { hoverAt } from '../../../server/src/features/hover/hover.ts';
import { readFixture } from '../../support/fixture.ts';
import { at, cursorOf, journalOf } from '../journals.ts';

/** Without the variants of `hover`: an emoji in a plant's name would make it another species. */
function blocks(source: string): string[] {
  const fixture = readFixture(source);
  const { file, position } = cursorOf(fixture, 'here');
  return hoverAt(journalOf(fixture), file, position, at('2026-06-01'))?.markdown.split('\n\n') ?? [];
}

describe('hover on a lot of a plant that the guides know', () => {
  const guides = `
      guide Penstemon digitalis, GA3 1000 ppm, source "HortScience 44(3):870"
        One cultivar.
        Abstract only.
      guide Penstemon, chill 8 weeks, GA3 500 ppm, 24 h
      guide Primula, GA3 10 ppm, source "another plant"`;

  test('shows what they say, the species before the genus, beside the grower’s own records', () => {
    const found = blocks(`
      --- guides.germ${guides}
      --- a.germ
      lot PEN-25 Penstemon digitalis, 60 seeds
          ^^^^^^ here
      split PEN-25, A 20 seeds, B 20 seeds
      soak PEN-25/A 2026-01-10 19:00, GA3 500 ppm, 24 h
      sow PEN-25/A 2026-01-11
      sow PEN-25/B 2026-01-11
      count PEN-25/A 2026-02-01, 12
      count PEN-25/B 2026-02-01, 3, 1 lost
      lot PEN-26 Penstemon  Digitalis, 20 seeds
      sow PEN-26 2026-01-11
      count PEN-26 2026-02-01, 6
      lot PEN-27 Penstemon strictus, 20 seeds
      sow PEN-27 2026-01-11
      count PEN-27 2026-02-01, 19
    `);
    const start = found.indexOf('**What the guides say**');
    expect(found.slice(start + 1)).toEqual([
      '- Penstemon digitalis: GA3 1000 ppm · HortScience 44(3):870 · One cultivar. Abstract only.\n' +
        '- Penstemon: chill 8 weeks, GA3 500 ppm, 24 h · no source given',
      '| Your own records | Germinated | From |\n| :-- | :-- | :-- |\n' +
        '| GA3 500 ppm 24 h | 12 of 20 = 60 % | 1 batch of 1 lot |\n' +
        '| untreated | 9 of 39 = 23.1 % | 2 batches of 2 lots |',
      'Germinated of the seed sown less lost, all lots of this name together.',
    ]);
  });

  test('counts a lot once, however many of its batches had the treatment', () => {
    const found = blocks(`
      --- guides.germ${guides}
      --- a.germ
      lot PEN-25 Penstemon digitalis, 60 seeds
          ^^^^^^ here
      split PEN-25, A 20 seeds, B 20 seeds
      sow PEN-25/A 2026-01-11
      sow PEN-25/B 2026-01-11
      count PEN-25/A 2026-02-01, 12
      count PEN-25/B 2026-02-01, 3
    `);
    expect(found.join('\n')).toContain('| untreated | 15 of 40 = 37.5 % | 2 batches of 1 lot |');
  });

  test('says when there is nothing of one’s own to set beside them', () => {
    expect(blocks(`
      --- guides.germ${guides}
      --- a.germ
      lot PEN-25 Penstemon, 60 seeds
          ^^^^^^ here
    `).slice(-2)).toEqual([
      '- Penstemon: chill 8 weeks, GA3 500 ppm, 24 h · no source given', 'Your own records: none counted yet.',
    ]);
  });

  test('stands over the plant’s name too, and tells of guides without treatment or strength', () => {
    const found = blocks(`
      guide Quercus, source "a handbook"
      guide Quercus, GA3, warm, source "a list"
      lot OAK-25 Quercus, 60 seeds
                 ^^^^^^^ here
    `);
    expect(found).toContain('- Quercus: no treatment · a handbook\n- Quercus: GA3, strength not given, warm · a list');
  });

  test('says nothing of guides where none holds, and cuts a long row and a long remark', () => {
    expect(blocks('guide Primula, GA3 10 ppm\nlot X Primulina, 2 seeds\n    ^ here').join()).not.toContain('guides');
    const many = Array.from({ length: 9 }, () => `guide Primula, GA3 10 ppm\n  ${'word '.repeat(90)}`).join('\n');
    const list = blocks(`${many}\nlot X Primula, 2 seeds\n    ^ here`).find(block => block.startsWith('- Primula'))!.split('\n');
    expect(list).toHaveLength(7);
    expect(list.at(-1)).toBe('- … and 3 more.');
    expect(list[0]!.length).toBeLessThan(360);
    expect(list[0]!.endsWith('word …')).toBe(true);
    const wordless = blocks(`guide Primula, GA3 10 ppm\n  ${'w'.repeat(400)}\nlot X Primula, 2 seeds\n    ^ here`);
    expect(wordless.find(block => block.startsWith('- Primula'))).toMatch(/ w{300} …$/);
  });
});
