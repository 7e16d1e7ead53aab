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
  for (let number = 0; number < lines.length; number++) {
    const { text, content: { kind } } = lines[number]!;
    const comment = kind === 'comment' ? readComment(text) : undefined;
    if (comment?.depth !== titled) titled = 0;
    if (comment && titled === 0 && /[\p{L}\p{N}]/u.test(comment.title)) {
      close(comment.depth);
      titled = comment.depth;
      const heading = { line: number, end: number, ...comment };
      open.push(heading);
      headings.push(heading);
    }
    if (kind !== 'blank') filled = number;
  }
  close(0);
  return headings;
}

function readComment(text: string): { depth: number; title: string } {
  const marks = /#+/.exec(text)?.[0] ?? '';
  return { depth: marks.length, title: text.slice(text.indexOf('#') + marks.length).trim() };
}
