/**
 * Headings: in each run of comment lines with the same number of `#` the first one with a word in it. The number is
 * its depth.
 */
import type { JournalLine } from '../journal/journal-file.ts';

export interface Heading {
  readonly line: number;
  /** The last line with something on it before the next heading that is not deeper. */
  readonly end: number;
  readonly depth: number;
  readonly title: string;
}

export function headingsOf(lines: readonly JournalLine[]): Heading[] {
  const headings: Heading[] = [];
  const open: { -readonly [Key in keyof Heading]: Heading[Key] }[] = [];
  // The depth of the run that has its heading already.
  let titled = 0;
  let filled = 0;
  const close = (depth: number) => {
    while (open.length > 0 && open.at(-1)!.depth >= depth) open.pop()!.end = filled;
  };
  lines.forEach((line, number) => {
    const marks = line.content.kind === 'comment' ? /^\uFEFF?(#+)/.exec(line.text)?.[1] ?? '' : '';
    const depth = marks.length;
    const title = line.text.slice(line.text.indexOf(marks) + depth).trim();
    if (depth !== titled) titled = 0;
    if (depth > 0 && titled === 0 && /[\p{L}\p{N}]/u.test(title)) {
      close(depth);
      titled = depth;
      const heading = { line: number, end: number, depth, title };
      open.push(heading);
      headings.push(heading);
    }
    if (line.content.kind !== 'blank') filled = number;
  });
  close(0);
  return headings;
}
