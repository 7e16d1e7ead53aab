/** What became of the seed that did not germinate: a column on top of the curve's end, as the cut test sorted it. */
import { cutFaultOf, finalTotal, type Course } from '../../measures/course.ts';
import { element, type Markup } from '../markup.ts';
import type { Theme } from '../theme.ts';

/** From the bottom up; `left` are seeds that nobody has cut open. */
export const REMAINS = ['fresh', 'hard', 'dead', 'empty', 'rotted'] as const;

export type Remains = Readonly<Record<(typeof REMAINS)[number], number>>;

/** The sorted seeds of all batches; undefined unless each of them has a cut test that adds up. */
export function remainsOf(courses: readonly Course[]): Remains | undefined {
  if (courses.some(course => cutFaultOf(course))) return undefined;
  const sum = (of: (course: Course) => number): number => courses.reduce((total, course) => total + of(course), 0);
  return {
    fresh: sum(({ cut }) => cut!.fresh), hard: sum(({ cut }) => cut!.hard),
    dead: sum(({ cut }) => cut!.dead), empty: sum(({ cut }) => cut!.empty),
    rotted: sum(course => finalTotal(course, 'rotted')),
  };
}

/** Example: '4 fresh, 1 dead' */
export function remainsText(remains: Remains): string {
  return REMAINS.filter(what => remains[what] > 0).map(what => `${remains[what]} ${what}`).join(', ') || 'nothing left';
}

/** Sound seed is open, hard seed barred, dead and rotted seed filled, empty seed dotted. */
export function remainsColumn(
  remains: Remains, { x, width, yOf, from }: { x: number; width: number; yOf: (seeds: number) => number; from: number },
  stroke: string, { paper }: Theme,
): Markup {
  let below = from;
  const parts = REMAINS.filter(what => remains[what] > 0).map(what => {
    const [bottom, top] = [yOf(below), yOf(below + remains[what])];
    below += remains[what];
    return element('g', { class: what },
      element('title', {}, `${remains[what]} ${what}`),
      element('rect', {
        x, y: top, width, height: bottom - top, stroke, 'stroke-width': 1,
        'fill': what === 'dead' || what === 'rotted' ? stroke : paper, 'fill-opacity': what === 'dead' ? 0.55 : undefined,
        'stroke-dasharray': what === 'empty' ? '1.5 1.5' : undefined,
      }),
      what === 'hard' ? bars(x, width, top, bottom, stroke) : undefined);
  });
  return element('g', { class: 'remains' }, ...parts);
}

function bars(x: number, width: number, top: number, bottom: number, stroke: string): Markup {
  const rows = Math.max(0, Math.floor((bottom - top) / 4));
  const d = Array.from({ length: rows }, (_, i) => `M${x},${(bottom - 2 - 4 * i).toFixed(1)}h${width}`).join('');
  return element('path', { d, stroke, 'stroke-width': 1 });
}
