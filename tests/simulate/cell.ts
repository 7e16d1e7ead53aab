/** A cell of the table: lots of one kind, and how often their verdicts may be wrong. */
import type { Judged } from './judged.ts';
import { randomOf, type Random } from './random.ts';

/** What was said of a lot: each of these once or not at all, whatever the number of its treatments. */
export const columns = ['worth', 'harmful', 'no sign', 'well without', 'cannot tell'] as const;
export type Column = typeof columns[number];

const OF_VERDICT: Record<Judged['verdict'], Column> = {
  'worth repeating': 'worth',
  harmful: 'harmful',
  'no sign of a benefit': 'no sign',
  'germinates well without it': 'well without',
  'cannot tell': 'cannot tell',
};

/** The share of lots at which a cell fails. */
export interface Bars {
  readonly most?: Partial<Record<Column, number>>;
  readonly least?: Partial<Record<Column, number>>;
}

export interface Cell {
  readonly name: string;
  readonly bars: Bars;
  /** The verdicts on one lot; or on one lot at several times, of which each counts. */
  readonly judge: (random: Random) => readonly Judged[];
}

export interface Tally {
  readonly lots: number;
  readonly found: Record<Column, number>;
  /** Lots by the rules that decided. */
  readonly rules: Record<string, number>;
}

/** Both directions, 1 time in 40. */
export const NO_EFFECT: Bars = { most: { worth: 0.025, harmful: 0.025 } };
export const NO_EFFECT_EVER: Bars = { most: { worth: 0.03, harmful: 0.03 } };
/** For a row that is shown as it is. */
export const NO_BAR: Bars = {};

/** Lots `from` up to, but not including, `to`; the same whoever runs them, and beside whatever others. */
export function run(cell: Cell, seed: number, from: number, to: number): Tally {
  const found = { worth: 0, harmful: 0, 'no sign': 0, 'well without': 0, 'cannot tell': 0 };
  const rules: Record<string, number> = {};
  for (let lot = from; lot < to; lot++) {
    const judged = cell.judge(randomOf(seed, cell.name, lot));
    for (const column of new Set(judged.map(({ verdict }) => OF_VERDICT[verdict]))) found[column]++;
    for (const rule of new Set(judged.map(each => each.rule))) rules[rule] = (rules[rule] ?? 0) + 1;
  }
  return { lots: to - from, found, rules };
}

export function together(tallies: readonly Tally[]): Tally {
  const found = { worth: 0, harmful: 0, 'no sign': 0, 'well without': 0, 'cannot tell': 0 };
  const rules: Record<string, number> = {};
  for (const tally of tallies) {
    for (const column of columns) found[column] += tally.found[column];
    for (const [rule, n] of Object.entries(tally.rules)) rules[rule] = (rules[rule] ?? 0) + n;
  }
  return { lots: tallies.reduce((sum, { lots }) => sum + lots, 0), found, rules };
}

/** The standard error of a share that was found in so many lots. */
export function standardError(share: number, lots: number): number {
  return Math.sqrt(share * (1 - share) / lots);
}

/**
 * What is wrong with a tally: a share beyond its bar by more than two standard errors, taken at the bar.
 *
 * Example: 'worth 4.1 % is above 2.5 %'
 */
export function faultsOf({ bars: { most = {}, least = {} } }: Cell, { lots, found }: Tally): string[] {
  return columns.flatMap(column => {
    const share = found[column] / lots;
    const [high, low] = [most[column], least[column]];
    if (high !== undefined && share > high + 2 * standardError(high, lots)) return [`${column} ABOVE ${percent(high)}`];
    if (low !== undefined && share < low - 2 * standardError(low, lots)) return [`${column} BELOW ${percent(low)}`];
    return [];
  });
}

export function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}
