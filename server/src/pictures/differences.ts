/** Differences of treated and untreated seed with their intervals, one below the other, and what they say together. */
import { scaleLinear } from 'd3-scale';
import type { JournalLine } from '../journal/journal-file.ts';
import type { Content, Markup } from './markup.ts';
import { framed, heading, isUntitled, line, marked, text, TYPE, type DataTable, type Frame, type Picture } from './picture.ts';
import { fitMiddle, fitText, textWidth, wrapText } from './text-size.ts';

export interface DifferenceRow {
  /** Example: '2025/26 PEN-25, GA3 500 ppm' */
  readonly label: string;
  /** Treated less untreated, from -1 to 1, with its 95 % interval; undefined where it could not be measured. */
  readonly difference: { readonly value: number; readonly low: number; readonly high: number } | undefined;
  /** Example: '18 of 20, 7 of 20' */
  readonly counts: string;
  /** Of all rows above: drawn as a diamond. */
  readonly isTogether: boolean;
  /** The record of its lot. */
  readonly line?: JournalLine;
}

export interface DifferencesValues {
  readonly title: string;
  readonly caption: string;
  readonly rows: readonly DifferenceRow[];
}

const ROW = 22;
/** Of a row whose label stands above it. */
const TALL_ROW = 38;
/** The most room for labels, as a share of the width. */
const LABELS = 0.34;
/** Pixels: beside a plot that would be narrower, labels take its room; they stand above their rows then. */
const NARROW = 170;
/** Pixels: what a number on the axis takes. */
const TICK = 34;

/** Undefined where no row has a difference. */
export function differencesPicture(values: DifferencesValues, frame: Frame): Picture | undefined {
  const { rows, title, caption } = values;
  if (!rows.some(({ difference }) => difference)) return undefined;
  const { width, theme } = frame;
  const untitled = isUntitled(frame);
  const size = TYPE.small;
  const widest = Math.max(...rows.map(({ label, isTogether }) => textWidth(label, size, isTogether ? 'bold' : undefined)));
  const beside = Math.min(LABELS * width, 20 + widest);
  const right = width - textWidth('-100 (-100 to -100)', size) - 14;
  const isNarrow = right - beside < NARROW;
  const left = isNarrow ? 12 : beside;
  const row = isNarrow ? TALL_ROW : ROW;
  const top = untitled ? 26 : 56;
  const bottom = top + rows.length * row;
  const said = untitled ? [] : wrapText(caption, TYPE.text, width - 24, 4);
  const height = bottom + 34 + said.length * 17;
  const scale = scaleLinear([-1, 1], [left + 8, right - 8]);
  const x = (share: number): number => scale(share);
  // No line of the axis runs through a label.
  const stretches: (readonly [number, number])[] = isNarrow
    ? rows.map((_, i) => [top + i * row + 17, top + (i + 1) * row]) : [[top - 4, bottom]];
  const description = describe(values);
  const body: Content[] = [
    ...untitled ? [] : [heading(frame, title)],
    text(x(0) - 6, top - 10, theme.soft, isNarrow ? 'fewer' : 'fewer of the treated', { size, anchor: 'end' }),
    text(x(0) + 6, top - 10, theme.soft, 'more', { size }),
    ...(x(0.5) - x(0) < TICK ? [-1, 0, 1] : [-1, -0.5, 0, 0.5, 1]).flatMap(share => [
      ...stretches.map(([from, to]) => (
        line(x(share), from, x(share), to, share === 0 ? theme.soft : theme.grid, share === 0 ? { class: 'zero' } : {}))),
      text(x(share), bottom + 15, theme.soft, String(100 * share), { size, anchor: 'middle' }),
    ]),
    isNarrow ? text(right + 4, bottom + 15, theme.soft, 'points', { size })
      : text(12, bottom + 15, theme.soft, fitText('points', size, left - 12), { size }),
    ...rows.flatMap((each, i) => {
      const name = isNarrow
        ? { y: top + i * row + 12, width: width - 24 } : { y: top + (i + 0.5) * row + 4, width: left - 16 };
      return rowMarkup(each, top + (i + (isNarrow ? 0.68 : 0.5)) * row, { x, right, name }, frame);
    }),
    ...said.map((words, i) => text(12, bottom + 38 + i * 17, theme.ink, words)),
  ];
  return {
    title, caption, description, table: tableOf(rows), width, height,
    svg: framed(frame, height, { title, description }, body),
  };
}

interface Plot {
  readonly x: (share: number) => number;
  readonly right: number;
  /** Where the label of the row stands, and its room. */
  readonly name: { readonly y: number; readonly width: number };
}

function rowMarkup(row: DifferenceRow, y: number, { x, right, name: place }: Plot, frame: Frame): Content[] {
  const { theme } = frame;
  const { label, difference, isTogether } = row;
  const size = TYPE.small;
  const weight = isTogether ? 'bold' : undefined;
  const name = text(12, place.y, theme.ink, fitMiddle(label, size, place.width, weight), { size, weight });
  if (!difference) return [name, text(right + 4, y + 4, theme.soft, '–', { size })];
  const { value, low, high } = difference;
  return [
    name,
    line(x(low), y, x(high), y, theme.ink, { 'class': 'interval', 'stroke-width': isTogether ? 2.5 : 1.5 }),
    ...[low, high].map(end => line(x(end), y - 3, x(end), y + 3, theme.ink)),
    mark(x(value), y, row, frame),
    text(right + 4, y + 4, theme.ink, numbersOf(difference), { size }),
  ];
}

function mark(x: number, y: number, { label, counts, isTogether, line: lot }: DifferenceRow, frame: Frame): Markup {
  const fill = frame.theme.ink;
  const about = { says: `${label}: ${counts}`, line: lot };
  return isTogether
    ? marked(frame, 'path', { d: `M${x - 6} ${y}L${x} ${y - 6}L${x + 6} ${y}L${x} ${y + 6}Z`, fill, class: 'together' }, about)
    : marked(frame, 'circle', { cx: x, cy: y, r: 4, fill, class: 'difference' }, about);
}

function numbersOf({ value, low, high }: NonNullable<DifferenceRow['difference']>): string {
  const points = (share: number) => String(Math.round(100 * share) + 0);
  return `${points(value)} (${points(low)} to ${points(high)})`;
}

function tableOf(rows: readonly DifferenceRow[]): DataTable {
  return {
    head: ['Comparison', 'Germinated, treated and untreated', 'Difference in points (95 % interval)'],
    rows: rows.map(({ label, counts, difference }) => [label, counts, difference ? numbersOf(difference) : '–']),
  };
}

function describe({ rows, caption }: DifferencesValues): string {
  const told = rows.map(({ label, counts, difference }) => (
    `${label}: ${counts === '' ? '' : `${counts}, `}${difference ? `${numbersOf(difference)} points` : 'could not be measured'}`));
  return `Treated less untreated seed, in percentage points with 95 % intervals. ${told.join('. ')}. ${caption}`.trim();
}
