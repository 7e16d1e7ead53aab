/** How often an interval that is shown holds what was true of the seed. */
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { reportData } from '../../server/src/report/json.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { DAY_ZERO, diaryOf, textOf, type Side, type SimulatedLot } from './diary.ts';
import { journalOf } from './judged.ts';
import { every, swapped, WEEKLY, type Looks } from './lots.ts';
import { between, randomOf, type Random } from './random.ts';
import { scatterOf, shareUpBy, type Dish, type Nature, type Scatter } from './season.ts';

/** What is shown, and the share of lots in which it must hold what is true. */
export const INTERVALS = {
  // For single shares and numbers of seed Wilson's interval is known to hold a little less often than on average.
  'germinated, Wilson': 0.93,
  'germinated, exact': 0.95,
  'difference of shares': 0.94,
  'day of half the seed sown': 0.95,
  // What the looks tell of the seed that was looked at, not of other seed: always.
  'half up, of these seeds': 1,
  'days apart, of these seeds': 1,
} as const;

export type Interval = keyof typeof INTERVALS;

export interface Held {
  readonly held: number;
  readonly shown: number;
}

export interface Coverage {
  readonly name: string;
  readonly lot: (random: Random) => {
    readonly looks: Looks;
    readonly n: number;
    readonly treated: Nature;
    readonly untreated: Nature;
  };
}

/** The members of a report, as another program would read them. */
interface Told {
  readonly lots: readonly [{
    readonly batches: readonly {
      readonly germination: { readonly wilson?: Limits; readonly clopperPearson?: Limits };
      readonly measures: { readonly kaplanMeier: { readonly medianLow?: unknown; readonly medianHigh?: unknown } };
    }[];
    readonly trial: {
      readonly contests: readonly [{ readonly comparison: {
        readonly byDay?: number;
        readonly germinated?: { readonly difference: Limits };
        readonly halfUp?: Readonly<Record<'treated' | 'untreated', HalfUp>>;
        readonly daysApart?: { readonly least: number; readonly most: number } | null;
      } }];
    };
  }];
}

interface HalfUp {
  readonly after?: number | null;
  readonly by?: number;
}

interface Limits {
  readonly low: number;
  readonly high: number;
}

export function runCoverage(
  { name, lot }: Coverage, seed: number, from: number, to: number,
): Partial<Record<Interval, Held>> {
  const sums: Partial<Record<Interval, Held>> = {};
  for (let i = from; i < to; i++) {
    for (const [interval, isHeld] of heldIn(randomOf(seed, name, i), lot)) {
      const { held, shown } = sums[interval] ?? { held: 0, shown: 0 };
      sums[interval] = { held: held + Number(isHeld), shown: shown + 1 };
    }
  }
  return sums;
}

