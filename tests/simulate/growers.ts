/** Growers over five winters: who always treats, who never does, and who follows the advice. */
import { adviceFor, type Advice } from '../../server/src/advice/advice.ts';
import { DAY_ZERO, grow, textOf, type Line, type Side } from './diary.ts';
import { journalOf } from './judged.ts';
import { every } from './lots.ts';
import { between, normal, oneOf, randomOf, type Random } from './random.ts';
import { scatterOf, type Dish, type Nature } from './season.ts';

export const habits = ['always treats', 'never treats', 'follows the advice'] as const;
export type Habit = typeof habits[number];

export const plants = ['helped', 'left alone', 'harmed'] as const;
export type Plant = typeof plants[number];

interface Effect {
  readonly untreated: Nature;
  readonly treated: Nature;
}

/** Days on which half of the seed that germinates is up. */
const MEDIAN = 24;

/**
 * Shares that germinated without and with GA3, of plants that it helped: Stachys germanica (Guleryuz 2011), Thalictrum
 * rochebrunianum (Cho 2016, chilled, and with kinetin), Bunium persicum (PMC4037658, dry seed against GA3 on moist
 * seed), and 20 perennials (Tippins 2021, 47 % more; read as of what an untreated seed gives, and 40 % of that is
 * assumed). Only abstracts were read.
 */
const HELPED = [[0, 0.37], [0.163, 0.845], [0.093, 0.467], [0.4, 0.59]] as const;

/**
 * Of untreated seed: Actinidia arguta (0), Empetrum hermaphroditum (2 to 5 %), Thalictrum and Actinidia chinensis after
 * cold (16 %), Primula beesiana, Frasera, Ocimum (above 80, 83, 96 %); 40 % is assumed. Sources as before.
 */
const UNTREATED = [0, 0.04, 0.16, 0.4, 0.8, 0.83, 0.96] as const;

/** No source gives a share for seed that it harms: a third to all of what would germinate, or of the seedlings. */
function effectOf(random: Random, plant: Plant): Effect {
  switch (plant) {
    case 'helped': {
      const [without, withIt] = oneOf(random, HELPED);
      return { untreated: { share: without, median: MEDIAN }, treated: { share: withIt, median: MEDIAN } };
    }
    case 'left alone': {
      const nature = { share: oneOf(random, UNTREATED), median: MEDIAN };
      return { untreated: nature, treated: nature };
    }
    case 'harmed': {
      const untreated = { share: oneOf(random, UNTREATED.filter(share => share > 0.1)), median: MEDIAN };
      const loss = between(random, 1 / 3, 1);
      const treated = random() < 0.5
        ? { ...untreated, share: untreated.share * (1 - loss) }
        : { ...untreated, weak: { share: loss, kind: 'leggy' } as const };
      return { untreated, treated };
    }
  }
}

const WINTERS = 5;
const WINTER_DAYS = 365;
const LOOKS = every(7, 7, 84);
const GUIDE = 'guide Adonis vernalis, GA3 500 ppm, 24 h, source "a book"\n';

/** What became of the seed of a grower, and what was advised; of a packet in the winter after the last, too. */
interface Winters {
  /** Sound seedlings of 100 seeds, of each winter. */
  readonly sound: readonly number[];
  /** Nothing where nobody asks. */
  readonly choices: readonly Advice['choice'][];
}

/** One grower with one plant; every winter brings a packet of it, whose seed is a little better or worse. */
function winters(habit: Habit, plant: Plant, seeds: number, seed: string): Winters {
  const random = randomOf(seed, plant, seeds);
  const effect = effectOf(random, plant);
  const scatter = scatterOf(random);
  const lines: Line[] = [];
  const choices: Advice['choice'][] = [];
  const ask = (winter: number): number => {
    const { choice, division } = adviceIn(winter, seeds, lines);
    choices.push(choice);
    return division?.sides?.treated ?? 0;
  };
  const sound = Array.from({ length: WINTERS }, (_, winter) => {
    const id = idOf(winter);
    const later = winter * WINTER_DAYS;
    // The same packet for each of the growers, whatever they do with it.
    const luck = 0.5 * normal(randomOf(seed, plant, seeds, winter));
    const treated = habit === 'always treats' ? seeds : habit === 'never treats' ? 0 : ask(winter);
    const sides: Side[] = [
      { soak: 'GA3 500 ppm', n: treated, nature: effect.treated },
      { soak: 'water', n: seeds - treated, nature: effect.untreated },
    ].filter(({ n }) => n > 0).map(({ soak, n, nature }) => (
      { soak, dishes: [n], nature: { ...nature, share: shifted(nature.share, luck) }, looks: LOOKS, end: 'discard', later }));
    const grown = grow(randomOf(seed, plant, seeds, winter, habit), { id, sides, scatter });
    lines.push(...grown.lines);
    return (100 * soundOf(grown.dishes)) / seeds;
  });
  if (habit === 'follows the advice') ask(WINTERS);
  return { sound, choices };
}

