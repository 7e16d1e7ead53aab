/** The two versions that a merge left: one of them, or both merged by their records. */
import type { JournalLine, JournalText } from '../../../journal/journal-file.ts';
import { merge } from '../../../merge/merge.ts';
import type { ConflictBlock } from '../../../text/conflict-blocks.ts';
import { splitLines } from '../../../text/split-lines.ts';
import type { ActionEdit } from '../action.ts';
import { withoutLines } from '../below.ts';
import type { Mend, MendContext } from './mend.ts';

/** For the first mark of a conflict. */
export function mergeConflict({ store, number }: JournalLine, { journal }: MendContext): Mend[] {
  const block = journal.files.get(store.name)?.conflicts.find(({ start }) => start === number);
  if (!block) return [];
  const { start, base, middle, end } = block;
  return [
    { title: `Keep the first version${labelOf(store, start)}`, edits: [keep(store, block, start + 1, base ?? middle)] },
    { title: `Keep the second version${labelOf(store, end)}`, edits: [keep(store, block, middle + 1, end)] },
    { title: 'Keep both, merged by records', edits: keepBoth(store, block) },
  ];
}

/** What the mark calls the version. */
function labelOf(store: JournalText, number: number): string {
  const label = store.at(number).text.replace(/^[<>]+/, '').trim();
  return label === '' ? '' : `, “${label}”`;
}

/** The lines from one up to another in place of the whole conflict. */
function keep(store: JournalText, { start, end }: ConflictBlock, from: number, to: number): ActionEdit {
  if (from === to) return withoutLines(store, start, end);
  const last = store.at(to - 1);
  const text = linesIn(store, from, to);
  return {
    file: store.name, line: start, start: 0, endLine: end, end: store.at(end).text.length,
    text: text.slice(0, text.length - last.end.length),
  };
}

function keepBoth(store: JournalText, { start, base, middle, end }: ConflictBlock): ActionEdit[] {
  const above = linesIn(store, 0, start);
  const below = linesIn(store, end + 1, store.lineCount);
  const version = (from: number, to: number) => above + linesIn(store, from, to) + below;
  const before = base === undefined ? above + below : version(base + 1, middle);
  const { text } = merge(before, version(start + 1, base ?? middle), version(middle + 1, end), { keepBoth: true });
  // Without a line end behind the last mark the file has none at its end.
  return difference(store, end + 1 < store.lineCount ? text : text.replace(/\r\n$|[\r\n]$/, ''));
}

function linesIn(store: JournalText, from: number, to: number): string {
  const parts: string[] = [];
  for (let n = from; n < to; n++) parts.push(store.at(n).text, store.at(n).end);
  return parts.join('');
}

/** What makes a text of a file, from the first line that differs to the last one. */
function difference(store: JournalText, text: string): ActionEdit[] {
  const lines = splitLines(text);
  const shorter = Math.min(lines.length, store.lineCount);
  const same = (mine: number, its: number) => {
    const [a, b] = [store.at(mine), lines[its]!];
    return a.text === b.text && a.end === b.end;
  };
  let head = 0;
  while (head < shorter - 1 && same(head, head)) head++;
  let tail = 0;
  while (tail < shorter - 1 - head && same(store.lineCount - 1 - tail, lines.length - 1 - tail)) tail++;
  const [lastOld, lastNew] = [store.lineCount - 1 - tail, lines.length - 1 - tail];
  const put = lines.slice(head, lastNew + 1).map((line, n) => line.text + (head + n < lastNew ? line.end : '')).join('');
  return [{ file: store.name, line: head, start: 0, endLine: lastOld, end: store.at(lastOld).text.length, text: put }];
}
