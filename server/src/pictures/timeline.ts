/** Soaks, cold and warm stages of batches on an axis of dates, as they were and as they are planned, with today. */
import { scaleLinear } from 'd3-scale';
import type { JournalLine } from '../journal/journal-file.ts';
import { isoOf, type Day } from '../model/day.ts';
import { patterns, type Treatment } from './germination/lanes.ts';
import type { Content } from './markup.ts';
import { monthTicks } from './month-ticks.ts';
import { framed, heading, isUntitled, line, marked, text, TYPE, type DataTable, type Frame, type Picture } from './picture.ts';
import { fitMiddle, fitText, textWidth, wrapText } from './text-size.ts';
import type { Theme } from './theme.ts';

export interface Stretch {
  readonly kind: Treatment;
  readonly from: Day;
  /** Undefined: its end is not known. */
  readonly to: Day | undefined;
  readonly isPlanned: boolean;
  /** Example: '4 C 90 days' */
  readonly text: string;
  /** The record that it began with. */
  readonly line?: JournalLine | undefined;
}

export interface TimelineRow {
  /** Example: 'PEN-26/A' */
  readonly label: string;
  /** Rows with one after another share a heading. Example: 'fridge box 2' */
  readonly heading: string | undefined;
  readonly stretches: readonly Stretch[];
  readonly sown: Day | undefined;
  readonly sownIn?: JournalLine | undefined;
  /** What is due next. */
  readonly due: { readonly day: Day; readonly what: string; readonly line?: JournalLine } | undefined;
}

export interface TimelineValues {
  readonly title: string;
  readonly rows: readonly TimelineRow[];
  readonly today: Day;
}

const SIGNS = 'triangle: sown · diamond: due next · hatched: cold · barred: warm · dots: soak · dashed outline: planned';
/** Pixels from line to line of what the signs mean. */
const SIGN = 15;
const ROW = 20;
const BAR = 13;

/** Undefined where there is no row. */
export function timelinePicture(values: TimelineValues, frame: Frame): Picture | undefined {
  const { rows, title, today } = values;
  if (rows.length === 0) return undefined;
  const { width, small, theme } = frame;
  const days = [today, ...rows.flatMap(daysOf)];
  const [first, last] = [Math.min(...days), Math.max(...days)];
  const left = small
    ? 12
    : Math.min(0.3 * width, Math.max(60, ...rows.map(({ label }) => textWidth(label, TYPE.small) + 20)));
  const right = width - 24;
  const x = scaleLinear([first - 2, Math.max(first + 10, last + 2)], [left, right]);
  const placed = placedRows(rows, small ? 26 : 58);
  const bottom = placed.at(-1)!.y + ROW;
  const signs = small ? [] : wrapText(SIGNS, TYPE.small, width - 24, 3);
  const height = bottom + 26 + signs.length * SIGN;
  const description = describe(values);
  const body: Content[] = [
    patterns(frame.id, theme),
    isUntitled(frame) ? undefined : heading(frame, title),
    ...signs.map((words, i) => text(12, bottom + 32 + i * SIGN, theme.soft, words, { size: TYPE.small })),
    ...monthTicks([first, last], right - left).flatMap(({ day, text: name }) => [
      line(x(day), small ? 18 : 46, x(day), bottom, theme.grid),
      text(Math.min(Math.max(x(day), 16), right), bottom + 15, theme.soft, name, { size: TYPE.small, anchor: 'middle' }),
    ]),
    ...placed.flatMap(({ row, y, heading }) => [
      ...(heading === undefined || small
        ? []
        : [text(12, y - 6, theme.soft, fitText(heading, TYPE.small, width - 24), { size: TYPE.small })]),
      ...(small
        ? []
        : [text(12, y + 11, theme.ink, fitMiddle(row.label, TYPE.small, left - 16), { size: TYPE.small })]),
      ...rowMarkup(row, y, day => x(day), right, frame),
    ]),
    line(x(today), small ? 18 : 46, x(today), bottom, theme.alert, {
      'class': 'today',
      'stroke-width': 1.5,
      'stroke-dasharray': '5 2',
    }),
    todayText(x(today), left, right, small ? 13 : 42, frame),
  ];
  return {
    title,
    caption: '',
    description,
    table: tableOf(values),
    width,
    height,
    svg: framed(frame, height, { title, description }, body),
  };
}

/** The word beside its line, never beyond the plot. */
function todayText(at: number, left: number, right: number, y: number, { theme }: Frame): Content {
  const half = textWidth('today', TYPE.small) / 2;
  return text(Math.max(left + half, Math.min(right - half, at)), y, theme.alert, 'today', {
    size: TYPE.small,
    anchor: 'middle',
    weight: 'bold',
  });
}

