/** The rows of the simulated table that the format reference prints, from the numbers that a run kept. */
import { percent, standardError, type Column } from './cell.ts';
import { INTERVALS, type Interval } from './coverage.ts';
import { habits, plants, type Habit, type HarvestRows, type Plant, type Said } from './growers.ts';

/** What a run kept of a cell, or of the intervals of one. */
export type Kept = Readonly<Record<string, number | { readonly held: number; readonly shown: number }>>;
export type Results = Readonly<Record<string, Kept>>;

interface Shown {
  /** In a grower's words. */
  readonly says: string;
  readonly cell: string;
}

const shown = (says: string, cell: string): Shown => ({ says, cell });

/** No effect: both verdicts are wrong. */
export const NO_EFFECT_ROWS: readonly Shown[] = [
  shown('both sides on the same days, weekly, 24 a side of which half germinates', 'no effect, weekly, 24 of 50 %'),
  shown('the same, 50 a side', 'no effect, weekly, 50 of 50 %'),
  shown('the same, 50 a side of 80 %', 'no effect, weekly, 50 of 80 %'),
  shown('weekly, but 3 days apart, 50 a side', 'no effect, weekly, 3 days apart, 50 of 50 %'),
  shown('in alternate weeks, the treated side first', 'no effect, alternate weeks, 50 of 50 %'),
  shown('in alternate weeks, the untreated side first', 'no effect, alternate weeks, untreated first, 50 of 50 %'),
  shown('monthly, in alternate fortnights', 'no effect, alternate fortnights of a month, 50 of 50 %'),
  shown('read early: days 14, 28 against 21, 35', 'no effect, days 14, 28 against 21, 35, 50 of 50 %'),
  shown('read every week for eight weeks, ever', 'peeking weekly, 50 of 50 %'),
  shown('read every week, and thrown away as soon as the interval of the difference excludes 0, 24 a side',
    'peeking weekly, closed at the first difference, 24 of 50 %'),
  shown('20 % of the seedlings leggy, then dead, on both sides', 'weak seedlings, 20 % leggy, then died, 50 of 80 %'),
  shown('one dish of 48 a side, dishes alike', 'dishes, 1 of 48 seeds, rho 0'),
  shown('one dish of 48 a side, dishes differ (correlation 0.05)', 'dishes, 1 of 48 seeds, rho 0.05'),
  shown('one dish of 48 a side, dishes differ (0.1)', 'dishes, 1 of 48 seeds, rho 0.1'),
  shown('two dishes of 24 a side, dishes differ (0.05)', 'dishes, 2 of 24 seeds, rho 0.05'),
  shown('two dishes of 24 a side, dishes differ (0.1)', 'dishes, 2 of 24 seeds, rho 0.1'),
  shown('four dishes of 12 a side, dishes differ (0.05)', 'dishes, 4 of 12 seeds, rho 0.05'),
  shown('four dishes of 12 a side, dishes differ (0.1)', 'dishes, 4 of 12 seeds, rho 0.1'),
  shown('four dishes of 12 a side, each up to 3 days early or late',
    'dishes, 4 of 12 seeds, rho 0, 3 days early or late'),
  shown('three doses of one agent, 24 a part', 'three doses, 24 of 50 %'),
  shown('three unlike treatments, 24 a part', 'three unlike treatments, 24 of 50 %'),
  shown('five lots of a species, 24 a side', 'five lots, 24 of 50 %'),
];

/** An effect: what is found of it. */
export const EFFECT_ROWS: readonly Shown[] = [
  ...[24, 50].flatMap(n => [40, 50, 70].map(to => (
    shown(`gain from 20 to ${to} %, ${n} a side`, `gain from 20 to ${to} %, ${n} a side, closed`)))),
  shown('the same gain, four dishes of 12 a side that differ (0.05), 20 to 50 %',
    'plan, 4 of 12, 20 to 50 %, rho 0.05: 53 %'),
  ...[24, 50, 100].map(n => shown(`loss from 60 to 40 %, ${n} a side`, `loss from 60 to 40 %, ${n} a side`)),
  shown('twice as fast (24 to 12 days), 50 a side of 60 %', 'faster, 24 to 12 days, 50 a side of 60 %'),
  shown('the same of 80 %', 'faster, 24 to 12 days, 50 a side of 80 %'),
  ...[60, 80, 90, 95].map(share => (
    shown(`twice as fast (60 to 30 days), 50 a side of ${share} %`, `faster, 60 to 30 days, 50 a side of ${share} %`))),
  shown('twice as fast, but 60 to 40 %, 50 a side', 'faster, 24 to 12 days, but 60 to 40 %, 50 a side'),
];

