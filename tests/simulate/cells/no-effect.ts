/** Lots in which the soak does nothing. */
import type { Cell } from '../cell.ts';
import { every, swapped, WEEKLY, type Looks } from '../lots.ts';
import { cellOf, closingCell, peekingCell } from './kinds.ts';

const DAYS: readonly (readonly [string, Looks])[] = [
  ['weekly, 3 days apart', { treated: every(7, 7, 84), untreated: every(7, 10, 87) }],
  ['alternate weeks', { treated: every(14, 7, 77), untreated: every(14, 14, 84) }],
  ['alternate fortnights of a month', { treated: every(28, 14, 98), untreated: every(28, 28, 112) }],
  ['days 14, 28 against 21, 35', { treated: [14, 28], untreated: [21, 35], end: 'open' }],
];

const seedsAndShares = [[24, 0.5], [50, 0.5], [50, 0.8], [100, 0.95]] as const;

export const noEffect: readonly Cell[] = [
  ...[6, 12, 24, 50, 100].flatMap(n => [0.05, 0.2, 0.5, 0.8, 0.95].map(share => (
    cellOf(`no effect, weekly, ${n} of ${100 * share} %`, { dishes: [n], untreated: { share } })))),
  ...DAYS.flatMap(([days, looks]) => ([['', looks], [', untreated first', swapped(looks)]] as const).flatMap(([who, sides]) => (
    seedsAndShares.map(([n, share]) => (
      cellOf(`no effect, ${days}${who}, ${n} of ${100 * share} %`, { dishes: [n], looks: sides, untreated: { share } })))))),
];

const SEASON: Looks = { treated: every(7, 7, 56), untreated: every(7, 7, 56), end: 'open' };
const APART: Looks = { ...SEASON, untreated: every(7, 10, 59) };

export const peeking: readonly Cell[] = [
  ...seedsAndShares.map(([n, share]) => (
    peekingCell(`peeking weekly, ${n} of ${100 * share} %`, { dishes: [n], looks: SEASON, untreated: { share } }))),
  ...seedsAndShares.map(([n, share]) => (
    peekingCell(`peeking weekly, judged on day 42, ${n} of ${100 * share} %`, { dishes: [n], looks: SEASON, untreated: { share } }, 42))),
  peekingCell('peeking weekly, judged on day 42, closed before, 50 of 50 %', {
    dishes: [50], looks: { treated: every(7, 7, 35), untreated: every(7, 7, 35), end: 'discard' }, untreated: {} }, 42),
  peekingCell('peeking weekly, then closed, 50 of 50 %', {
    dishes: [50], looks: { treated: WEEKLY.treated, untreated: WEEKLY.untreated, end: 'discard' }, untreated: {} }),
  closingCell('peeking weekly, closed at the first difference, 24 of 50 %', {
    dishes: [24], looks: { ...WEEKLY, end: 'open' }, untreated: {} }),
  peekingCell('peeking, 3 days apart, 50 of 80 %', { dishes: [50], looks: APART, untreated: { share: 0.8 } }),
  peekingCell('peeking, 3 days apart, untreated first, 50 of 80 %', { dishes: [50], looks: swapped(APART), untreated: { share: 0.8 } }),
];
