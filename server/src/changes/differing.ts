/** Takes out of two states of a journal what stands in both, so that the rest alone has to be read and compared. */
import { parse } from '../syntax/parse.ts';
import { isMarker } from '../text/conflict-blocks.ts';
import type { Files } from './changes.ts';

/** The lines of files by their names, without their ends. */
export type Lines = ReadonlyMap<string, readonly string[]>;

/** One record as it is written: the `day` line that it stands under, its own line, its remarks. */
interface Block {
  readonly day: string;
  readonly lines: readonly string[];
  /** Its lines as one text. One line alone is that very text: large journals look up thousands at every edit. */
  readonly text: string;
}

export interface Differing {
  readonly before: Files;
  readonly after: Files;
  /** Records that stand in one of both alone. */
  readonly count: number;
}

/** What is written in one state and not in the other, each record below a `day` line that dates it as it was dated. */
export function differing(before: Lines, after: Lines): Differing {
  const old = new Map<string, Block[]>();
  const now = new Map<string, Block[]>();
  for (const name of new Set([...before.keys(), ...after.keys()])) {
    const [left, right] = withoutEnds(before.get(name) ?? [], after.get(name) ?? []);
    old.set(name, recordsOf(left));
    now.set(name, recordsOf(right));
  }
  const left = without(old, countsOf(now));
  const right = without(now, countsOf(old));
  return { before: textsOf(left), after: textsOf(right), count: sizeOf(left) + sizeOf(right) };
}

type Blocks = ReadonlyMap<string, readonly Block[]>;

interface Part {
  /** The `day` line above it; '' where there is none. */
  readonly day: string;
  readonly lines: readonly string[];
}

/**
 * Both without the records that they begin and end with alike: mostly a journal grows in one place. Cuts no record in
 * two, and leaves none out that another `day` line dates now. All of both where a conflict is among what differs.
 */
function withoutEnds(before: readonly string[], after: readonly string[]): [Part, Part] {
  const shorter = Math.min(before.length, after.length);
  let top = 0;
  while (top < shorter && before[top] === after[top]) top++;
  let bottom = 0;
  while (bottom < shorter - top && before.at(-1 - bottom) === after.at(-1 - bottom)) bottom++;
  // The last record above may have got a remark.
  while (top > 0 && !isHead(before[--top]!));
  const day = dayAbove(before, top);
  const isSame = lastDay(before, top, before.length - bottom) === lastDay(after, top, after.length - bottom);
  while (bottom > 0 && !(isSame ? isHead(before.at(-bottom)!) : isDay(before.at(-bottom)!))) bottom--;
  const middle = (lines: readonly string[]): Part => ({ day, lines: lines.slice(top, lines.length - bottom) });
  const [left, right] = [middle(before), middle(after)];
  if (![...left.lines, ...right.lines].some(isMarker)) return [left, right];
  return [{ day: '', lines: before }, { day: '', lines: after }];
}

function dayAbove(lines: readonly string[], end: number): string {
  return lastDay(lines, 0, end) ?? '';
}

function lastDay(lines: readonly string[], start: number, end: number): string | undefined {
  for (let n = end - 1; n >= start; n--) if (isDay(lines[n]!)) return lines[n];
  return undefined;
}

/** What has a conflict in it is one block: which of its lines count is not for a single line to say. */
function recordsOf({ day: above, lines }: Part): Block[] {
  if (lines.some(isMarker)) return [{ day: '', lines, text: lines.join('\n') }];
  const blocks: Block[] = [];
  let day = above;
  for (let n = 0; n < lines.length; n++) {
    const head = lines[n]!;
    if (!isHead(head)) continue;
    if (isDay(head)) day = head;
    let last = n;
    for (let next = n + 1; next < lines.length && !isHead(lines[next]!); next++) {
      if (isRemark(lines[next]!)) last = next;
    }
    if (last === n && isDay(head)) continue;
    const own = last === n ? [head] : lines.slice(n, last + 1);
    blocks.push({ day, lines: own, text: last === n ? head : own.join('\n') });
    n = last;
  }
  return blocks;
}

/** Neither a remark nor a comment nor blank. */
function isHead(line: string): boolean {
  return line !== '' && !/^[#\s]/.test(line);
}

function isRemark(line: string): boolean {
  return !line.startsWith('#') && line.trim() !== '';
}

function isDay(line: string): boolean {
  const code = line.charCodeAt(0);
  return (code === 100 || code === 68) && parse(line).record?.keyword === 'day';
}

/** How often each text is there, by the `day` lines above. */
type Counts = Map<string, Map<string, number>>;

function countsOf(blocks: Blocks): Counts {
  const counts: Counts = new Map();
  for (const own of blocks.values()) {
    for (const { day, text } of own) {
      const ofDay = counts.get(day) ?? new Map<string, number>();
      if (ofDay.size === 0) counts.set(day, ofDay);
      ofDay.set(text, (ofDay.get(text) ?? 0) + 1);
    }
  }
  return counts;
}

/** The blocks of which there are more than `counts` says; uses up what it counts. */
function without(blocks: Blocks, counts: Counts): Blocks {
  return new Map([...blocks].map(([name, own]) => [name, own.filter(({ day, text }) => {
    const ofDay = counts.get(day);
    const n = ofDay?.get(text) ?? 0;
    if (n > 0) ofDay!.set(text, n - 1);
    return n === 0;
  })]));
}

function textsOf(blocks: Blocks): Files {
  return new Map([...blocks].map(([name, own]) => {
    let last = '';
    return [name, own.flatMap(({ day, lines }) => {
      const isUnder = day === last || lines[0] === day;
      last = day;
      return isUnder ? lines : [day, ...lines];
    }).join('\n')];
  }));
}

function sizeOf(blocks: Blocks): number {
  let size = 0;
  for (const own of blocks.values()) size += own.length;
  return size;
}
