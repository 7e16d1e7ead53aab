import stringWidth from 'string-width';
import type { Column } from './columns.ts';

const GAP = '  ';
/** Characters one column wide each; measuring others takes a hundred times as long. */
const NARROW = /^[ -~–]*$/;
/** A wider text goes on in the next line of its row. */
const WIDEST_TEXT = 32;

/**
 * A table in plain text: a line of heads, then the rows. Columns are aligned by the width that a terminal gives each
 * character: two for CJK and for most emoji.
 */
export function textTable(columns: readonly Column[]): string[] {
  const wrapped = columns.map(({ head, kind, cells }) => [head, ...cells].map(cell => (kind === 'text' ? wrap(cell) : [cell])));
  const widths = wrapped.map(cells => Math.max(...cells.flat().map(widthOf)));
  const rows = wrapped[0]?.length ?? 0;
  return Array.from({ length: rows }, (_, row) => {
    const height = Math.max(...wrapped.map(cells => cells[row]?.length ?? 0));
    return Array.from({ length: height }, (__, line) => columns.map(({ kind }, at) => {
      const text = wrapped[at]?.[row]?.[line] ?? '';
      const blanks = ' '.repeat((widths[at] ?? 0) - widthOf(text));
      return kind === 'text' ? text + blanks : blanks + text;
    }).join(GAP).trimEnd());
  }).flat();
}

function widthOf(text: string): number {
  return NARROW.test(text) ? text.length : stringWidth(text);
}

/** Lines no wider than they may be, but for a single word that is; broken behind commas where that suffices. */
function wrap(text: string): string[] {
  return fill(text.split(/(?<=,) /).flatMap(part => fill(part.split(' '))));
}

function fill(parts: readonly string[]): string[] {
  const lines: string[] = [];
  for (const part of parts) {
    const longer = `${lines.at(-1) ?? ''} ${part}`;
    if (lines.length > 0 && widthOf(longer) <= WIDEST_TEXT) lines[lines.length - 1] = longer;
    else lines.push(part);
  }
  return lines;
}
