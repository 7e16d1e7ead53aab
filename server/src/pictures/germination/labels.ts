/** The labels at the ends of the curves, moved apart where they would cover each other. */
import { joined, type Content, type Markup } from '../markup.ts';
import { percentText } from '../percent.ts';
import { line, text } from '../picture.ts';
import { spread } from '../spread.ts';
import { BOLD, fitMiddle, fitText, textWidth, wrapText } from '../text-size.ts';
import type { Theme } from '../theme.ts';
import { colourOf, type Scales } from './curve.ts';
import { remainsOf, remainsText } from './remains.ts';
import { halfText, shareOf } from './said.ts';
import type { DrawnCurve } from './values.ts';

const LINE = 14;

interface Room {
  /** Lines of each label. */
  readonly lines: number;
  readonly width: number;
  readonly size: number;
}

/** What stands at the end of each curve, the most wanted first. */
function allLabels(curves: readonly DrawnCurve[], room: Room): string[][] {
  const isTwin = (curve: DrawnCurve) => curves.some(other => other !== curve && other.label === curve.label);
  return curves.map(curve => labelLines(curve, room, isTwin(curve)));
}

/** Of twins, which have one label, a single line names the batches. */
function labelLines(curve: DrawnCurve, { lines, width, size }: Room, isTwin: boolean): string[] {
  const { label, names, envelope } = curve;
  if (lines === 1) return [`${percentText(envelope.germinated / envelope.seeds)} % ${isTwin ? `${names}: ` : ''}${label}`];
  const remains = remainsOf(curve.courses);
  const half = halfText(envelope);
  const share = shareOf(envelope);
  const third = [half, remains && `cut: ${remainsText(remains)}`].filter(part => part !== undefined);
  const first = `${label} (${names})`;
  // Names that have no room behind what was done stand behind the share, cut where they are alike.
  const head = textWidth(first, size, weightOf(0)) <= width
    ? [first, lines > 2 || half === undefined ? share : `${share}, ${half}`]
    : [label, [share, fitMiddle(names, size, width - textWidth(`${share}, `, size))].filter(part => part !== '').join(', ')];
  return [...head, ...third].slice(0, lines);
}

/** Rows of text that fit for each of so many labels. */
export function rowsEach(count: number, height: number): number {
  return Math.max(1, Math.floor(height / (Math.max(1, count) * (LINE + 1))));
}

export function widestLabel(curves: readonly DrawnCurve[], room: Room): number {
  const widths = allLabels(curves, room).flatMap(lines => (
    lines.map((words, row) => textWidth(words, room.size, weightOf(row)))));
  return Math.max(0, ...widths);
}

function weightOf(row: number): 'bold' | undefined {
  return row === 0 ? 'bold' : undefined;
}

interface Row {
  readonly words: string;
  /** It tells what was done: in the colour of its curve. */
  readonly isHead: boolean;
}

/** Lines as they are drawn: broken where there are so many rows for them, else cut. Bold letters are wider. */
function rowsOf(lines: readonly string[], { size, width, rows }: LabelPlace): Row[] {
  const broken = lines.flatMap((line, i): Row[] => (
    wrapText(line, size, i === 0 ? width / BOLD : width, 3).map(words => ({ words, isHead: i === 0 }))));
  if (broken.length <= rows) return broken;
  return lines.map((line, i): Row => ({ words: fitText(line, size, width, weightOf(i)), isHead: i === 0 }));
}

export interface LabelPlace extends Room {
  /** Rows of text that there is room for at each curve. */
  readonly rows: number;
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
}

export function labels(curves: readonly DrawnCurve[], { x, y }: Scales, place: LabelPlace, theme: Theme): Markup[] {
  const high = (lines: number) => lines * LINE;
  const all = allLabels(curves, place).map(lines => rowsOf(lines, place));
  const tallest = Math.max(0, ...all.map(lines => lines.length));
  const ends = curves.map(({ envelope: { germinated, seeds } }) => y(germinated / seeds));
  // The first baseline lies a little below the end, so that the line points at the middle of its first words.
  const tops = spread(ends, high(tallest) + 4, {
    low: place.top,
    high: Math.max(place.top, place.bottom - high(tallest) + LINE),
  });
  return curves.map((curve, i): Markup => {
    const colour = colourOf(curve.shade, theme);
    const end = x(curve.envelope.looks.at(-1)!.day);
    const top = tops[i]!;
    const lines = all[i]!.map(({ words, isHead }, row): Content => (
      text(place.x, top + 4 + row * LINE, isHead ? colour : theme.soft, words, { size: place.size, weight: isHead ? 'bold' : undefined })));
    return joined([
      line(end + 4, ends[i]!, place.x - 4, top, colour, {
        'class': 'leader',
        'stroke-width': 0.75,
        'stroke-dasharray': '1 2',
      }),
      ...lines,
    ]);
  });
}