function placedRows(
  rows: readonly TimelineRow[],
  top: number,
): { row: TimelineRow; y: number; heading: string | undefined }[] {
  let y = top;
  let before: string | undefined;
  return rows.map((row, i) => {
    const isNew = row.heading !== undefined && (i === 0 || row.heading !== before);
    before = row.heading;
    if (isNew) y += ROW - 2;
    const placed = { row, y, heading: isNew ? row.heading : undefined };
    y += ROW;
    return placed;
  });
}

function daysOf({ stretches, sown, due }: TimelineRow): Day[] {
  return [
    ...stretches.flatMap(({ from, to }) => [from, to ?? from]),
    ...[sown, due?.day].filter(day => day !== undefined),
  ];
}

/** What is planned is paler and has a dashed outline. */
function rowMarkup(
  { stretches, sown, sownIn, due }: TimelineRow,
  y: number,
  x: (day: Day) => number,
  right: number,
  frame: Frame,
): Content[] {
  const { id, theme } = frame;
  const bars = stretches.flatMap(({ kind, from, to, isPlanned, text: words, line: record }): Content[] => {
    const [start, end] = [x(from), to === undefined ? right : x(to)];
    const width = Math.max(2.5, end - start);
    const inside = fitText(words, TYPE.small, width - 8);
    const isShown = inside === words || textWidth(inside, TYPE.small) > 30;
    return [
      marked(
        frame,
        'rect',
        {
          'class': isPlanned ? `${kind} planned` : kind,
          'x': start,
          y,
          width,
          'height': BAR,
          'rx': 2,
          'stroke': theme[kind],
          'fill': `url(#${id}-${kind})`,
          'fill-opacity': isPlanned ? 0.5 : undefined,
          'stroke-dasharray': isPlanned ? '3 2' : undefined,
        },
        { says: `${words}${isPlanned ? ', planned' : ''}: ${spanText(from, to)}`, line: record },
      ),
      isShown ? text(start + 4, y + BAR - 3, theme.ink, inside, { size: TYPE.small, halo: theme.paper }) : undefined,
    ];
  });
  const mark = (day: Day, d: string, fill: string, about: { says: string; line: JournalLine | undefined }): Content =>
    marked(
      frame,
      'path',
      { class: 'mark', d, fill, stroke: theme.paper, transform: `translate(${x(day).toFixed(2)},${y + BAR / 2})` },
      about,
    );
  return [
    ...bars,
    sown === undefined ? undefined : mark(sown, 'M-5,-7L5,-7L0,2Z', theme.ink, { says: `sown ${isoOf(sown)}`, line: sownIn }),
    due &&
      dueText(
        due.what,
        x(due.day) + 10,
        y,
        { room: right - x(due.day), isFree: stretches.every(({ to }) => to !== undefined && to <= due.day) },
        theme,
      ),
    due && mark(due.day, 'M0,-7L6,0L0,7L-6,0Z', theme.alert, { says: `${due.what}, ${isoOf(due.day)}`, line: due.line }),
  ];
}

/** Beside its mark, where nothing is drawn there. */
function dueText(
  what: string,
  x: number,
  y: number,
  { room, isFree }: { room: number; isFree: boolean },
  theme: Theme,
): Content {
  if (!isFree) return undefined;
  const words = fitText(what, TYPE.small, room - 4);
  return words === what ? text(x, y + BAR - 3, theme.ink, words, { size: TYPE.small, halo: theme.paper }) : undefined;
}

function spanText(from: Day, to: Day | undefined): string {
  return `${isoOf(from)} to ${to === undefined ? 'an unknown end' : isoOf(to)}`;
}

function describe({ rows, today }: TimelineValues): string {
  const said = rows.map(({ label, stretches, sown, due }) => {
    const parts = [
      sown === undefined ? undefined : `sown ${isoOf(sown)}`,
      ...stretches.map(
        ({ text: words, from, to, isPlanned }) => `${words} ${spanText(from, to)}${isPlanned ? ' (planned)' : ''}`,
      ),
      due && `due ${isoOf(due.day)}: ${due.what}`,
    ];
    return `${label}: ${parts.filter(part => part !== undefined).join('; ') || 'nothing yet'}.`;
  });
  return [`Today is ${isoOf(today)}.`, ...said].join(' ');
}

function tableOf({ rows }: TimelineValues): DataTable {
  return {
    head: ['Batch', 'What', 'From', 'To', ''],
    rows: rows.flatMap(({ label, stretches, due }) => [
      ...stretches.map(({ text: words, from, to, isPlanned }) => [
        label,
        words,
        isoOf(from),
        to === undefined ? '–' : isoOf(to),
        isPlanned ? 'planned' : '',
      ]),
      ...(due ? [[label, due.what, isoOf(due.day), isoOf(due.day), 'due']] : []),
    ]),
  };
}
