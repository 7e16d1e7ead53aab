/** What is left of each bottle and each packet, with its strength, its error, and its age. */
import { scaleLinear } from 'd3-scale';
import { element, type Content } from './markup.ts';
import { framed, heading, line, text, TYPE, type Frame, type Picture } from './picture.ts';
import { fitMiddle, fitText, textWidth } from './text-size.ts';

export interface ShelfRow {
  readonly name: string;
  /** Example: 'GA3 1000 ppm (910 to 1090)' */
  readonly holds: string;
  /** Parts of what it held at first, from 0 to 1; undefined where that is not known. */
  readonly left: { readonly least: number; readonly most: number } | undefined;
  /** Example: '8 mL of 18 mL' */
  readonly words: string;
  /** Example: '3 months old, good until 2026-06-01' */
  readonly age: string;
  readonly state: 'good' | 'near' | 'expired';
}

export interface ShelfValues {
  readonly title: string;
  readonly rows: readonly ShelfRow[];
}

const ROW = 48;
const BAR = 10;

/** Undefined where nothing stands there. */
export function shelfPicture({ title, rows }: ShelfValues, frame: Frame): Picture | undefined {
  if (rows.length === 0) return undefined;
  const { width, small, theme } = frame;
  const size = TYPE.small;
  const top = small ? 8 : 36;
  const height = top + rows.length * ROW + 10;
  const left = Math.min(0.34 * width, Math.max(60, ...rows.map(({ name }) => textWidth(name, size, 'bold') + 22)));
  const scale = scaleLinear([0, 1], [left, width - 24]);
  const x = (part: number): number => scale(part);
  const body: Content[] = [
    ...small ? [] : [heading(frame, title)],
    ...rows.flatMap((row, i): Content[] => {
      const y = top + i * ROW;
      const late = row.state !== 'good';
      return [
        text(12, y + 12, theme.ink, fitMiddle(row.name, size, left - 18, 'bold'), { size, weight: 'bold' }),
        text(left, y + 12, theme.ink, fitText(`${row.holds} · ${row.words}`, size, width - 24 - left), { size }),
        element('rect', { x: left, y: y + 17, width: x(1) - left, height: BAR, fill: 'none', stroke: theme.soft, class: 'held' }),
        ...row.left ? [
          element('rect', { x: left, y: y + 17, width: x(row.left.least) - left, height: BAR, fill: theme.soak, class: 'left' }),
          element('rect', { 'x': x(row.left.least), 'y': y + 17, 'width': x(row.left.most) - x(row.left.least), 'height': BAR, 'fill': theme.soak, 'fill-opacity': 0.35, 'class': 'perhaps' }),
        ] : [line(left, y + 22, x(1), y + 22, theme.soft, { 'stroke-dasharray': '2 3' })],
        text(left, y + 39, late ? theme.alert : theme.soft, fitText(ageText(row), size, width - 24 - left), { size }),
      ];
    }),
  ];
  const said = rows.map(row => `${row.name}: ${row.holds}, ${row.words}, ${ageText(row)}`);
  const description = `What is left. ${said.join('. ')}.`;
  return {
    title, caption: '', description, width, height,
    table: { head: ['Name', 'Holds', 'Left', 'Age'], rows: rows.map(row => [row.name, row.holds, row.words, ageText(row)]) },
    svg: framed(frame, height, { title, description }, body),
  };
}

const LATE = { good: '', near: 'use up soon, ', expired: 'past its date, ' } as const;

function ageText({ age, state }: ShelfRow): string {
  return `${LATE[state]}${age}`;
}
