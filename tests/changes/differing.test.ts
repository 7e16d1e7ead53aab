import fc from 'fast-check';
import { expect, it } from 'vitest';
import { changesOfRecords } from '../../server/src/changes/changes.ts';
import { differing, type Lines } from '../../server/src/changes/differing.ts';
import { journal } from '../support/arbitrary-journal.ts';

const asFiles = (lines: Lines) => new Map([...lines].map(([name, rows]) => [name, rows.join('\n')]));
const oneFile = (text: string): Lines => new Map([['a.germ', text.split('\n')]]);

const edit = (...kinds: string[]) => fc.record({ file: fc.nat(3), at: fc.nat(200), what: fc.constantFrom(...kinds) });

// A line with a slip in it is known again by its neighbours alone: beside it nothing else may have changed.
const edits = fc.oneof(
  fc.array(edit('take out', 'another number', 'a remark', 'a comment', 'a day', 'to the end'), { minLength: 1, maxLength: 3 }),
  edit('a slip').map(one => [one]),
);

/** The lines after one edit. */
function edited(lines: readonly string[], at: number, what: string): string[] {
  const n = at % lines.length;
  const line = lines[n]!;
  const [before, after] = [lines.slice(0, n), lines.slice(n + 1)];
  switch (what) {
    case 'take out': return [...before, ...after];
    case 'another number': return [...before, line.replace(/\d(?=\D*$)/, digit => String((Number(digit) + 1) % 10)), ...after];
    case 'a remark': return [...before, line, `  Seen ${at}.`, ...after];
    case 'a comment': return [...before, '# A comment', line, ...after];
    case 'a slip': return [...before, line.replace('a', 'aa'), ...after];
    case 'a day': return [...before, 'day 2026-03-01', line, ...after];
    default: return [...before, ...after, line];
  }
}

it('what stands in both states is left out, and what is told stays the same', () => {
  fc.assert(fc.property(journal, edits, ({ files }, made) => {
    const before = new Map(files.map(({ name, text }) => [name, text.split('\n')]));
    const after = new Map(before);
    for (const { file, at, what } of made) {
      const { name } = files[file % files.length]!;
      if (after.get(name)!.length > 0) after.set(name, edited(after.get(name)!, at, what));
    }
    const told = changesOfRecords(differing(before, after));
    expect(told).toEqual(changesOfRecords({ before: asFiles(before), after: asFiles(after) }));
  }), { numRuns: 100 });
});

it('a record comes with the day line that it stands under, and is counted', () => {
  const before = oneFile('day 2026-01-01\nsow A\n  Deep.\nday 2026-01-08\ncount A, 1\n\n# End');
  const after = oneFile('day 2026-01-01\nsow A\n  Deep.\n# New\nday 2026-01-08\ncount A, 2\n  Green.\n');
  expect(differing(before, after)).toEqual({
    before: new Map([['a.germ', 'day 2026-01-08\ncount A, 1']]),
    after: new Map([['a.germ', 'day 2026-01-08\ncount A, 2\n  Green.']]), count: 2,
  });
});

it('of a file with a conflict in it nothing is left out', () => {
  const conflict = 'sow A 2026-01-01\n<<<<<<< ours\ncount A 2026-01-08, 1\n=======\ncount A 2026-01-08, 2\n>>>>>>> theirs';
  expect(differing(oneFile('sow A 2026-01-01'), oneFile(conflict)).after).toEqual(new Map([['a.germ', conflict]]));
});

it('of a record that is there twice now one is new', () => {
  const record = 'count A 2026-01-08, 1\n  Green.';
  const { before, after } = differing(oneFile(record), oneFile(`${record}\n${record}`));
  expect(changesOfRecords({ before, after })).toEqual([{
    about: 'A', kind: 'new', keyword: 'count', day: '2026-01-08',
    words: ['1 more germinated on 8 January 2026', 'remark on “count” on 8 January 2026: Green.'],
  }]);
});
