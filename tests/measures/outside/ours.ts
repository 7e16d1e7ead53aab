import { boschloo } from '../../../server/src/measures/boschloo.ts';
import { breslowDay } from '../../../server/src/measures/breslow-day.ts';
import { newcombe } from '../../../server/src/measures/difference.ts';
import { betaBinomialProbabilities, binomialProbabilities,
  hypergeometric } from '../../../server/src/measures/discrete.ts';
import { fisher } from '../../../server/src/measures/fisher.ts';
import { holm } from '../../../server/src/measures/holm.ts';
import { bothReach, jointP } from '../../../server/src/measures/joint.ts';
import { kaplanMeier } from '../../../server/src/measures/kaplan-meier.ts';
import type { LifeTable } from '../../../server/src/measures/life-table.ts';
import { logRank, type Pair } from '../../../server/src/measures/log-rank.ts';
import { mantelHaenszel } from '../../../server/src/measures/mantel-haenszel.ts';
import type { Measured } from '../../../server/src/measures/measured.ts';
import { power } from '../../../server/src/measures/power.ts';
import { clopperPearson, wilson } from '../../../server/src/measures/proportion.ts';
import { computedRange } from '../../../server/src/measures/range-criterion.ts';
import { rankTest } from '../../../server/src/measures/rank-test.ts';
import { pool } from '../../../server/src/measures/replicates.ts';
import { ofDishes } from '../../../server/src/measures/spread.ts';
import { stratifiedGreater } from '../../../server/src/measures/stratified.ts';
import { chiSquareTail, deviate, tTail } from '../../../server/src/measures/tails.ts';
import { trend } from '../../../server/src/measures/trend.ts';
import { known, strata } from '../helpers.ts';

/** A kind of sum and its vectors of numbers; the scripts beside this file tell what they are. */
export type Case = readonly [kind: string, ...vectors: readonly (readonly number[])[]];

type Numbers = readonly (number | undefined)[];
type Vectors = readonly (readonly number[])[];

const KINDS: Readonly<Record<string, (vectors: Vectors) => Numbers>> = {
  'normal-quantile': ([ps]) => ps!.map(p => deviate(2 * p - 1)),
  'chi-square-tail': ([xs, dfs]) => xs!.map((x, i) => chiSquareTail(x, dfs![i]!)),
  'binomial': ([v]) => [...binomialProbabilities(v![0]!, v![1]!)],
  'hypergeometric': ([v]) => [...hypergeometric(v![0]!, v![1]!, v![2]!).probabilities],
  'proportion': ([v]) => {
    const { x, n } = share(v!);
    return [wilson(x, n), clopperPearson(x, n)].flatMap(({ low, high }) => [low, high]);
  },
  'difference': ([a, b]) => {
    const { value, low, high } = newcombe(share(a!), share(b!));
    return [value, low, high];
  },
  'fisher': ([a, b]) => {
    const { twoSided, greater, less } = fisher(share(a!), share(b!));
    return [twoSided, greater, less];
  },
  'power': ([n, p]) => [power(
    { treated: n![0]!, untreated: n![1]!, dishes: { treated: 1, untreated: 1 }, treatments: n![2]!, rho: 0 }, p![0]!,
      p![1]!)],
  'beta-binomial': ([v]) => [...betaBinomialProbabilities(v![0]!, v![1]!, v![2]!)],
  'log-rank': ([first, second]) => logRankOf([{ first: table(first!), second: table(second!) }]),
  'stratified-log-rank': vectors => logRankOf(
    vectors.flatMap((first, i) => (i % 2 ? [] : [{ first: table(first), second: table(vectors[i + 1]!) }]))),
  'kaplan-meier': ([exits]) => {
    const { steps, median, medianLow, medianHigh } = kaplanMeier(table(exits!));
    return [
      ...steps.flatMap(({ day, ungerminated, error, interval }) => (
        'undefined' in interval
          ? [day, ungerminated, value(error), undefined, undefined]
          : [day, ungerminated, value(error), interval.low, interval.high])),
      value(median), value(medianLow), value(medianHigh),
    ];
  },
  'heterogeneity': ([shares]) => {
    const { chiSquare, df, p } = known(pool(pairs(shares!)).heterogeneity);
    return [chiSquare, df, p];
  },
  'trend': ([scores, shares]) => {
    const { chiSquare, p } = known(trend(pairs(shares!).map((rung, i) => ({ ...rung, score: scores![i]! }))));
    return [chiSquare, p];
  },
  'mantel-haenszel': tables => {
    const found = known(mantelHaenszel(strata(tables as never)));
    const { value: ratio, low, high } = known(found.oddsRatio);
    return [ratio, low, high, found.test.chiSquare, found.test.p, found.corrected.chiSquare, found.corrected.p];
  },
  'breslow-day': tables => {
    const lots = strata(tables as never);
    const { chiSquare, p } = known(breslowDay(lots, known(known(mantelHaenszel(lots)).oddsRatio).value));
    return [chiSquare, p];
  },
  'holm': ([ps]) => holm(ps!),
  'boschloo': ([a, b]) => [boschloo(share(a!), share(b!))],
  't-tail': ([ts, dfs]) => ts!.map((t, i) => tTail(t, dfs![i]!)),
  'both-reach': ([v]) => [bothReach(v![0]!, v![1]!)],
  'joint': ([p, correlations]) => [jointP(p![0]!, correlations!)],
  'rank-test': ([counts]) => {
    const { p, exact } = rankTest(pairs(counts!).map(({ x, n }) => ({ first: x, second: n })));
    return exact ? [p] : [];
  },
  'stratified': tables => [stratifiedGreater(strata(tables as never))],
  'of-dishes': ([p, spread, isOfDays]) => {
    const [factor, df, size] = spread!;
    return [ofDishes(p![0]!, { factor: factor!, df: df!, size: size! }, isOfDays![0] === 1 ? 'days' : 'share')];
  },
  'range': ([v]) => [computedRange(v![0]!, v![1]!, v![2]!)],
};

/** The numbers of one case as this project computes them, in the order in which the scripts print theirs. */
export function ours([kind, ...vectors]: Case): Numbers {
  return KINDS[kind]!(vectors);
}

function share([x, n]: readonly number[]): { x: number; n: number } {
  return { x: x!, n: n! };
}

function pairs(numbers: readonly number[]): { x: number; n: number }[] {
  return numbers.flatMap((x, i) => (i % 2 ? [] : [{ x, n: numbers[i + 1]! }]));
}

function table(triples: readonly number[]): LifeTable {
  return triples.flatMap((day, i) => (
    i % 3 ? [] : [{ day, germinated: triples[i + 1]!, censored: triples[i + 2]! }]));
}

function logRankOf(lots: readonly Pair[]): Numbers {
  const { observed, expected, variance, chiSquare, p } = known(logRank(lots));
  return [observed, expected, variance, chiSquare, p];
}

function value(measured: Measured): number | undefined {
  return 'value' in measured ? measured.value : undefined;
}
