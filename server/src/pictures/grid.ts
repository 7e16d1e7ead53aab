/** What lies where: containers with their slots as a grid, a letter and a colour for each plant. */
import type { JournalLine } from '../journal/journal-file.ts';
import type { Content } from './markup.ts';
import { framed, heading, isUntitled, line, marked, text, TYPE, type Frame, type Picture } from './picture.ts';
import { fitMiddle, fitText, textWidth, wrapText } from './text-size.ts';

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
/** The most lines of what is due in a slot, and how high one is. */
const DUE = { most: 4, height: 12 };

/** Undefined where nothing lies anywhere. */
export function gridPicture({ title, containers }: GridValues, frame: Frame): Picture | undefined {
  if (containers.every(({ slots }) => slots.length === 0)) return undefined;
  const { width, theme } = frame;
  const letters = lettersOf(containers.flatMap(({ slots }) => slots.map(({ plant }) => plant)));
  const { placed, height } = placedIn(containers, width, isUntitled(frame) ? 6 : 36);
  const body: Content[] = isUntitled(frame) ? [] : [heading(frame, title)];
  for (const { container: { name, slots }, x, top, columns, cell } of placed) {
    const room = columns * (CELL.width + CELL.gap) - CELL.gap;
    body.push(
      text(x, top + 16, theme.ink, fitMiddle(nameOf(name), TYPE.text, room, 'bold'), { weight: 'bold' }),
      line(x, top + 21, x + room, top + 21, theme.soft),
    );
    for (const [i, each] of slots.entries()) {
      const [column, row] = [i % columns, Math.floor(i / columns)];
      const corner = { x: x + column * (CELL.width + CELL.gap), top: top + HEADING + row * (cell + CELL.gap) };
      body.push(...slotMarkup(each, letters.get(each.plant)!, { ...corner, height: cell }, frame));
    }
  }
  const rows = containers.flatMap(({ name, slots }) => slots.map(({ slot, id, plant, due }) => [name, slot ?? '', id, plant, due ?? '']));
  const description = `What lies where. ${rows.map(cells => cells.filter(cell => cell !== '').join(', ')).join('. ')}.`;
  return {
    title, caption: '', description, width, height, table: { head: ['Place', 'Slot', 'What', 'Plant', 'Due'], rows },
    svg: framed(frame, height, { title, description }, body),
  };
}

function nameOf(name: string): string {
  return name === '' ? 'no container named' : name;
}

interface Placed {
  readonly container: GridContainer;
  readonly x: number;
  readonly top: number;
  readonly columns: number;
  /** How high its slots are. */
  readonly cell: number;
}

/** Containers beside one another as long as there is room, in their order. */
function placedIn(
  containers: readonly GridContainer[], width: number, first: number,
): { placed: Placed[]; height: number } {
  const most = Math.max(1, Math.floor((width - 24 + CELL.gap) / (CELL.width + CELL.gap)));
  const placed: Placed[] = [];
  let [column, top, bottom] = [0, first, first];
  for (const container of containers) {
    const { name, slots } = container;
    // A long name takes the room of more slots than there are.
    const named = Math.ceil((textWidth(nameOf(name), TYPE.text, 'bold') + CELL.gap) / (CELL.width + CELL.gap));
    const columns = Math.min(most, Math.max(slots.length, named));
    if (column > 0 && column + columns > most) [column, top] = [0, bottom];
    const cell = CELL.height + DUE.height * (Math.max(1, ...slots.map(({ due }) => dueLines(due).length)) - 1);
    placed.push({ container, x: 12 + column * (CELL.width + CELL.gap), top, columns, cell });
    bottom = Math.max(bottom, top + HEADING + Math.ceil(slots.length / columns) * (cell + CELL.gap) + 4);
    column += columns;
  }
  return { placed, height: bottom + 6 };
}

function dueLines(due: string | undefined): string[] {
  return due === undefined ? [] : wrapText(due, TYPE.small, CELL.width - 12, DUE.most);
}

interface Letter {
  readonly text: string;
  readonly colour: number;
}

interface Corner {
  readonly x: number;
  readonly top: number;
  readonly height: number;
}

function slotMarkup(each: GridSlot, letter: Letter, { x, top, height }: Corner, frame: Frame): Content[] {
  const { theme } = frame;
  const { slot, id, plant, due, line: record } = each;
  const size = TYPE.small;
  const isDue = due !== undefined;
  const says = [slot === undefined ? id : `slot ${slot}: ${id}`, plant, due].filter(part => part).join(', ');
  const below = isDue ? dueLines(due) : [fitText(plant, size, CELL.width - 12)];
  return [
    marked(frame, 'rect', {
      x, 'y': top, 'width': CELL.width, height, 'rx': 4, 'fill': 'none', 'class': isDue ? 'slot due' : 'slot',
      'stroke': isDue ? theme.alert : theme.soft, 'stroke-width': isDue ? 2.5 : 1,
    }, { says, line: record }),
    text(x + 7, top + 17, theme.agents[letter.colour]![1]!, letter.text, { size: TYPE.title, weight: 'bold' }),
    text(x + CELL.width - 6, top + 15, theme.soft, fitText(slot ?? '', size, 40), { size, anchor: 'end' }),
    text(x + 7, top + 29, theme.ink, fitMiddle(id, size, CELL.width - 12), { size }),
    ...below.map((words, i) => (
      text(x + 7, top + 41 + i * DUE.height, isDue ? theme.alert : theme.soft, words, { size }))),
  ];
}

/** Characters of a name of one word, such as GA3K, that stand for it. */
const SHORT = 4;

/**
 * The first letters of the words of a name; where two plants would have the same, more of the second word, and at last
 * a number. No two have the same.
 */
function lettersOf(plants: readonly string[]): Map<string, Letter> {
  const names = [...new Set(plants)];
  const lengths = Array.from({ length: SHORT }, (_, i) => i + 1);
  const shared = new Map<string, number>();
  for (const short of names.flatMap(plant => lengths.map(length => `${length} ${shortOf(plant, length)}`))) {
    shared.set(short, (shared.get(short) ?? 0) + 1);
  }
  const letters = new Map<string, Letter>();
  const used = new Set<string>();
  for (const plant of names) {
    const alone = lengths.find(length => shared.get(`${length} ${shortOf(plant, length)}`) === 1);
    const short = shortOf(plant, alone ?? SHORT);
    let name = short;
    for (let number = 2; used.has(name); number++) name = `${short} ${number}`;
    used.add(name);
    letters.set(plant, { text: name, colour: letters.size % 3 });
  }
  return letters;
}

function shortOf(plant: string, length: number): string {
  const [first, second] = plant.split(/\s+/u).filter(word => /^\p{L}/u.test(word)).map(word => Array.from(word));
  if (!first) return '?';
  return second ? `${first[0]}${second.slice(0, length).join('')}` : first.slice(0, SHORT).join('');
}
