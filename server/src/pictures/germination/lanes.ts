/** Soaks, cold and warm stages as bars under the axis of days. */
import { element, type Content, type Markup } from '../markup.ts';
import { text, TYPE } from '../picture.ts';
import { fitMiddle, fitText, textWidth } from '../text-size.ts';
import type { Theme } from '../theme.ts';

export type Treatment = 'soak' | 'cold' | 'warm';

/** A stretch of time that the seed spent in something; days from day 0, with parts of days. */
export interface Bar {
  readonly kind: Treatment;
  readonly from: number;
  /** Undefined: it goes on, or nobody wrote its end. */
  readonly to: number | undefined;
  /** Example: '4 C 90 days' */
  readonly text: string;
}

export interface Lane {
  /** Whose bars these are. Example: 'A, B' */
  readonly label: string;
  readonly bars: readonly Bar[];
}

export const LANE = 17;

/** A pattern for each kind, so that a printer without colours tells them apart. */
export function patterns(id: string, theme: Theme): Markup {
  const pattern = (kind: Treatment, size: number, d: string) =>
    element(
      'pattern',
      { id: `${id}-${kind}`, width: size, height: size, patternUnits: 'userSpaceOnUse' },
      element('rect', { 'width': size, 'height': size, 'fill': theme[kind], 'fill-opacity': 0.14 }),
      element('path', { d, 'stroke': theme[kind], 'stroke-width': 1, 'stroke-opacity': 0.5 }),
    );
  return element(
    'defs',
    {},
    pattern('soak', 4, 'M0,1h2M2,3h2'),
    pattern('cold', 6, 'M0,6L6,0'),
    pattern('warm', 6, 'M3,0V6'),
  );
}

interface Room {
  readonly left: number;
  readonly right: number;
  readonly y: number;
  /** Where whatever comes behind the bar begins. */
  readonly next: number;
}

/** Pixels of a bar at least, for an hour in a year is none. */
const THINNEST = 2.5;

/** A bar with its words in it, or behind it, or in short, or none where there is no room. */
function barMarkup(
  { kind, text: words }: Pick<Bar, 'kind' | 'text'>,
  { left, right, y, next }: Room,
  { id, theme, isBare }: { id: string; theme: Theme; isBare: boolean },
): Content[] {
  const width = Math.max(THINNEST, right - left);
  const height = LANE - 4;
  const behind = left + width + 4;
  const isBehind = textWidth(words, TYPE.small) > width - 8 && textWidth(words, TYPE.small) < next - behind - 4;
  const inside = isBehind ? words : fitText(words, TYPE.small, width - 8);
  const isShown = inside === words || textWidth(inside, TYPE.small) > SHORTEST;
  return [
    element(
      'rect',
      { class: kind, x: left, y, width, height, fill: `url(#${id}-${kind})`, stroke: theme[kind], rx: 2 },
      element('title', {}, words),
    ),
    isShown && !isBare
      ? text(isBehind ? behind : left + 4, y + height - 3, theme.ink, inside, { size: TYPE.small, halo: theme.paper })
      : undefined,
  ];
}

/** Fewer pixels of words than this say nothing. */
const SHORTEST = 34;

/** The lanes below one another, with whose they are at the right where there are several. */
export function lanesMarkup(
  lanes: readonly Lane[],
  x: (day: number) => number,
  { top, right, width, id, theme }: { top: number; right: number; width: number; id: string; theme: Theme },
): Content[] {
  return lanes.flatMap(({ label, bars }, i) => {
    const y = top + i * LANE;
    // In a narrow picture the words of a short bar stand together with whose they are, beyond the plot too.
    const beyond = lanes.length > 1 && bars.length === 1 ? beyondOf(bars[0]!, x, right) : undefined;
    const whose = beyond === undefined ? label : `${label}: ${bars[0]!.text}`;
    const from = beyond ?? right + 8;
    return [
      lanes.length > 1
        ? text(from, y + 10, theme.soft, fitMiddle(whose, TYPE.small, width - from - 4), { size: TYPE.small })
        : undefined,
      ...bars.flatMap(bar => {
        const next = Math.min(right, ...bars.filter(({ from }) => from > bar.from).map(({ from }) => x(from)));
        const end = bar.to === undefined ? right : Math.min(right, x(bar.to));
        return barMarkup(bar, { left: x(bar.from), right: end, y, next }, { id, theme, isBare: beyond !== undefined });
      }),
    ];
  });
}

/** Where a bar ends that has no room for its words, neither in it nor behind it up to the right; else undefined. */
function beyondOf({ from, to, text: words }: Bar, x: (day: number) => number, right: number): number | undefined {
  const left = x(from);
  const end = left + Math.max(THINNEST, (to === undefined ? right : Math.min(right, x(to))) - left);
  const isRoom = textWidth(words, TYPE.small) <= Math.max(end - left - 8, right - end - 8);
  return isRoom ? undefined : end + 4;
}
