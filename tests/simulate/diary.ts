/** The records that a grower writes of seed that was grown in season.ts. */
import { isoOf, type Day } from '../../server/src/model/day.ts';
import { between, type Random } from './random.ts';
import { growDish, type Dish, type Nature, type Scatter, type Seedling } from './season.ts';

export interface Line {
  readonly day: Day;
  readonly text: string;
}

/** How the season of a side ends after its last look: cut open, thrown away, or left standing. */
export type End = 'cut' | 'discard' | 'open';

/** One treatment of a lot. */
export interface Side {
  /** As it stands in the record of the soak: 'GA3 500 ppm', 'water'. */
  readonly soak: string;
  /** The seeds of each dish. */
  readonly dishes: readonly number[];
  readonly nature: Nature;
  /** Days from day 0, ascending. */
  readonly looks: readonly number[];
  readonly end: End;
}

export interface SimulatedLot {
  readonly id: string;
  readonly plant?: string;
  readonly sides: readonly Side[];
  readonly scatter: Scatter;
  /** The day of the sowing; 1 January 2026 where nothing is said. */
  readonly dayZero?: Day;
}

export const DAY_ZERO: Day = 20_454;

/** Grows a lot and writes what is seen of it, in the order in which it is done. */
export function diaryOf(random: Random, { id, plant = 'Adonis vernalis', sides, scatter, dayZero = DAY_ZERO }: SimulatedLot): Line[] {
  const dishes = sides.flatMap((side, i) => side.dishes.map((seeds, j) => ({ side, seeds, part: `${'ABCDEFGH'[i]!}${j + 1}` })));
  const all = dishes.reduce((sum, { seeds }) => sum + seeds, 0);
  const start: Line[] = [
    { day: -Infinity, text: `lot ${id} ${plant}, ${all} seeds` },
    { day: -Infinity, text: `split ${id}, ${dishes.map(({ part, seeds }) => `${part} ${seeds} seeds`).join(', ')}` },
    ...dishes.flatMap(({ side, part }) => [
      { day: dayZero - 1, text: `soak ${id}/${part} ${isoOf(dayZero - 1)} 18:00, ${side.soak}, 24 h` },
      { day: dayZero, text: `lift ${id}/${part} ${isoOf(dayZero)} 18:00` },
      { day: dayZero, text: `sow ${id}/${part} ${isoOf(dayZero)} 19:00, 15 C` },
    ]),
  ];
  const counts = dishes.flatMap(({ side, seeds, part }) => (
    countsOf(random, growDish(random, seeds, side.nature, scatter), side, `${id}/${part}`, dayZero)));
  return [...start, ...counts.sort((a, b) => a.day - b.day)];
}

/** The journal as it stood in the evening of a day. */
export function textOf(lines: readonly Line[], until: Day = Infinity): string {
  let text = '';
  for (const { day, text: line } of lines) if (day <= until) text += `${line}\n`;
  return text;
}

const SEEN = ['leggy', 'abnormal', 'dies'] as const satisfies readonly (keyof Seedling)[];
const WORDS = { leggy: 'leggy', abnormal: 'abnormal', dies: 'died' };

export function countsOf(random: Random, dish: Dish, { looks, end }: Pick<Side, 'looks' | 'end'>, path: string, dayZero: Day): Line[] {
  const lines: Line[] = [];
  let before = -Infinity;
  for (const look of looks) {
    const isNew = (day: number) => day > before && day <= look;
    const facts = [String(dish.seedlings.filter(({ up }) => isNew(up)).length)];
    for (const what of SEEN) {
      // Nobody sees what becomes of a seedling before the look that finds it.
      const n = dish.seedlings.filter(each => isNew(each[what])).length;
      if (n > 0) facts.push(`${n} ${WORDS[what]}`);
    }
    const rotted = dish.rots.filter(isNew).length;
    if (rotted > 0) facts.push(`${rotted} rotted`);
    lines.push({ day: dayZero + look, text: `count ${path} ${isoOf(dayZero + look)}, ${facts.join(', ')}` });
    before = look;
  }
  if (end !== 'open') lines.push({ day: dayZero + before, text: closing(random, dish, end, before, `${path} ${isoOf(dayZero + before)}`) });
  return lines;
}

function closing(random: Random, { seeds, seedlings, rots }: Dish, end: 'cut' | 'discard', day: number, where: string): string {
  const coming = seedlings.filter(({ up }) => up > day).length;
  const left = seeds - (seedlings.length - coming) - rots.filter(rot => rot <= day).length;
  if (end === 'discard' || left === 0) return `discard ${where}`;
  const sorted = { fresh: coming, dead: 0, empty: 0 };
  const fresh = between(random, 0, 0.6);
  for (let i = coming; i < left; i++) {
    const chance = random();
    sorted[chance < fresh ? 'fresh' : chance < 0.9 ? 'dead' : 'empty']++;
  }
  const facts = Object.entries(sorted).filter(([, n]) => n > 0).map(([what, n]) => `${n} ${what}`);
  return `cut ${where}, ${facts.join(', ')}`;
}
