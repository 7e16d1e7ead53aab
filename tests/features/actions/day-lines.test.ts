import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayLinesAction } from '../../../server/src/features/actions/day-lines.ts';
import type { Journal } from '../../../server/src/journal/journal.ts';
import { keywords } from '../../../server/src/model/keywords.ts';
import { journal as arbitraryJournal } from '../../support/arbitrary-journal.ts';
import { anyLine } from '../../support/arbitrary-lines.ts';
import { variantsOf } from '../../support/fixture.ts';
import { journalOf } from '../journals.ts';
import { applied, journalIn } from './applied.ts';
import { livesOf } from './lives.ts';

/** The title and the text, from the first line marked `here` to the last; the same in all variants. */
function moved(source: string): [title: string, text: string] | undefined {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => {
    const journal = journalOf(fixture);
    const lines = fixture.expected.map(({ line }) => line);
    const action = dayLinesAction(journal, 'journal.germ', Math.min(...lines), Math.max(...lines));
    const plain = (text: string) => text.replaceAll('\r\n', '\n').replaceAll(/ ?🌱/g, '').trimEnd();
    return action && [action.title, plain(applied(journal, action.edits)['journal.germ']!)] as [string, string];
  });
  for (const other of others) expect(other).toEqual(first);
  return first;
}

const lot = 'lot V Veratrum nigrum, 60 seeds\nsplit V, A 30 seeds, B 30 seeds';

describe('records below a day line', () => {
  test('lose the date that they share', () => {
    expect(moved(`${lot}
soak V/A 2026-01-10 19:00, water, 24 h
^ here
  In a jar.
soak V/B  2026-01-10 19:00, water, 24 h
^ here
`)).toEqual(['Move these 2 records below “day 2026-01-10”', `${lot}

day 2026-01-10
soak V/A 19:00, water, 24 h
  In a jar.
soak V/B 19:00, water, 24 h`]);
  });

  test('are of one day each time the date changes; comments stay above and reminders keep their dates', () => {
    expect(moved(`${lot}
# In January
sow V/A 2026-01-11
^ here
due V/A 2026-01-10, look
day 2026-01-12
sow V/B
count V/A 2026-01-19, 3
^ here
`)).toEqual(['Move these 2 records below “day” lines, 2 days', `${lot}
# In January
day 2026-01-11
sow V/A
due V/A 2026-01-10, look
day 2026-01-12
sow V/B

day 2026-01-19
count V/A, 3`]);
  });

  test('need no line where the one above is of their day, and what follows stays of its own', () => {
    expect(moved(`${lot}
day 2026-01-11
sow V/A 2026-01-11 19:00
^ here
count V/A 2026-01-19, 3
^ here
limit soak, 24 h
sow V/B
`)).toEqual(['Move these 2 records below “day” lines, 2 days', `${lot}
day 2026-01-11
sow V/A 19:00

day 2026-01-19
count V/A, 3
limit soak, 24 h

day 2026-01-11
sow V/B`]);
  });

  test.each([
    ['none has a date', `${lot}\nday 2026-01-11\nsow V/A\n^ here`],
    ['a line cannot be read', `${lot}\nsow V/A 2026-01-11\n^ here\nsow V/B 2026-01-11, 12 sedes\n^ here`],
    ['a split without a date would get one', 'lot V Veratrum, 9 seeds\n^ here\nsow V 2026-01-11\n^ here\nsplit V, A 2 seeds'],
    ['a line below that cannot be read would get one', `${lot}\nsow V/A 2026-01-11\n^ here\nsw V/B`],
    ['only a reminder has a date', `${lot}\ndue V/A 2026-01-11, look\n^ here`],
  ])('are none where %s', (_, source) => {
    expect(moved(source)).toBeUndefined();
  });
});

/** What each line says and when, but for `day` lines and dates as they are written. */
function datedLines(journal: Journal): unknown[] {
  return [...journal.files.values()].flatMap(({ text }) => [...text].flatMap((line): unknown[] => {
    const entry = journal.entryAt(line);
    if (!entry) return line.content.kind === 'blank' ? [] : [line.text];
    const { record: { keyword, subject, facts }, moment } = entry;
    const when = keywords[keyword].dated === 'no' ? undefined : moment;
    return keyword === 'day' ? [] : [[keyword, subject?.text, facts.map(({ type }) => type), when]];
  }));
}

describe('moving any lines', () => {
  test('leaves each record its day, and everything else as it was', () => {
    const head = fc.constantFrom(
      ['sow V', 'at bag'], ['count V', '3'], ['move V', 'at bag'], ['split V', 'A 2 seeds'], ['note W', 'x']);
    const date = fc.constantFrom('', ' 2026-01-11', ' 2026-01-12', ' 2026-01-12 19:00');
    const dated = fc.tuple(head, date).map(([[subject, facts], when]) => `${subject}${when}, ${facts}`);
    const other = fc.constantFrom('day 2026-01-11', 'day 2026-01-12', '', '  a remark');
    const line = fc.oneof({ weight: 5, arbitrary: dated }, anyLine, other);
    const many = fc.array(line, { minLength: 2, maxLength: 10 });
    let done = 0;
    fc.assert(fc.property(many, fc.nat(9), fc.nat(4), fc.constantFrom('\n', '\r\n'), (lines, from, more, end) => {
      const journal = journalIn({ 'a.germ': ['lot V Veratrum', 'lot W Veratrum', ...lines].join(end) });
      const action = dayLinesAction(journal, 'a.germ', from, from + more);
      if (!action) return;
      done++;
      const texts = applied(journal, action.edits);
      const after = journalIn(texts);
      expect(datedLines(after)).toEqual(datedLines(journal));
      expect(livesOf(after)).toEqual(livesOf(journal));
      if (end === '\r\n') expect(texts['a.germ']!.replaceAll('\r\n', '')).not.toContain('\n');
      expect(new Set(action.edits.map(each => each.line)).size).toBe(action.edits.length);
    }), { numRuns: 600 });
    expect(done).toBeGreaterThan(50);
  });

  test('of whole journals leaves all histories', () => {
    fc.assert(fc.property(arbitraryJournal, ({ files }) => {
      const journal = journalIn(Object.fromEntries(files.map(({ name, text }) => [name, text])));
      const edits = files.flatMap(({ name }) => dayLinesAction(journal, name, 0, 1e9)?.edits ?? []);
      const after = journalIn(applied(journal, edits));
      expect(livesOf(after)).toEqual(livesOf(journal));
    }), { numRuns: 40 });
  });
});
