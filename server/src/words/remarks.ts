/** The grower's own words below a record. */
import type { JournalLine } from '../journal/journal-file.ts';

/** A longer text is cut: the record itself has it in full. */
const LONGEST = 300;

/** The remarks directly below a line, as one text; undefined where there are none. */
export function remarkText(line: JournalLine): string | undefined {
  const text = remarksBelow(line)?.replaceAll('\n', ' ');
  if (text === undefined) return undefined;
  if (text.length <= LONGEST) return text;
  const cut = text.lastIndexOf(' ', LONGEST);
  return `${text.slice(0, cut > 0 ? cut : LONGEST)} …`;
}

/** The same in full, as many lines as there are. */
export function remarksBelow({ store, number }: JournalLine): string | undefined {
  const remarks: string[] = [];
  for (let n = number + 1; n < store.lineCount && store.at(n).content.kind === 'remark'; n++) {
    remarks.push(store.at(n).text.trim());
  }
  return remarks.length === 0 ? undefined : remarks.join('\n');
}
