/** From the editor's terms of features/ to the protocol's. */
import type { Range } from 'vscode-languageserver';

interface Stretch {
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

export function rangeOf({ line, start, end }: Stretch): Range {
  return { start: { line, character: start }, end: { line, character: end } };
}
