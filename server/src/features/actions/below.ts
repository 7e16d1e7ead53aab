/** Records that an action writes below another one. */
import type { JournalLine } from '../../journal/journal-file.ts';
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