/** Five winters: what came of the seed. */
const GROWER_ROWS = [24, 60].flatMap(seeds => ([
  ['helped', 'plants that it helps'], ['left alone', 'plants that it leaves alone'], ['harmed', 'plants that it harms'],
  ['all', 'all of them, a third each'],
] as const).map(([plant, says]) => (
  { says: `${says}, ${seeds} seeds a winter`, cell: `growers, ${seeds} seeds a winter`, plant })));

function harvestText(kept: Kept | undefined, plant: keyof HarvestRows, habit: Habit): string {
  const row = (kept as unknown as HarvestRows | undefined)?.[plant][habit];
  if (!row) throw new Error('no run kept the growers');
  return `${row.mean.toFixed(1)} (${row.worst.toFixed(1)})`;
}

const INTERVAL_CELL = 'intervals, no effect, weekly, 24 a side';

function number(kept: Kept, name: Column | 'lots'): number {
  const found = kept[name];
  if (typeof found !== 'number') throw new Error(`no ${name} is kept`);
  return found;
}

/** What came of the seed of growers, line by line. */
export function growerLines(results: Results): string[] {
  return [
    `| sound seedlings of 100 seeds (worst tenth) | ${habits.join(' | ')} |`, '|---|---|---|---|',
    ...GROWER_ROWS.map(({ says, cell, plant }) => (
      `| ${says} | ${habits.map(habit => harvestText(results[cell], plant, habit)).join(' | ')} |`)),
  ];
}

/** What was said to them, line by line. */
export function saidLines(results: Results): string[] {
  const rows = GROWER_ROWS.flatMap(({ says, cell, plant }) => {
    const said = (results[cell] as unknown as { said?: Record<Plant, Said> } | undefined)?.said;
    const kind = plants.find(each => each === plant);
    if (!said) throw new Error('no run kept what was said');
    return kind ? [`| ${says} | ${percent(said[kind].treat)} | ${percent(said[kind].leave)} |`] : [];
  });
  return ['| five winters | “treat most of it” at some time | “leave it untreated” in the end |', '|---|---|---|', ...rows];
}

/** How many plants GA3 has to help for each that it harms, so that always treating gives as many seedlings. */
export function breakEven(results: Results, seeds: number): number {
  const { helped, harmed } = results[`growers, ${seeds} seeds a winter`] as unknown as HarvestRows;
  const gain = ({ 'always treats': always, 'follows the advice': advised }: HarvestRows[Plant]) => advised.mean - always.mean;
  return gain(harmed) / -gain(helped);
}

/** The tables of verdicts and intervals, line by line. */
export function linesOf(results: Results): string[] {
  const share = (cell: string, column: Column): string => {
    const kept = results[cell];
    if (!kept) throw new Error(`no run kept “${cell}”`);
    const lots = number(kept, 'lots');
    const part = number(kept, column) / lots;
    return `${percent(part)} ± ${(100 * standardError(part, lots)).toFixed(1)}`;
  };
  const intervals = Object.entries(results[INTERVAL_CELL] ?? {}).filter(([name]) => name in INTERVALS) as [Interval, {
    held: number; shown: number }][];
  return [
    '| no effect | worth repeating | harmful |', '|---|---|---|',
    ...NO_EFFECT_ROWS.map(({ says, cell }) => `| ${says} | ${share(cell, 'worth')} | ${share(cell, 'harmful')} |`),
    '',
    '| effect | worth repeating | harmful | germinates well without it |', '|---|---|---|---|',
    ...EFFECT_ROWS.map(({ says, cell }) => (
      `| ${says} | ${share(cell, 'worth')} | ${share(cell, 'harmful')} | ${share(cell, 'well without')} |`)),
    '',
    '| interval, 24 a side | holds what is true |', '|---|---|',
    ...intervals.map(([name, { held, shown: of }]) => `| ${name} | ${percent(held / of)} |`),
  ];
}
