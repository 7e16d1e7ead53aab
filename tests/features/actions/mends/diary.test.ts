import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../../../server/src/checks/problem-book.ts';
import { quickFixes } from '../../../../server/src/features/actions/quick-fixes.ts';
import { at } from '../../journals.ts';
import { applied, journalIn } from '../applied.ts';

const JOURNAL = 'lot GEN-25 Gentiana lutea, 60 seeds\nsplit GEN-25, A 24 seeds\ncount GEN-25/A 2026-02-01, 2\n';
const now = at('2026-03-01 12:00');

/** What the line becomes by each fix, by its title. */
function fixesOf(text: string): Record<string, string> {
  const journal = journalIn({ 'a.germ': `${JOURNAL}${text}\n` });
  const book = new ProblemBook(journal);
  book.update(now);
  const fixes = quickFixes(book.of('a.germ'), 3, 3, { journal, file: 'a.germ', now });
  const after = fixes.map(({ edits }) => applied(journal, edits)['a.germ']!.slice(JOURNAL.length).trimEnd());
  return Object.fromEntries(fixes.map(({ title }, n) => [title, after[n]!]));
}

describe('a line of a diary', () => {
  test('becomes a record of what it surely says, and a remark of the rest', () => {
    expect(fixesOf('12 Feb 2026: GEN-25 3 up, mould on two')).toMatchObject({
      'Write “count GEN-25 2026-02-12, 3 emerged”': 'count GEN-25 2026-02-12, 3 emerged\n  GEN-25 3 up, mould on two',
      'Write “note GEN-25 2026-02-12, GEN-25 3 up, mould on two”': 'note GEN-25 2026-02-12, GEN-25 3 up, mould on two',
    });
    expect(fixesOf('Feb 12, 2026 sowed 20 seeds of GEN-25 in grit')).toMatchObject({
      'Write “sow GEN-25 2026-02-12, 20 seeds”': 'sow GEN-25 2026-02-12, 20 seeds\n  sowed 20 seeds of GEN-25 in grit',
    });
  });

  test('asks which of the two a number is, where something was counted before', () => {
    expect(fixesOf('2026-02-12: 3 germinated and 1 rotted in GEN-25/A')).toMatchObject({
      'Write “count GEN-25/A 2026-02-12, 3 germinated, 1 rotted”: new since the last count':
        'count GEN-25/A 2026-02-12, 3 germinated, 1 rotted\n  3 germinated and 1 rotted in GEN-25/A',
      'Write “count GEN-25/A 2026-02-12, =3 germinated, =1 rotted”: the total so far':
        'count GEN-25/A 2026-02-12, =3 germinated, =1 rotted\n  3 germinated and 1 rotted in GEN-25/A',
    });
  });

  test('is a note where it says nothing that can be counted, and a remark where it names no lot or several', () => {
    expect(Object.keys(fixesOf('12.2.2026 turned the tray of GEN-25')))
      .toContain('Write “note GEN-25 2026-02-12, turned the tray of GEN-25”');
    for (const line of ['12.2.2026 3 up', '2026-02-12: GEN-25 and GEN-25/A, 3 up', '2026-02-12 XXX-1 3 up']) {
      expect(fixesOf(line), line).toMatchObject({ 'Make it a remark': `  ${line}`, 'Make it a comment': `# ${line}` });
    }
  });

  test('is left alone where its date may be two, or where a number may be part of another', () => {
    expect(Object.keys(fixesOf('3/4/2026 GEN-25 3 up')).filter(title => title.startsWith('Write “count'))).toEqual([]);
    for (const words of ['0.3 up', '3/24 up', '3-4 up', '3 up and 4 up', 'sowed 20, 3 up']) {
      const titles = Object.keys(fixesOf(`12.2.2026 GEN-25 ${words}`)).filter(title => /^Write “(count|sow)/.test(title));
      expect(titles, words).toEqual([]);
    }
  });

  test('loses no word', () => {
    const word = fc.constantFrom(
      'GEN-25', 'GEN-25/A', '3', '20', 'up', 'germinated', 'rotted', 'sowed', 'seeds', 'mould,', 'grit.', '(two)', 'and', ':', '#', '"x"');
    const date = fc.constantFrom('12 Feb 2026', '2026-02-12:', '12.2.2026 -');
    fc.assert(fc.property(date, fc.array(word, { minLength: 1, maxLength: 9 }), (dated, words) => {
      for (const [title, after] of Object.entries(fixesOf(`${dated} ${words.join(' ')}`))) {
        if (!/^(Write “(count|sow|note)|Make it)/.test(title)) continue;
        const said = after.replaceAll('emerged', 'up').replaceAll(/\bsow\b/g, 'sowed');
        for (const each of words.map(text => text.replaceAll(/[^\w/-]/g, ''))) expect(said, title).toContain(each);
      }
    }));
  });
});
