/** The labels at the ends of the curves, moved apart where they would cover each other. */
import { isUndefined } from '../../measures/measured.ts';
import { joined, type Content, type Markup } from '../markup.ts';
import { percentText } from '../percent.ts';
import { line, text } from '../picture.ts';
import { spread } from '../spread.ts';
import { fitText, textWidth } from '../text-size.ts';
import type { Theme } from '../theme.ts';
import { colourOf, type Scales } from './curve.ts';
import { remainsOf, remainsText } from './remains.ts';
import { halfText, shareOf } from './said.ts';
import type { DrawnCurve } from './values.ts';

const LINE = 14;

/** What stands at the end of a curve, the most wanted first. */
function labelLines(curve: DrawnCurve, most: number): string[] {
  const { label, names, envelope } = curve;
  const remains = remainsOf(curve.courses);
  const second =
    most > 2 || isUndefined(envelope.half) ? shareOf(envelope) : `${shareOf(envelope)}, ${halfText(envelope)!}`;
  const third = [halfText(envelope), remains && `cut: ${remainsText(remains)}`].filter(part => part !== undefined);
  const all =
    most === 1
      ? [`${percentText(envelope.germinated / envelope.seeds)} % ${label}`]
      : [`${label} (${names})`, second, ...third];
  return all.slice(0, most);
}

/** Lines that fit for each of so many labels. */
export function linesEach(count: number, height: number): number {
  return Math.max(1, Math.min(4, Math.floor(height / (Math.max(1, count) * (LINE + 1)))));
}

export function widestLabel(curves: readonly DrawnCurve[], most: number, size: number): number {
  const widths = curves.flatMap(curve => (
    labelLines(curve, most).map((words, row) => textWidth(words, size, weightOf(row)))));
  return Math.max(0, ...widths);
}

function weightOf(row: number): 'bold' | undefined {
  return row === 0 ? 'bold' : undefined;
}

export interface LabelPlace {
  readonly x: number;
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
  readonly lines: number;
  readonly size: number;
}

export function labels(curves: readonly DrawnCurve[], { x, y }: Scales, place: LabelPlace, theme: Theme): Markup[] {
  const high = (lines: number) => lines * LINE;
  const all = curves.map(curve => labelLines(curve, place.lines));
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
    const lines = all[i]!.map((words, row): Content =>
      text(
        place.x, top + 4 + row * LINE, row === 0 ? colour : theme.soft,
        fitText(words, place.size, place.width, weightOf(row)),
        { size: place.size, weight: weightOf(row) },
      ),
    );
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
