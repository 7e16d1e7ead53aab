/** Germination over time: the share of the seed that had germinated, over the days from day 0. */
import { scaleLinear } from 'd3-scale';
import { dayTicks } from '../day-ticks.ts';
import { joined, type Content } from '../markup.ts';
import { framed, heading, isUntitled, line, text, TYPE, type Frame, type Picture } from '../picture.ts';
import { fitText, textWidth, wrapText } from '../text-size.ts';
import { band, colourOf, dots, halfBar, spans, steps, whisker, type Scales } from './curve.ts';
import { labels, rowsEach, widestLabel } from './labels.ts';
import { LANE, lanesMarkup, patterns } from './lanes.ts';
import { remainsColumn, remainsOf } from './remains.ts';
import { percentText } from '../percent.ts';
import { describe, tableOf } from './said.ts';
import { sorted, type DrawnCurve, type GerminationValues } from './values.ts';

/** More bands than this lie on one another and show nothing. */
const MOST_BANDS = 3;
/** Of more curves than this only untreated seed has boxes, an interval and T50: those of all cover one another. */
const MOST_SPANS = 6;
/** The least room for what stands at the ends of the curves, and the most, as shares of the width. */
const LABELS = { least: 0.2, most: 0.43 };
/** Of a label, before any of them is broken. */
const MOST_LINES = 4;
/** Pixels side by side behind the plot: for each curve its interval, and the seed that did not germinate. */
const WHISKER = 6;
const COLUMN = 9;

interface Layout {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly labelX: number;
}

/** Undefined where no curve has days. */
export function germinationPicture(values: GerminationValues, frame: Frame): Picture | undefined {
  const { drawn, not } = sorted(values.curves);
  if (drawn.length === 0) return undefined;
  const { width, small, theme } = frame;
  const { title, caption, lanes } = values;
  const untitled = isUntitled(frame);
  const top = small ? 12 : untitled ? 30 : 52;
  const plot = small ? 96 : plotOf(drawn.length, frame.plot);
  const bottom = top + plot;
  const rows = small ? 1 : rowsEach(drawn.length, plot);
  const most = Math.min(MOST_LINES, rows);
  const size = small ? TYPE.small : TYPE.text;
  const isThin = drawn.length > MOST_SPANS;
  const full = isThin ? drawn.filter(({ shade }) => shade.kind === 'untreated') : drawn;
  const columns = small || isThin ? [] : drawn.filter(({ courses }) => remainsOf(courses) !== undefined);
  const widest = widestLabel(drawn, { lines: most, width: LABELS.most * width - 4, size });
  const room = Math.max(LABELS.least * width, Math.min(LABELS.most * width, widest + 4));
  const labelX = width - room;
  const right = labelX - 16 - full.length * WHISKER - columns.length * COLUMN;
  const layout: Layout = { left: small ? 32 : 40, right, top, bottom, labelX };
  const scales = scalesOf(drawn, values, layout);
  const shownLanes = small ? [] : lanes;
  const lanesTop = bottom + (small ? 20 : 38);
  const lanesBottom = lanesTop + shownLanes.length * LANE;
  const said = untitled ? [] : wrapText(caption, TYPE.text, width - 24, 4);
  const height = small ? bottom + 32 : lanesBottom + said.length * 17 + (said.length > 0 ? 16 : 6);
  const description = describe(values, drawn, not);
  const body: Content[] = [
    patterns(frame.id, theme),
    ...(untitled ? [] : [heading(frame, title)]),
    ...axes(isThin ? `${values.zero} · ${thinText(full)}` : values.zero, scales, layout, frame),
    ...comparedLines(values.compared, scales, layout, frame),
    ...(small || drawn.length > MOST_BANDS
      ? []
      : drawn.map(({ envelope, shade }) => band(envelope, scales, colourOf(shade, theme)))),
    ...full.map(({ envelope, shade }) => spans(envelope, scales, colourOf(shade, theme))),
    // Untreated seed, which all others are compared with, lies on top where there are many.
    ...[...drawn.filter(curve => isThin && !full.includes(curve)), ...full].map(curve => (
      curveMarkup(curve, scales, full.includes(curve) ? 5 + full.indexOf(curve) * WHISKER : undefined, frame))),
    ...columns.map((curve, i) => columnMarkup(curve, scales, labelX - 10 - (columns.length - i) * COLUMN, frame)),
    ...labels(drawn, scales, { x: labelX, width: room - 4, top: top + 4, bottom, lines: most, rows, size }, theme),
    ...lanesMarkup(shownLanes, scales.x, { top: lanesTop, right, width, id: frame.id, theme }),
    ...said.map((words, i) => text(12, lanesBottom + 22 + i * 17, theme.ink, words)),
  ];
  return {
    title,
    caption,
    description,
    table: tableOf(drawn),
    width,
    height,
    svg: framed(frame, height, { title, description }, body),
  };
}

