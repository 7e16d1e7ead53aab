import type { Column } from './columns.ts';
import { widthOf } from './text-width.ts';

const GAP = '  ';
/** A wider text goes on in the next line of its row. */
const WIDEST_TEXT = 32;

/**
 * Tables of columns, each no wider than it may be where that is possible: what does not fit goes on in a further table
 * that begins with the first column again.
 */
export function foldColumns(columns: readonly Column[], width: number): (readonly Column[])[] {
  const [first, ...others] = columns;
  if (!first) return [];
  const tables: Column[][] = [];
  const firstWidth = widthOfColumn(first);
  let left = 0;
  for (const column of others) {
    const needed = GAP.length + widthOfColumn(column);
    if (tables.length === 0 || needed > left) {
      tables.push([first]);
      left = width - firstWidth;
    }
    tables.at(-1)!.push(column);
    left -= needed;
  }
  return tables.length > 0 ? tables : [[first]];
}

function widthOfColumn({ head, kind, cells }: Column): number {
  return Math.max(...[head, ...cells].flatMap(cell => (kind === 'text' ? wrap(cell) : [cell])).map(widthOf));
}

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

/** Between a number and its unit no line ends. */
const GAPS = /(?<!\d) | (?!(?:%|[kmuµ]?g|[muµ]?L|ppm|[muµ]M|h|min|C|F)(?![\p{L}\d]))/u;

/** Text in lines no wider than they may be, but for a single word that is. */
export function paragraph(text: string, width: number): string[] {
  return fill(text.split(GAPS), width);
}

/**
 * One line of a text with steps and items in as many as it needs; what goes on stands below what came first.
 *
 * Example: hanging('  - one two', 9) is ['  - one', '    two']
 */
export function hanging(line: string, width: number): string[] {
  const [, lead = '', rest = ''] = /^(\s*(?:(?:\d+\.|[-!=])\s+)?)(.*)$/su.exec(line) ?? [];
  const room = width - lead.length;
  return paragraph(rest, room).map((text, n) => `${n === 0 ? lead : ' '.repeat(lead.length)}${text}`.trimEnd());
}

/** The same for a cell, broken behind commas where that suffices. */
function wrap(text: string): string[] {
  return fill(text.split(/(?<=,) /).flatMap(part => fill(part.split(' '), WIDEST_TEXT)), WIDEST_TEXT);
}

function fill(parts: readonly string[], width: number): string[] {
  const lines: string[] = [];
  for (const part of parts) {
    const longer = `${lines.at(-1) ?? ''} ${part}`;
    if (lines.length > 0 && widthOf(longer) <= width) lines[lines.length - 1] = longer;
    else lines.push(part);
  }
  return lines;
}
