/** What lies where: containers with their slots as a grid, a letter and a colour for each plant. */
import type { JournalLine } from '../journal/journal-file.ts';
import type { Content } from './markup.ts';
import { framed, heading, isUntitled, marked, text, TYPE, type Frame, type Picture } from './picture.ts';
import { fitMiddle, fitText } from './text-size.ts';

export interface GridSlot {
  /** Example: '3'; undefined for a place without a slot. */
  readonly slot: string | undefined;
  readonly id: string;
  /** What is told apart: the plant, or what is in a bottle. */
  readonly plant: string;
  /** What is due there; undefined where nothing is. */
  readonly due: string | undefined;
  /** The record that put it there. */
  readonly line?: JournalLine;
}

export interface GridContainer {
  readonly name: string;
  readonly slots: readonly GridSlot[];
}

export interface GridValues {
  readonly title: string;
  readonly containers: readonly GridContainer[];
}

const CELL = { width: 112, height: 46, gap: 6 };
const HEADING = 26;

/** Undefined where nothing lies anywhere. */
export function gridPicture({ title, containers }: GridValues, frame: Frame): Picture | undefined {
  if (containers.every(({ slots }) => slots.length === 0)) return undefined;
  const { width, theme } = frame;
  const columns = Math.max(1, Math.floor((width - 24 + CELL.gap) / (CELL.width + CELL.gap)));
  const letters = lettersOf(containers);
  let y = isUntitled(frame) ? 6 : 36;
  const body: Content[] = isUntitled(frame) ? [] : [heading(frame, title)];
  for (const { name, slots } of containers) {
    body.push(text(12, y + 16, theme.ink, fitText(name === '' ? 'no container named' : name, TYPE.text, width - 24, 'bold'), { weight: 'bold' }));
    y += HEADING;
    for (const [i, each] of slots.entries()) {
      const [column, row] = [i % columns, Math.floor(i / columns)];
      const at = { x: 12 + column * (CELL.width + CELL.gap), top: y + row * (CELL.height + CELL.gap) };
      body.push(...slotMarkup(each, letters.get(each.plant)!, at, frame));
    }
    y += Math.ceil(slots.length / columns) * (CELL.height + CELL.gap) + 4;
  }
  const height = y + 6;
  const rows = containers.flatMap(({ name, slots }) => slots.map(({ slot, id, plant, due }) => [name, slot ?? '', id, plant, due ?? '']));
  const description = `What lies where. ${rows.map(cells => cells.filter(cell => cell !== '').join(', ')).join('. ')}.`;
  return {
    title, caption: '', description, width, height, table: { head: ['Place', 'Slot', 'What', 'Plant', 'Due'], rows },
    svg: framed(frame, height, { title, description }, body),
  };
}

interface Letter {
  readonly text: string;
  readonly colour: number;
}

interface Corner {
  readonly x: number;
  readonly top: number;
}

function slotMarkup(each: GridSlot, letter: Letter, { x, top }: Corner, frame: Frame): Content[] {
  const { theme } = frame;
  const { slot, id, plant, due, line } = each;
  const size = TYPE.small;
  const isDue = due !== undefined;
  const says = [slot === undefined ? id : `slot ${slot}: ${id}`, plant, due].filter(part => part).join(', ');
  return [
    marked(frame, 'rect', {
      x, 'y': top, 'width': CELL.width, 'height': CELL.height, 'rx': 4, 'fill': 'none', 'class': isDue ? 'slot due' : 'slot',
      'stroke': isDue ? theme.alert : theme.soft, 'stroke-width': isDue ? 2.5 : 1,
    }, { says, line }),
    text(x + 7, top + 17, theme.agents[letter.colour]![1]!, letter.text, { size: TYPE.title, weight: 'bold' }),
    text(x + CELL.width - 6, top + 15, theme.soft, fitText(slot ?? '', size, 40), { size, anchor: 'end' }),
    text(x + 7, top + 29, theme.ink, fitMiddle(id, size, CELL.width - 12), { size }),
    text(x + 7, top + 41, isDue ? theme.alert : theme.soft, fitText(due ?? plant, size, CELL.width - 12), { size }),
  ];
}

/** Characters of a name of one word, such as GA3K, that stand for it. */
const SHORT = 4;

/** The first letters of the words of a name, with a number where two plants would have the same. */
function lettersOf(containers: readonly GridContainer[]): Map<string, Letter> {
  const letters = new Map<string, Letter>();
  const used = new Map<string, number>();
  for (const { plant } of containers.flatMap(({ slots }) => slots)) {
    if (letters.has(plant)) continue;
    const words = plant.split(/\s+/u).filter(word => /^\p{L}/u.test(word));
    const [only] = words.length === 1 ? words : [];
    const short = only?.slice(0, SHORT) ?? (words.slice(0, 2).map(word => Array.from(word)[0]!).join('') || '?');
    const number = (used.get(short) ?? 0) + 1;
    used.set(short, number);
    letters.set(plant, { text: number === 1 ? short : `${short}${number}`, colour: letters.size % 3 });
  }
  return letters;
}