function idOf(winter: number): string {
  return `SIM-${winter + 1}`;
}

function adviceIn(winter: number, seeds: number, lines: readonly Line[]): Advice {
  const id = idOf(winter);
  const journal = journalOf(`${GUIDE}${textOf(lines)}lot ${id} Adonis vernalis, ${seeds} seeds\n`);
  return adviceFor(journal.lot(id)!, journal, { day: DAY_ZERO + winter * WINTER_DAYS - 7, minutes: undefined });
}

/** On the scale of odds, so that what never germinates stays so. */
function shifted(share: number, luck: number): number {
  if (share <= 0 || share >= 1) return share;
  return 1 / (1 + Math.exp(-(Math.log(share / (1 - share)) + luck)));
}

function soundOf(dishes: readonly Dish[]): number {
  const last = LOOKS.at(-1)!;
  return dishes.flatMap(({ seedlings }) => seedlings)
    .filter(({ up, leggy, abnormal, dies }) => up <= last && Math.min(leggy, abnormal, dies) === Infinity).length;
}

/** Growers with packets of so many seeds; a third of them has each kind of plant. */
export interface GrowerCell {
  readonly name: string;
  readonly seeds: number;
}

export const growers: readonly GrowerCell[] = [12, 24, 40, 60].map(seeds => ({ name: `growers, ${seeds} seeds a winter`, seeds }));

/**
 * For each kind of plant and each habit the sound seedlings of 100 seeds, over the winters of each grower; and of how
 * many growers who asked it was said.
 */
export type Harvests = Readonly<Record<Plant, Readonly<Record<Habit, number[]>> & { readonly said: Said }>>;

/** Growers who were told to treat most of the seed at some time, and to leave it untreated in the end. */
export interface Said {
  readonly treat: number;
  readonly leave: number;
}

export function runGrowers({ seeds }: GrowerCell, seed: number, from: number, to: number): Harvests {
  const of = (plant: Plant): Harvests[Plant] => {
    const grown = (habit: Habit) => (
      Array.from({ length: to - from }, (_, i) => winters(habit, plant, seeds, `${seed} ${from + i}`)));
    const all = Object.fromEntries(habits.map(habit => [habit, grown(habit)])) as Record<Habit, Winters[]>;
    const asked = all['follows the advice'];
    const byHabit = Object.fromEntries(habits.map(habit => [habit, all[habit].map(({ sound }) => mean(sound))]));
    return {
      ...byHabit as Record<Habit, number[]>,
      said: {
        treat: asked.filter(({ choices }) => choices.some(({ kind }) => kind === 'treat')).length,
        leave: asked.filter(({ choices }) => choices.at(-1)?.kind === 'leave').length,
      },
    };
  };
  return Object.fromEntries(plants.map(plant => [plant, of(plant)])) as Harvests;
}

/** Sound seedlings of 100 seeds: of all growers, and of the tenth of them that had fewest. */
export interface Harvest {
  readonly mean: number;
  readonly worst: number;
}

/** The rows of the table: each kind of plant, then all together. */
export type HarvestRows = Readonly<Record<Plant | 'all', Readonly<Record<Habit, Harvest>>>>;

export function harvestRows(parts: readonly Harvests[]): HarvestRows {
  const rowOf = (kinds: readonly Plant[]) => Object.fromEntries(habits.map(habit => [
    habit, harvestOf(parts.flatMap(part => kinds.flatMap(plant => part[plant][habit]))),
  ])) as Record<Habit, Harvest>;
  return {
    ...Object.fromEntries(plants.map(plant => [plant, rowOf([plant])])) as Record<Plant, Record<Habit, Harvest>>,
    all: rowOf(plants),
  };
}

/** Of each kind of plant the shares of the growers to whom it was said. */
export function saidRows(parts: readonly Harvests[]): Record<Plant, Said> {
  return Object.fromEntries(plants.map(plant => {
    const growers = parts.reduce((sum, part) => sum + part[plant]['follows the advice'].length, 0);
    const share = (what: keyof Said) => parts.reduce((sum, part) => sum + part[plant].said[what], 0) / growers;
    return [plant, { treat: share('treat'), leave: share('leave') }];
  })) as Record<Plant, Said>;
}

function harvestOf(all: readonly number[]): Harvest {
  const worst = all.toSorted((a, b) => a - b).slice(0, Math.max(1, Math.floor(all.length / 10)));
  return { mean: mean(all), worst: mean(worst) };
}

/** Who follows the advice must not fare worse than the others, over all plants. */
export function harvestFaults({ all }: HarvestRows): string[] {
  const advised = all['follows the advice'];
  return habits.flatMap(habit => (['mean', 'worst'] as const)
    .filter(what => all[habit][what] > advised[what])
    .map(what => `${habit}: ${what} ABOVE the advice`));
}

function mean(numbers: readonly number[]): number {
  return numbers.reduce((sum, n) => sum + n, 0) / numbers.length;
}
