/** What ends a line; the last line of a text ends with nothing. */
export type LineEnd = '\n' | '\r\n' | '\r' | '';

export interface SplitLine {
  readonly text: string;
  readonly end: LineEnd;
}

/**
 * Splits a text at '\n', '\r\n' and '\r'. A text always has one line more than it has line ends.
 *
 * Example: splitLines('a\r\nb') gives [{ text: 'a', end: '\r\n' }, { text: 'b', end: '' }]
 */
export function splitLines(text: string): SplitLine[] {
  const lines: SplitLine[] = [];
  let start = 0;
  for (;;) {
    let stop = start;
    let code = 0;
    while (stop < text.length && (code = text.charCodeAt(stop)) !== 10 && code !== 13) stop++;
    if (stop === text.length) {
      lines.push({ text: text.slice(start), end: '' });
      return lines;
    }
    const end = code === 10 ? '\n' : text.charCodeAt(stop + 1) === 10 ? '\r\n' : '\r';
    lines.push({ text: text.slice(start, stop), end });
    start = stop + end.length;
  }
}