function* heldIn(random: Random, lot: Coverage['lot']): Generator<[Interval, boolean]> {
  const { looks, n, treated, untreated } = lot(random);
  const scatter = scatterOf(random);
  const dishes: Dish[] = [];
  const sideOf = (soak: string, nature: Nature, days: readonly number[]): Side => (
    // The dishes themselves, to hold what is said of them against what they were.
    { soak, dishes: [n], nature, end: looks.end ?? 'discard', looks: dish => (dishes.push(dish), days) });
  const sides = [sideOf('GA3 500 ppm', treated, looks.treated), sideOf('water', untreated, looks.untreated)] as const;
  const { lots: [{ batches, trial }] } = toldOf(random, { id: 'SIM-26', sides, scatter });
  for (const [i, { germination, measures: { kaplanMeier } }] of batches.entries()) {
    const { nature } = sides[i]!;
    const days = [looks.treated, looks.untreated][i]!;
    const up = shareUpBy(nature, scatter, days.at(-1)!);
    if (germination.wilson) yield ['germinated, Wilson', isWithin(up, germination.wilson)];
    if (germination.clopperPearson) yield ['germinated, exact', isWithin(up, germination.clopperPearson)];
    const { medianLow, medianHigh } = kaplanMeier;
    if (typeof medianLow !== 'number') continue;
    const half = halfDay(nature, scatter);
    const after = days.findLast(day => day < medianLow) ?? 0;
    const by = typeof medianHigh === 'number' ? medianHigh : Infinity;
    yield ['day of half the seed sown', half > after && half <= by];
  }
  const [{ comparison: { byDay, germinated, halfUp, daysApart } }] = trial.contests;
  if (byDay !== undefined && germinated) {
    const gain = shareUpBy(treated, scatter, byDay) - shareUpBy(untreated, scatter, byDay);
    yield ['difference of shares', isWithin(gain, germinated.difference)];
  }
  // Counted up to one age, which is the last look where both sides have the same ones.
  if (String(looks.treated) !== String(looks.untreated)) return;
  const ofTreated = halfOf(dishes[0]!, halfUp?.treated, looks.treated);
  const ofUntreated = halfOf(dishes[1]!, halfUp?.untreated, looks.untreated);
  for (const half of [ofTreated, ofUntreated]) if (half) yield ['half up, of these seeds', half.isHeld];
  if (daysApart && ofTreated && ofUntreated) {
    const days = ofTreated.day - ofUntreated.day;
    yield ['days apart, of these seeds', days > daysApart.least - 1e-9 && days < daysApart.most + 1e-9];
  }
}

function toldOf(random: Random, lot: SimulatedLot): Told {
  const journal = journalOf(textOf(diaryOf(random, lot)));
  const now = { day: DAY_ZERO + 300, minutes: undefined };
  const book = new ProblemBook(journal);
  book.update(now);
  return reportData(reportOf(journal, book, { now })) as Told;
}

function isWithin(value: number, { low, high }: Limits): boolean {
  return value >= low - 1e-9 && value <= high + 1e-9;
}

/** The day of seed (G + 1) / 2 of those that were up by the last look. */
function halfOf(
  { seedlings }: Dish, limits: HalfUp | undefined, looks: readonly number[],
): { readonly day: number; readonly isHeld: boolean } | undefined {
  if (limits?.by === undefined) return undefined;
  const days = seedlings.map(({ up }) => up).filter(up => up <= looks.at(-1)!).sort((a, b) => a - b);
  const day = days[Math.ceil((days.length + 1) / 2) - 1]!;
  return { day, isHeld: day > (limits.after ?? -Infinity) && day <= limits.by };
}

/** By halving; Infinity where half of the seed never comes up. */
function halfDay(nature: Nature, scatter: Scatter): number {
  if (nature.share <= 0.5) return Infinity;
  let [low, high] = [0, 1000];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (shareUpBy(nature, scatter, middle) < 0.5) low = middle;
    else high = middle;
  }
  return high;
}

const TWICE: Looks = { treated: [14, 28], untreated: [14, 28], end: 'open' };
const APART: Looks = { treated: every(7, 7, 84), untreated: every(7, 10, 87) };

function coverage(name: string, n: number, looks: Looks, treated: Partial<Nature>): Coverage {
  return { name: `intervals, ${name}`, lot: random => {
    const untreated = { share: between(random, 0.1, 0.95), median: between(random, 12, 30) };
    return { n, looks, untreated, treated: { ...untreated, ...treated } };
  } };
}

export const coverages: readonly Coverage[] = [
  coverage('no effect, weekly, 24 a side', 24, WEEKLY, {}),
  coverage('no effect, weekly, 100 a side', 100, WEEKLY, {}),
  coverage('60 % and faster, weekly, 50 a side', 50, WEEKLY, { share: 0.6, median: 12 }),
  coverage('60 %, weekly, 3 days apart, 50 a side', 50, APART, { share: 0.6 }),
  coverage('60 %, weekly, 3 days apart, untreated first, 50 a side', 50, swapped(APART), { share: 0.6 }),
  coverage('60 % and faster, read on days 14, 28', 50, TWICE, { share: 0.6, median: 12 }),
];
