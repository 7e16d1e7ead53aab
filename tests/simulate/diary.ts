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
  /** Days from the sowing, ascending; or what somebody comes to that sees what becomes of the dish. */
  readonly looks: readonly number[] | ((dish: Dish) => readonly number[]);
  readonly end: End;
  /** Sown so many days after the lot's day 0. */
  readonly later?: number;
}

export interface SimulatedLot {
  readonly id: string;
  readonly plant?: string;
  readonly sides: readonly Side[];
  readonly scatter: Scatter;
  /** Days in the cold between soak and sowing. */
  readonly chill?: number;
}

/** 1 January 2026: the day of the sowing. */
export const DAY_ZERO: Day = 20_454;

/** What was written of a lot, and what became of its seed. */
export interface Grown {
  readonly lines: readonly Line[];
  readonly dishes: readonly Dish[];
}

/** Grows a lot and writes what is seen of it, in the order in which it is done. */
export function diaryOf(random: Random, lot: SimulatedLot): readonly Line[] {
  return grow(random, lot).lines;
}

export function grow(random: Random, { id, plant = 'Adonis vernalis', sides, scatter, chill = 0 }: SimulatedLot): Grown {
  const parts = sides.flatMap((side, i) => side.dishes.map((seeds, j) => ({ side, seeds, part: `${'ABCDEFGH'[i]!}${j + 1}` })));
  const all = parts.reduce((sum, { seeds }) => sum + seeds, 0);
  const start: Line[] = [
    { day: 0, text: `lot ${id} ${plant}, ${all} seeds` },
    { day: 0, text: `split ${id}, ${parts.map(({ part, seeds }) => `${part} ${seeds} seeds`).join(', ')}` },
    ...parts.flatMap(({ side, part }) => startOf(side, `${id}/${part}`, chill)),
  ];
  const dishes = parts.map(({ side, seeds }) => growDish(random, seeds, side.nature, scatter));
  const counts = parts.flatMap(({ side, part }, i) => countsOf(random, dishes[i]!, side, `${id}/${part}`));
  return { lines: [...start, ...counts].sort((a, b) => a.day - b.day), dishes };
}

function startOf({ soak, later = 0 }: Side, path: string, chill: number): Line[] {
  const sowing = DAY_ZERO + later;
  const out = sowing - chill;
  return [
    { day: out - 1, text: `soak ${path} ${isoOf(out - 1)} 18:00, ${soak}, 24 h` },
    { day: out, text: `lift ${path} ${isoOf(out)} 18:00` },
    ...chill > 0 ? [{ day: out, text: `chill ${path} ${isoOf(out)} 18:30, 4 C` }] : [],
    { day: sowing, text: `sow ${path} ${isoOf(sowing)} 19:00, 15 C` },
  ];
}

/** The journal as it stood in the evening of a day. */
export function textOf(lines: readonly Line[], until: Day = Infinity): string {
  let text = '';
  for (const { day, text: line } of lines) if (day <= until) text += `${line}\n`;
  return text;
}

const SEEN = ['leggy', 'abnormal', 'dies'] as const satisfies readonly (keyof Seedling)[];
const WORDS = { leggy: 'leggy', abnormal: 'abnormal', dies: 'died' };

type Watch = Pick<Side, 'looks' | 'end' | 'later'>;

export function countsOf(random: Random, dish: Dish, { looks, end, later = 0 }: Watch, path: string): Line[] {
  const dayZero = DAY_ZERO + later;
  const lines: Line[] = [];
  let before = -Infinity;
  for (const look of typeof looks === 'function' ? looks(dish) : looks) {
    const isNew = (day: number) => day > before && day <= look;
    const facts = [String(dish.seedlings.filter(({ up }) => isNew(up)).length)];
    for (const what of SEEN) {
      // Nobody sees what becomes of a seedling before the look that finds it.
      const n = dish.seedlings.filter(each => isNew(each[what])).length;
      if (n > 0) facts.push(`${n} ${WORDS[what]}`);
    }
    for (const [days, word] of [[dish.rots, 'rotted'], [dish.losses, 'lost']] as const) {
      const n = days.filter(isNew).length;
      if (n > 0) facts.push(`${n} ${word}`);
    }
    lines.push({ day: dayZero + look, text: `count ${path} ${isoOf(dayZero + look)} 20:00, ${facts.join(', ')}` });
    before = look;
  }
  if (end === 'open' || before === -Infinity) return lines;
  const where = `${path} ${isoOf(dayZero + before)} 20:30`;
  return [...lines, { day: dayZero + before, text: closing(random, dish, end, before, where) }];
}

function closing(random: Random, { seeds, seedlings, rots, losses }: Dish, end: 'cut' | 'discard', day: number, where: string): string {
  const coming = seedlings.filter(({ up }) => up > day).length;
  const left = seeds - (seedlings.length - coming) - [...rots, ...losses].filter(gone => gone <= day).length;
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
