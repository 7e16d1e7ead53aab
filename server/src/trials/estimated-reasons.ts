/**
 * What decided a verdict on estimated seed, beside the numbers compared: the reason of a counted comparison, with the
 * range that the corners of the estimates allow for each number.
 */
import type { Comparison } from '../measures/comparison.ts';
import type { Evidence } from '../measures/evidence.ts';
import { isUndefined } from '../measures/measured.ts';
import { CUT_SHORT, DID, laterWords, TOO_SOON, weakWords } from '../measures/verdict-phrases.ts';
import type { RuleId } from '../measures/verdict-rules.ts';
import { rangeText } from '../model/estimate.ts';
import type { Contest } from './lot-trial.ts';

interface Case {
  readonly comparison: Comparison;
  readonly evidence: Evidence;
}

/**
 * Joined to the numbers compared. Undefined where the numbers say it all, and where not all corners are decided alike.
 *
 * Example: ', but 28 of 38 treated seedlings are weak (leggy, abnormal or dead) and 0 of 5 untreated'
 */
export function decidingText(contests: readonly Contest[]): string | undefined {
  const [rule, ...others] = new Set(contests.map(({ verdict }) => verdict.rule));
  const cases = contests.flatMap(({ comparison, verdict: { evidence } }): Case[] => (
    isUndefined(comparison) || !evidence ? [] : [{ comparison, evidence }]));
  if (!rule || others.length > 0 || cases.length < contests.length) return undefined;
  return textOf(rule, cases);
}

function textOf(rule: RuleId, cases: readonly Case[]): string | undefined {
  const isWeaker = cases.every(({ evidence }) => evidence.weaker);
  switch (rule) {
    case 'more-but-weak': return `, but ${weakText(cases)}`;
    case 'ahead-at-a-price': return isWeaker ? `, but ${weakText(cases)}` : undefined;
    case 'fewer-but-sound': return `, but ${weakText(cases, 'untreatedWeak')}`;
    case 'fewer-sound': return isWeaker ? `; ${weakText(cases)}` : undefined;
    case 'more': return isWeaker ? `; it comes at a price: ${weakText(cases)}` : undefined;
    case 'overtaken': return overtakenText(cases);
    case 'ended-early': return endedText(cases);
    case 'too-soon': return `, ${TOO_SOON}`;
    default: return undefined;
  }
}

function weakText(cases: readonly Case[], what: 'weak' | 'untreatedWeak' = 'weak'): string {
  const of = (side: 'treated' | 'untreated') => {
    const found = cases.map(({ comparison }) => comparison[what][side]);
    return `${spanText(found.flatMap(({ least, most }) => [least, most]))} of ${spanText(found.map(each => each.of))}`;
  };
  return weakWords({ treated: of('treated'), untreated: of('untreated') },
    cases.every(({ comparison }) => comparison[what].by === 'last looks'));
}

/** The side that was behind may have caught up by the last looks at both. */
function overtakenText(cases: readonly Case[]): string | undefined {
  const [first, ...others] = cases.map(({ evidence }) => evidence.overtaken!);
  if (!first || others.some(({ by, what }) => by !== first.by || what !== first.what)) return undefined;
  const claim = first.by === 'untreated' ? 'better' : 'worse';
  const lasts = cases.map(({ comparison }) => comparison[claim].inTheEnd![first.what]);
  const of = (side: 'first' | 'second') => {
    const shares = lasts.map(last => last[side]);
    return `${spanText(shares.map(({ x }) => x))} of ${spanText(shares.map(({ n }) => n))}`;
  };
  const did = DID[first.what];
  const other = first.by === 'untreated' ? 'treated' : 'untreated';
  return `, but that does not show by the last looks any more: ${of('first')} ${other} seeds ${did} and ${of('second')} ${first.by}`;
}

/** What was found after the looks compared is the same in all corners where these are compared by the same looks. */
function endedText(cases: readonly Case[]): string | undefined {
  if (cases.some(({ comparison }) => comparison.isCutShort)) {
    return `, but ${CUT_SHORT}`;
  }
  const most = (side: 'treated' | 'untreated') => Math.max(...cases.map(({ comparison }) => comparison.later[side]));
  const [side, other] = most('treated') > most('untreated') ? ['treated', 'untreated'] as const : ['untreated', 'treated'] as const;
  const found = spanText(cases.map(({ comparison }) => comparison.later[side]));
  const isOtherShorter = cases.every(({ comparison: { lastLooks } }) => lastLooks[other] < lastLooks[side]);
  return `, but ${laterWords(found, side, isOtherShorter)}`;
}

/**
 * Undefined where none may germinate any more.
 *
 * Example: '2 to 6 of 38 to 42 treated seeds may still germinate.'
 */
export function openText(comparisons: readonly Comparison[]): string | undefined {
  const sides = (['treated', 'untreated'] as const).flatMap(side => {
    const open = comparisons.map(comparison => comparison.open[side]);
    const seeds = comparisons.map(({ germinated }) => germinated[side].n);
    return open.some(n => n > 0) ? [`${spanText(open)} of ${spanText(seeds)} ${side}`] : [];
  });
  return sides.length === 0 ? undefined : `${sides.join(' and ')} seeds may still germinate.`;
}

export function spanText(numbers: readonly number[]): string {
  return rangeText({ least: Math.min(...numbers), most: Math.max(...numbers) });
}
