/** Lots in which the soak does something. */
import type { Bars, Cell } from '../cell.ts';
import { every, LADDER, WEEKLY, type Looks } from '../lots.ts';
import { cellOf, speciesCell } from './kinds.ts';

/** The gains that must be found so often, by the seeds a side. */
const FLOORS: Record<string, number> = { '24, 70': 0.92, '50, 50': 0.82, '24, 50': 0.5 };

const CLOSED: Looks = { ...WEEKLY, end: 'discard' };
const SLOW: Looks = { treated: every(7, 7, 210), untreated: every(7, 7, 210), end: 'discard' };
const OPEN: Looks = { ...WEEKLY, end: 'open' };
const NOT_WORTH: Bars = { most: { worth: 0.025 } };
const NOT_HARMFUL = { most: { harmful: 0.025 } };

function gain(n: number, to: number): Cell {
  const floor = FLOORS[`${n}, ${to}`];
  const bars: Bars = {
    // A benefit of more than 30 points is there, so that its absence is not to be found.
    most: { harmful: 0.025, ...(to > 50 && { 'no sign': 0.025 }) },
    ...(floor !== undefined && { least: { worth: floor } }),
  };
  const lot = { dishes: [n], looks: CLOSED, untreated: { share: 0.2 }, treated: { share: to / 100 } };
  return cellOf(`gain from 20 to ${to} %, ${n} a side, closed`, lot, bars);
}

/**
 * Speed alone pays where no great loss is possible: of 50 seeds a side an interval excludes a loss of 20 points about
 * every other time at 60 %, mostly at 90 % and above. Slow seed as well, for of seed that is up within a month it is
 * said that it germinates well without the soak.
 */
const FASTER_ONLY: readonly Cell[] = ([[24, 12, CLOSED], [60, 30, SLOW]] as const).flatMap(([from, to, looks]) => (
  [0.6, 0.8, 0.9, 0.95].filter(share => from > 24 || share > 0.6).map(share => (
    cellOf(`faster, ${from} to ${to} days, 50 a side of ${100 * share} %`, {
      dishes: [50], looks, untreated: { share, median: from }, treated: { median: to } },
    from > 24 && share >= 0.9 ? { ...NOT_HARMFUL, least: { worth: 0.8 } } : NOT_HARMFUL)))));

export const effects: readonly Cell[] = [
  ...[24, 50, 100].flatMap(n => [40, 50, 70].map(to => gain(n, to))),
  ...([[24, 70], [50, 50]] as const).map(([n, to]) => cellOf(`gain from 20 to ${to} %, ${n} a side, left open`, {
    dishes: [n], looks: OPEN, untreated: { share: 0.2 }, treated: { share: to / 100 } }, NOT_HARMFUL)),
  cellOf('gain from 20 to 50 %, 4 dishes of 12 a side, rho 0.05', {
    dishes: [12, 12, 12, 12], looks: CLOSED, untreated: { share: 0.2, rho: 0.05 }, treated: { share: 0.5 },
  }, NOT_HARMFUL),
  cellOf('gain from 20 to 50 %, three doses, 50 a side', {
    dishes: [50], looks: CLOSED, soaks: LADDER, untreated: { share: 0.2 }, treated: { share: 0.5 } }, NOT_HARMFUL),
  speciesCell('gain from 20 to 50 %, five lots of 24 a side', 5, () => ({
    dishes: [24], looks: CLOSED, untreated: { share: 0.2 }, treated: { share: 0.5 } }), NOT_HARMFUL),
  ...[24, 50, 100].map(n => cellOf(`loss from 60 to 40 %, ${n} a side`, {
    dishes: [n], looks: CLOSED, untreated: { share: 0.6 }, treated: { share: 0.4 } }, NOT_WORTH)),
  ...[24, 50, 100].map(n => cellOf(`faster, 24 to 12 days, ${n} a side of 60 %`, {
    dishes: [n], looks: CLOSED, untreated: { share: 0.6 }, treated: { median: 12 },
  }, NOT_HARMFUL)),
  ...FASTER_ONLY,
  ...([[24, 0.6], [50, 0.6], [100, 0.6], [50, 0.8]] as const).map(([n, share]) => (
    cellOf(`faster, 24 to 12 days, but ${100 * share} to ${100 * share - 20} %, ${n} a side`, {
      dishes: [n], looks: CLOSED, untreated: { share }, treated: { share: share - 0.2, median: 12 } }, NOT_WORTH))),
  cellOf('slower, 12 to 24 days, 50 a side of 60 %', {
    dishes: [50], looks: CLOSED, untreated: { share: 0.6, median: 12 }, treated: { median: 24 } }, NOT_WORTH),
  ...[0.3, 0.6].map(share => cellOf(`${100 * share} % leggy after the soak, none before, 50 a side of 80 %`, {
    dishes: [50], looks: CLOSED, untreated: { share: 0.8 }, treated: { weak: { share, kind: 'leggy' } } }, NOT_WORTH)),
];
