/** Verdicts on seed that was estimated: what both ends of each estimate say. */
import { rangeOf } from '../journal/estimates.ts';
import type { Looks } from '../measures/claim.ts';
import type { Comparison } from '../measures/comparison.ts';
import { isUndefined, undefinedBecause } from '../measures/measured.ts';
import type { Verdict } from '../measures/verdict.ts';
import type { RuleId } from '../measures/verdict-rules.ts';
import {
  daysText, differsInText, differsText, judgedText, mayChange, oneDishText, toBeJudgedText, type JudgeDay,
} from '../measures/verdict-text.ts';
import { asSentence, wholePercent } from '../measures/verdict-words.ts';
import { decidingText, openText, spanText } from './estimated-reasons.ts';
import type { Bounds, Group, TrialBatch } from './groups.ts';
import { judgeDayTold } from './judging.ts';
import type { Contest } from './lot-trial.ts';
import type { Pair } from './pairs.ts';

/** The least of one side with the most of the other is the worst and the best case of every claim. */
export const corners: readonly Bounds[] = (['least', 'most'] as const)
  .flatMap(treated => (['least', 'most'] as const).map(untreated => ({ treated, untreated })));

/**
 * The contests of batches that were estimated, from the contests of each corner: with the verdict on which all corners
 * agree, and without the numbers of any of them, which would be those of a guess.
 */
export function agreed(all: readonly (readonly Contest[])[]): Contest[] {
  const [first = [], ...others] = all;
  return first.filter(isEstimated).map((contest): Contest => {
    const same = others.flatMap(contests => contests.find(other => isSamePair(contest, other)) ?? []);
    const cases = same.length === others.length ? [contest, ...same] : [];
    return {
      ...contest, comparison: undefinedBecause('the seeds were estimated, not counted'), verdict: verdictOf(contest, cases),
      // What names the numbers of one corner names those of a guess.
      remarks: contest.remarks.filter(remark => same.every(({ remarks }) => remarks.includes(remark))),
    };
  });
}

/** Whether a batch of either side is known by an estimate only. */
export function isEstimated({ treated, untreated }: Pair): boolean {
  return [treated, untreated].some(group => group?.batches.some(isGuess));
}

function isGuess({ batch }: TrialBatch): boolean {
  const range = rangeOf(batch, 'tested');
  return batch.tested === undefined && range !== undefined;
}

function isSamePair(a: Contest, b: Contest): boolean {
  return isSameGroup(a.treated, b.treated) && isSameGroup(a.untreated, b.untreated);
}

function isSameGroup(a: Group | undefined, b: Group | undefined): boolean {
  return a?.batches.length === b?.batches.length
    && (a?.batches ?? []).every(({ batch }, n) => b?.batches[n]?.batch === batch);
}

function verdictOf({ verdict: { verdict, rule }, alsoDiffers, judging }: Contest, cases: readonly Contest[]): Verdict {
  const comparisons = cases.flatMap(({ comparison }) => (isUndefined(comparison) ? [] : [comparison]));
  const names = [...new Set(cases.map(({ verdict: { verdict: name } }) => name))];
  const open = comparisons.some(({ open: { treated, untreated } }) => treated + untreated > 0);
  // The numbers of some corners alone would be a range that is too narrow.
  const isWhole = comparisons.length === corners.length;
  const numbers = isWhole ? numbersText(comparisons) : undefined;
  if (names.length === 1 && isWhole) {
    const day = judging && judgeDayTold(judging);
    const reason = reasonText(withReason(numbers, cases), rule, alsoDiffers, day);
    const told = [
      asSentence(verdict, reason, mayChange({ rule, evidence: undefined, open })),
      numbers === undefined ? undefined : openText(comparisons),
      oneDishText(verdict, comparisons[0]!),
      day && judgedText(day),
    ];
    return { verdict, rule, evidence: undefined, open, sentence: told.filter(text => text !== undefined).join(' ') };
  }
  const reason = names.length > 1
    ? `the seeds were estimated, and with the least or the most of them the verdict would be ${names.map(name => `“${name}”`).join(' or ')}`
    : 'the seeds were estimated, and not every number of them can be compared';
  return {
    verdict: 'cannot tell', rule: 'not-measured', evidence: undefined,
    sentence: asSentence('cannot tell', joined(numbers, reason), false),
  };
}

function reasonText(
  numbers: string | undefined, rule: RuleId, alsoDiffers: readonly string[], judging: JudgeDay | undefined,
): string {
  switch (rule) {
    case 'to-be-judged': return joined(toBeJudgedText(judging!), numbers, 'the seeds were estimated');
    case 'more-differs':
      return joined(numbers === undefined ? differsInText(alsoDiffers) : `${numbers}, ${differsText(alsoDiffers)}`,
        'the seeds were estimated');
    default: return joined(numbers, 'the seeds were estimated, and the verdict is the same with the least and with the most of each side');
  }
}

function withReason(numbers: string | undefined, cases: readonly Contest[]): string | undefined {
  return numbers === undefined ? undefined : `${numbers}${decidingText(cases) ?? ''}`;
}

function joined(...texts: readonly (string | undefined)[]): string {
  return texts.filter(text => text !== undefined).join('; ');
}

/**
 * Undefined where it hangs on the number of seeds by which looks the sides are compared, as it does where all seed of a
 * corner is up: no range of such counts says anything.
 *
 * @example
 * 'by day 28, 14 of 22 to 26 treated seeds had germinated (54 to 64 %) and 2 of 18 to 22 untreated ...'
 */
function numbersText(comparisons: readonly Comparison[]): string | undefined {
  const side = (what: 'treated' | 'untreated') => {
    const shares = comparisons.map(({ germinated }) => germinated[what]);
    const percents = spanText(shares.map(({ x, n }) => wholePercent(x / n)));
    return { of: `${spanText(shares.map(({ x }) => x))} of ${spanText(shares.map(({ n }) => n))}`, percents: `(${percents} %)` };
  };
  const [treated, untreated] = [side('treated'), side('untreated')];
  const [a, b] = (['treated', 'untreated'] as const).map(what => byDays(comparisons.map(({ looks }) => looks[what])));
  if (a === undefined || b === undefined) return undefined;
  return a === b
    ? `${a}, ${treated.of} treated seeds had germinated ${treated.percents} and ${untreated.of} untreated ${untreated.percents}`
    : `${treated.of} treated seeds had germinated ${a} ${treated.percents} and ${untreated.of} untreated ${b} ${untreated.percents}`;
}

/** Undefined where the corners are not compared by the same looks. */
function byDays([first, ...others]: readonly Looks[]): string | undefined {
  const isSame = others.every(({ from, to }) => from === first?.from && to === first.to);
  return first && isSame ? daysText(first) : undefined;
}
