/** What every picture is: markup with a title and a description, and the same numbers as a table. */
import type { JournalLine } from '../journal/journal-file.ts';
import { element, joined, type Content, type Markup } from './markup.ts';
import { fitText } from './text-size.ts';
import type { Theme } from './theme.ts';

/** The same numbers for whoever cannot or would rather not look. */
export interface DataTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface Picture {
  readonly title: string;
  /** In words, with the numbers. */
  readonly description: string;
  /** What the picture comes to, in a sentence or two, such as a verdict. */
  readonly caption: string;
  readonly table: DataTable;
  readonly width: number;
  readonly height: number;
  readonly svg: Markup;
}

export interface Frame {
  readonly theme: Theme;
  /** Pixels. */
  readonly width: number;
  /** `small` for a hover: fewer marks, no caption in the picture. */
  readonly small: boolean;
  /** Tells the parts of one picture of a page from those of another. */
  readonly id: string;
  /** Title and caption stand beside the picture, not in it. */
  readonly bare?: boolean;
  /** How high the plot of days may be, in pixels; without it the picture chooses. */
  readonly plot?: number;
  /** The way to a record, in the words of whoever shows the picture; without it the marks lead nowhere. */
  readonly wayTo?: (line: JournalLine) => string;
}

/** Sizes of type, in pixels. */
export const TYPE = { title: 14, text: 12, small: 11 } as const;

/** An SVG element with its frame; `body` is drawn on paper of the theme. */
export function framed(
  { theme, width, id, wayTo }: Frame, height: number, about: { readonly title: string; readonly description: string },
  body: readonly Content[],
): Markup {
  return element('svg', {
    'xmlns': 'http://www.w3.org/2000/svg', 'viewBox': `0 0 ${width} ${height}`, width, height, 'role': wayTo ? 'group' : 'img',
    'aria-labelledby': `${id}-title ${id}-desc`, 'font-family': 'system-ui, sans-serif', 'font-size': TYPE.text,
  },
  element('title', { id: `${id}-title` }, about.title),
  element('desc', { id: `${id}-desc` }, about.description),
  element('rect', { width, height, fill: theme.paper }),
  joined(body));
}

/** Neither title nor caption are drawn: they stand beside the picture, or there is no room for them. */
export function isUntitled({ small, bare = false }: Frame): boolean {
  return small || bare;
}

/** Characters of a record that are said beside its mark. */
const RECORD = 160;

/**
 * A mark of the picture with what it says to the pointer; where marks lead to the journal it also says its record, and
 * has the way there.
 */
export function marked(
  { wayTo }: Frame, name: string, attributes: Readonly<Record<string, string | number | undefined>>,
  { says, line: record }: { readonly says: string; readonly line: JournalLine | undefined },
): Markup {
  if (!wayTo || !record) return element(name, attributes, element('title', {}, says));
  const written = record.text.trim();
  const short = written.length > RECORD ? `${written.slice(0, RECORD)}…` : written;
  return element(
    name, { ...attributes, 'role': 'link', 'tabindex': -1, 'data-way': wayTo(record) },
    element('title', {}, `${says} · ${short}`));
}

export interface TextOptions {
  readonly size?: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly weight?: 'bold' | undefined;
  readonly halo?: string;
}

/** Text with its baseline at y. A halo in the colour of the paper keeps it readable above lines. */
export function text(x: number, y: number, fill: string, content: string, options: TextOptions = {}): Markup {
  const { size, anchor, weight, halo } = options;
  return element('text', {
    x, y, fill, 'font-size': size, 'font-weight': weight, 'text-anchor': anchor === 'start' ? undefined : anchor,
    ...(halo !== undefined && { 'stroke': halo, 'stroke-width': 3, 'paint-order': 'stroke', 'stroke-linejoin': 'round' }),
  }, content);
}

/** The title at the head of a picture, with an ellipsis where it would run into what stands at the right. */
export function heading({ theme, width }: Frame, title: string, room = width - 24): Markup {
  return text(12, 21, theme.ink, fitText(title, TYPE.title, room, 'bold'), { size: TYPE.title, weight: 'bold' });
}

/** A straight line. */
export function line(
  x1: number, y1: number, x2: number, y2: number, stroke: string, more: Readonly<Record<string, string | number>> = {},
): Markup {
  return element('line', { x1, y1, x2, y2, stroke, ...more });
}
