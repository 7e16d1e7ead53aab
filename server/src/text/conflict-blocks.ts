/** The marks that a merge leaves around what it could not settle. */

/** Line numbers, from 0, of the marks of one conflict; `base` is there where what both began with is shown. */
export interface ConflictBlock {
  readonly start: number;
  readonly base: number | undefined;
  readonly middle: number;
  readonly end: number;
}

/** What git writes, and the shortest that it takes. */
export const MARKER_SIZE = 7;

const MARKER = /^(<{7,}|\|{7,}|={7,}|>{7,})(?: |$)/;

/** Whether a line looks like the mark of a conflict. */
export function isMarker(line: string): boolean {
  const code = line.charCodeAt(0);
  return (code === 60 || code === 61 || code === 62 || code === 124) && MARKER.test(line);
}

/** The whole conflicts among lines; marks that make none are left out. Where one stands in another, the inner ones. */
export function conflictBlocks(lines: readonly string[]): ConflictBlock[] {
  const blocks: ConflictBlock[] = [];
  for (let n = 0; n < lines.length; n++) {
    if (!lines[n]!.startsWith('<') || !isMarker(lines[n]!)) continue;
    const block = blockFrom(lines, n);
    if (!block) continue;
    blocks.push(block);
    n = block.end;
  }
  return blocks;
}

function blockFrom(lines: readonly string[], start: number): ConflictBlock | undefined {
  const size = /^<+/.exec(lines[start]!)![0].length;
  const is = (line: string, sign: string) =>
    line.startsWith(sign.repeat(size)) && line.charAt(size) !== sign && isMarker(line);
  let base: number | undefined;
  let middle: number | undefined;
  for (let n = start + 1; n < lines.length; n++) {
    const line = lines[n]!;
    if (!isMarker(line)) continue;
    if (is(line, '<')) return undefined;
    if (is(line, '|') && base === undefined && middle === undefined) base = n;
    else if (is(line, '=') && middle === undefined) middle = n;
    else if (is(line, '>') && middle !== undefined) return { start, base, middle, end: n };
  }
  return undefined;
}
