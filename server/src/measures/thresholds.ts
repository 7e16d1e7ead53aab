/** A number that verdicts depend on, with what it is for. The format reference prints this table. */
export interface Threshold {
  readonly value: number;
  readonly says: string;
}

/** All the numbers behind the verdicts. Levels are conventions; the rest is a choice, without a source. */
export const THRESHOLDS = {
  level: {
    value: 0.025,
    says: 'without any effect, "worth repeating" comes out no more often than this (1 time in 40), and neither does "harmful"',
  },
  soFar: {
    value: 0.005,
    says: 'the same while seed may still germinate: so small that looking every week stays within 3 % over a season',
  },
  fewestSeeds: {
    value: 4,
    says: 'fewer seeds than this on a side are too few, whatever they did',
  },
  points: {
    value: 0.3,
    says: '"no sign of a benefit" needs an interval that excludes a benefit of this size (30 percentage points)',
  },
  watchedDays: {
    value: 180,
    says: '... and, where fewer than 4 seeds of both sides germinated and living seed was left, that you watched it for as many '
      + 'days',
  },
  firstDays: {
    value: 28,
    says: '... and, where less than half of the seed of both sides germinated and living seed was left, as many days',
  },
  toleratedLoss: {
    value: 0.2,
    says: 'sooner is a benefit if the interval excludes a greater loss than this (20 percentage points); later is a harm '
      + 'if it excludes a greater gain; and weak seedlings are a price from this excess of their share on',
  },
  readyShare: {
    value: 0.7,
    says: 'untreated seed germinates well when at least this share of it does (70 %)',
  },
  readyLow: {
    value: 0.5,
    says: '... and the lower limit of its 95 % interval is at least this (50 %)',
  },
  readySeeds: {
    value: 10,
    says: '... and there are at least as many seeds (common practice, no source): where half germinates, all of 4 do so by chance '
      + 'in 1 lot of 16',
  },
  readyDays: {
    value: 30,
    says: '... and a look by this day finds that half of the seed sown has germinated',
  },
} as const satisfies Readonly<Record<string, Threshold>>;
