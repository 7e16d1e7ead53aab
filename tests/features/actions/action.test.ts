import { expect, test } from 'vitest';
import { oneALine } from '../../../server/src/features/actions/action.ts';
import { journalIn } from './applied.ts';

const journal = journalIn({ 'a.germ': 'count V, 3, 4 rotted\nsow V\n', 'b.germ': 'sow V\n' });
function edit(file: string, line: number, start: number, end: number, text: string) {
  return { file, line, start, end, text };
}

test('edits of a line are one, with what stands between them; files and lines are in order', () => {
  expect(oneALine([
    edit('b.germ', 0, 0, 3, 'lift'), edit('a.germ', 1, 4, 5, 'W'),
    edit('a.germ', 0, 12, 12, '='), edit('a.germ', 0, 9, 9, '='),
  ], journal)).toEqual([
    edit('a.germ', 0, 9, 12, '=3, ='), edit('a.germ', 1, 4, 5, 'W'), edit('b.germ', 0, 0, 3, 'lift'),
  ]);
});

test('of two that overlap the first counts', () => {
  expect(oneALine([edit('a.germ', 0, 8, 12, 'x'), edit('a.germ', 0, 6, 9, 'y')], journal)).toEqual([edit('a.germ', 0, 6, 9, 'y')]);
});
