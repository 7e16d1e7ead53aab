import { LEVEL } from './fisher.ts';
import { WANTED_POWER } from './power.ts';

/** A number that verdicts depend on, with what it is for. The format reference prints this table. */
export interface Threshold {
  readonly value: number;
  readonly says: string;
}

/**
 * All the numbers behind the verdicts. Levels and power are conventions; the rest is a choice, without a
 * source.
 */
export const THRESHOLDS = {
  level: {
    value: LEVEL,
    says: 'a p-value up to this is taken for an effect',
  },
  fewestExpected: {
    value: 2,
    says: 'a log-rank test counts where at least this many seeds were expected to germinate on each side',
  },
  points: {
    value: 0.3,
    says: 'a benefit of this size must have been visible before its absence is claimed (30 percentage points)',
  },
  power: {
    value: WANTED_POWER,
    says: "visible means: Fisher's exact test would have found it with this probability",
  },
  toleratedLoss: {
    value: 0.1,
    says: 'faster seed is a benefit as long as no more than this share fewer germinate (10 percentage points)',
  },
  readyShare: {
    value: 0.7,
    says: 'untreated seed germinates well when at least this share of it does (70 %)',
  },
  readyLow: {
    value: 0.5,
    says: '... and the lower limit of its 95 % interval is at least this (50 %)',
  },
  readyDays: {
    value: 30,
    says: '... and a check by this day finds half of the seed sown up',
  },
} as const satisfies Readonly<Record<string, Threshold>>;
