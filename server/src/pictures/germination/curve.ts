/** One treatment as a curve: steps at the looks, what may have been between them, intervals, and the end. */
import {
  symbol, symbolCircle, symbolCross, symbolDiamond2, symbolSquare2, symbolStar, symbolTriangle, symbolWye,
  type SymbolType,
} from 'd3-shape';
import type { JournalLine } from '../../journal/journal-file.ts';
import { isUndefined } from '../../measures/measured.ts';
import { wilson } from '../../measures/proportion.ts';
import { dayText } from '../../measures/verdict-words.ts';
import { element, shortNumber, type Markup } from '../markup.ts';
import { line, marked, type Frame } from '../picture.ts';
import type { Theme } from '../theme.ts';
import type { Envelope, Look } from './envelope.ts';

interface Marks {
  /** Which shape its marks have. */
  readonly number: number;
  /** Which dashes, where others of its kind have its shape; without it each shape of untreated seed has its own. */
  readonly dash?: number;
}

/** What tells a curve from the others: by its colour, and without one by dash, weight and the shape of its marks. */
export type Shade = Marks & (
  | { readonly kind: 'untreated' }
  /** `rung` goes from 0 for the weakest dose of an agent to 1 for the strongest. */
  | { readonly kind: 'treated'; readonly agent: number; readonly rung: number }
);

export interface Scales {
  readonly x: (day: number) => number;
  /** From a share, 0 to 1. */
  readonly y: (share: number) => number;
}

const SHAPES: readonly SymbolType[] = [
  symbolCircle, symbolSquare2, symbolTriangle, symbolDiamond2, symbolStar, symbolCross, symbolWye,
];
/** Short for untreated seed; what was treated is whole, or has long dashes. */
const DASHES = { untreated: ['6 3', '2 3', '6 3 2 3'], treated: [undefined, '16 3', '16 3 3 3'] } as const;

export function colourOf(shade: Shade, theme: Theme): string {
  if (shade.kind === 'untreated') return theme.untreated;
  const ramp = theme.agents[shade.agent % theme.agents.length]!;
  return ramp[Math.round(shade.rung * (ramp.length - 1))]!;
}

/** Untreated seed is dashed; a stronger dose is drawn more heavily. */
function strokeOf(shade: Shade): Readonly<Record<string, string | number | undefined>> {
  const { kind, number, dash = kind === 'untreated' ? number : Math.floor(number / SHAPES.length) } = shade;
  return {
    'stroke-width': shade.kind === 'untreated' ? 1.75 : 1.5 + 1.25 * shade.rung,
    'stroke-dasharray': DASHES[kind][dash % DASHES[kind].length],
  };
}

/** The line that is known: level from look to look. */
export function steps({ looks, seeds }: Envelope, { x, y }: Scales, stroke: string, shade: Shade): Markup {
  const [first, ...rest] = looks;
  const path = rest.map(({ day, known }) => `H${at(x(day))}V${at(y(known / seeds))}`).join('');
  return element('path', {
    'class': 'steps',
    'd': `M${at(x(first!.day))},${at(y(first!.known / seeds))}${path}`,
    'fill': 'none',
    stroke,
    'stroke-linejoin': 'round',
    ...strokeOf(shade),
  });
}

/** Between two looks the seed that the second one found may have come up at any time: a box from look to look. */
export function spans({ looks, seeds }: Envelope, { x, y }: Scales, fill: string): Markup | undefined {
  const boxes = looks.slice(1).flatMap((look, i) => {
    const before = looks[i]!;
    return look.possible > before.known
      ? [box(x(before.day), x(look.day), y(look.possible / seeds), y(before.known / seeds))]
      : [];
  });
  if (boxes.length === 0) return undefined;
  return element('path', {
    'class': 'spans',
    'd': boxes.join(''),
    fill,
    'fill-opacity': 0.16,
    'stroke': fill,
    'stroke-opacity': 0.45,
    'stroke-width': 0.5,
  });
}

/** The 95 % Wilson interval from look to look, as a band behind the line. */
export function band({ looks, seeds }: Envelope, { x, y }: Scales, fill: string): Markup | undefined {
  const boxes = looks
    .slice(1)
    .map((look, i) => {
      const { low, high } = wilson(looks[i]!.known, seeds);
      return looks[i]!.isLook ? box(x(looks[i]!.day), x(look.day), y(high), y(low)) : '';
    })
    .join('');
  return boxes === '' ? undefined : element('path', { 'class': 'band', 'd': boxes, fill, 'fill-opacity': 0.09 });
}

/** The same interval at the last look, as a whisker. */
export function whisker(
  { looks, seeds, germinated }: Envelope,
  { x, y }: Scales,
  stroke: string,
  aside: number,
): Markup {
  const { low, high } = wilson(germinated, seeds);
  const middle = x(looks.at(-1)!.day) + aside;
  const [top, bottom] = [y(high), y(low)];
  return element(
    'g',
    { 'class': 'interval', 'stroke-width': 1.25 },
    ...[
      [middle, top, middle, bottom],
      [middle - 2, top, middle + 2, top],
      [middle - 2, bottom, middle + 2, bottom],
    ].map(([x1, y1, x2, y2]) => line(x1!, y1!, x2!, y2!, stroke)),
  );
}

export interface DotOptions {
  /** What the dot says to the pointer. */
  readonly say: (look: Look) => string;
  /** The record of the look. */
  readonly lineOf: (look: Look) => JournalLine | undefined;
  readonly size: number;
}

/** A mark at each look. */
export function dots(
  { looks, seeds }: Envelope,
  { x, y }: Scales,
  { fill, shade, frame }: { fill: string; shade: Shade; frame: Frame },
  { say, lineOf, size }: DotOptions,
): Markup[] {
  const { paper } = frame.theme;
  const hollow = shade.kind === 'untreated';
  // An open mark is larger, so that it shows around a filled one at the same place.
  const d = symbol(SHAPES[shade.number % SHAPES.length], hollow ? 1.6 * size : size).digits(2)()!;
  return looks
    .filter(({ isLook }) => isLook)
    .map(look =>
      marked(
        frame,
        'path',
        {
          'class': 'look',
          d,
          'transform': `translate(${at(x(look.day))},${at(y(look.known / seeds))})`,
          'fill': hollow ? paper : fill,
          'stroke': hollow ? fill : paper,
          'stroke-width': hollow ? 1.5 : 1,
        },
        { says: say(look), line: lineOf(look) },
      ),
    );
}

/** The days between which half of what germinated was up, as a pale bar at that height. */
export function halfBar({ half, seeds }: Envelope, { x, y }: Scales, stroke: string): Markup | undefined {
  if (isUndefined(half)) return undefined;
  const height = y(half.seeds / seeds);
  return element(
    'g',
    { class: 'half' },
    element('title', {}, `T50: ${dayText({ after: half.from, by: half.to })}`),
    line(x(half.from), height, x(half.to), height, stroke, { 'stroke-width': 6, 'stroke-opacity': 0.45 }),
  );
}

function box(left: number, right: number, top: number, bottom: number): string {
  return `M${at(left)},${at(bottom)}V${at(top)}H${at(right)}V${at(bottom)}Z`;
}

function at(value: number): string {
  return shortNumber(value);
}
