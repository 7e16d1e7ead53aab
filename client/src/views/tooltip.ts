import { MarkdownString } from 'vscode';

/** What stands over a row, line by line; lines that are not there are left out. */
export function tooltip(lines: readonly (string | undefined)[]): MarkdownString {
  const text = new MarkdownString();
  // appendText escapes: names and places are the journal's own words.
  lines.filter(line => line !== undefined && line !== '').forEach((line, i) => text.appendText(`${i > 0 ? '\n' : ''}${line}`));
  return text;
}
