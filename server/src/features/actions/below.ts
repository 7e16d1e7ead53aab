/** Lines that an action writes below another one, or takes out. */
import type { JournalLine, JournalText } from '../../journal/journal-file.ts';
import type { ActionEdit } from './action.ts';

/** New lines below a line and its remarks, with the line ends of the file. */
export function editBelow(line: JournalLine, records: readonly string[]): ActionEdit {
  const last = lastRemark(line);
  const end = last.text.length;
  const between = lineEndAt(last);
  const text = records.map(each => `${between}${each}`).join('');
  return { file: line.store.name, line: last.number, start: end, end, text };
}

/** The end of a line; at the end of a file that of its first line. */
export function lineEndAt({ end, store }: JournalLine): string {
  return end || store.at(0).end || '\n';
}

/** The last of the remarks below a line, or the line itself. */
function lastRemark(line: JournalLine): JournalLine {
  const { store } = line;
  let { number } = line;
  while (number + 1 < store.lineCount && store.at(number + 1).content.kind === 'remark') number++;
  return store.at(number);
}

/** The lines from one to another taken out, both included; a byte order mark stays. */
export function withoutLines(store: JournalText, first: number, last: number): ActionEdit {
  const file = store.name;
  const start = first === 0 && store.at(0).text.startsWith('\ufeff') ? 1 : 0;
  if (last + 1 < store.lineCount) return { file, line: first, start, endLine: last + 1, end: 0, text: '' };
  const end = store.at(last).text.length;
  return first === 0
    ? { file, line: 0, start, endLine: last, end, text: '' }
    : { file, line: first - 1, start: store.at(first - 1).text.length, endLine: last, end, text: '' };
}