/** Pixels: the labels of the curves need their room. */
function plotOf(curves: number, wanted: number | undefined): number {
  return wanted === undefined ? Math.max(230, Math.min(400, 44 * curves)) : Math.max(wanted, 24 * curves);
}

function scalesOf(
  drawn: readonly DrawnCurve[],
  { lanes, compared }: GerminationValues,
  { left, right, top, bottom }: Layout,
): Scales {
  const days = [
    0,
    ...compared,
    ...drawn.flatMap(({ envelope: { looks } }) => looks.map(({ day }) => day)),
    ...lanes.flatMap(({ bars }) => bars.map(({ from }) => from)),
  ];
  const [first, last] = [Math.min(...days), Math.max(...days)];
  const x = scaleLinear([first, Math.max(first + 1, last)], [left, right]);
  const y = scaleLinear([0, 1], [bottom, top]);
  return { x: day => x(day), y: share => y(share) };
}

function thinText(full: readonly DrawnCurve[]): string {
  return full.length > 0 ? 'boxes and intervals of untreated seed alone' : 'without boxes and intervals';
}

/** `aside`: how far its interval stands from its end; without it the curve has none, and no T50. */
function curveMarkup(curve: DrawnCurve, scales: Scales, aside: number | undefined, frame: Frame): Content {
  const { theme, small } = frame;
  const { envelope, shade, label, names } = curve;
  const colour = colourOf(shade, theme);
  const before = (day: number) => envelope.looks.findLast(look => look.day < day)?.known ?? 0;
  return joined([
    steps(envelope, scales, colour, shade),
    small || aside === undefined ? undefined : halfBar(envelope, scales, colour),
    aside === undefined ? undefined : whisker(envelope, scales, colour, aside),
    ...dots(
      envelope,
      scales,
      { fill: colour, shade, frame },
      {
        size: small ? 18 : 38,
        say: ({ day, known }) =>
          `${label} (${names}), day ${day}: ${known} of ${envelope.seeds} germinated = ${percentText(known / envelope.seeds)} %, ${known - before(day)} new`,
        lineOf: ({ day }) => curve.lookOn?.(day),
      },
    ),
  ]);
}

function columnMarkup({ courses, envelope, shade }: DrawnCurve, { y }: Scales, x: number, { theme }: Frame): Content {
  return remainsColumn(
    remainsOf(courses)!,
    { x, width: COLUMN - 3, from: envelope.germinated, yOf: seeds => y(seeds / envelope.seeds) },
    colourOf(shade, theme),
    theme,
  );
}

function axes(
  zero: string,
  { x, y }: Scales,
  layout: Layout,
  { theme, small, width }: Frame,
): Content[] {
  const { left, right, top, bottom } = layout;
  const shares = small ? [0, 0.5, 1] : [0, 0.25, 0.5, 0.75, 1];
  const size = TYPE.small;
  const ticks = dayTicks([dayAt(left), dayAt(right)], right - left);
  return [
    ...shares.flatMap(share => [
      line(left, y(share), right, y(share), share === 0 ? theme.soft : theme.grid),
      text(left - 6, y(share) + 4, theme.soft, String(100 * share), { size, anchor: 'end' }),
    ]),
    ...ticks.flatMap(day => [
      line(x(day), bottom, x(day), bottom + 4, theme.soft),
      text(x(day), bottom + 16, theme.soft, String(day), { size, anchor: 'middle' }),
    ]),
    ...(x(0) > left + 1 ? [line(x(0), top, x(0), bottom, theme.soft, { 'stroke-width': 1, 'class': 'zero' })] : []),
    ...(small
      ? [
          text(left, bottom + 29, theme.soft, fitText(`% germinated, by days from ${zero}`, size, width - left), {
            size,
          }),
        ]
      : [
          text(12, top - 11, theme.soft, '% of the seed', { size }),
          text(left, bottom + 30, theme.soft, fitText(`days from ${zero}`, size, width - left - 4), { size }),
        ]),
  ];

  function dayAt(pixels: number): number {
    return (pixels - x(0)) / (x(1) - x(0));
  }
}

/** Side by side, lines on one day have one label, and one that would lie on the label before has none. */
function comparedLines(
  compared: readonly number[],
  { x }: Scales,
  { top, bottom, right }: Layout,
  { theme, small }: Frame,
): Content[] {
  let free = 12 + textWidth('% of the seed', TYPE.small) + 8;
  return [...new Set(compared)]
    .sort((a, b) => a - b)
    .flatMap((day): Content[] => {
      const words = `compared on day ${day}`;
      const half = textWidth(words, TYPE.small) / 2;
      const middle = Math.min(x(day), right - half + 10);
      const isShown = !small && middle - half > free;
      if (isShown) free = middle + half;
      return [
        line(x(day), top - 4, x(day), bottom, theme.soft, {
          'class': 'compared',
          'stroke-dasharray': '1 3',
          'stroke-width': 1.25,
        }),
        ...(isShown ? [text(middle, top - 11, theme.soft, words, { size: TYPE.small, anchor: 'middle' })] : []),
      ];
    });
}
