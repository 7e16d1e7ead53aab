import type { Claim, Looks } from './claim.ts';
import type { Comparison } from './comparison.ts';
import type { Share } from './difference.ts';
import type { Evidence } from './evidence.ts';
import { rangeText } from '../model/estimate.ts';
import type { Overtaken } from './lasting.ts';
import { isUndefined } from './measured.ts';
import { THRESHOLDS } from './thresholds.ts';
import type { RuleId, VerdictName } from './verdict-rules.ts';
import { asSentence, limitsText, percent, pointsText } from './verdict-words.ts';
import type { WeakSeedlings } from './weak.ts';

/** The day that the grower named beforehand. */
export interface JudgeDay {
  /** In words: '2026-05-01', or 'day 120 (2026-05-11)'. */
  readonly on: string;
  /** The day on which that was written, in words. */
  readonly written: string;
  readonly state: 'waiting' | 'on the day' | 'off the day';
}

/** All that the sentence of a verdict may speak of. */
export interface Told {
  readonly verdict: VerdictName;
  readonly rule: Exclude<RuleId, 'not-measured'>;
  readonly evidence: Evidence;
  readonly comparison: Comparison;
  readonly alsoDiffers: readonly string[];
  readonly judging?: JudgeDay | undefined;
}

/** The verdict with its reason in plain words, and what has to be known to trust it. */
export function sentence(told: Told): string {
  const first = asSentence(told.verdict, reason(told), mayChange(told));
  return [first, ...provisos(told)].join(' ');
}

/** More seed may germinate, or the day of judging has not come. */
export function mayChange(
  { rule, evidence, open = false }: {
    readonly rule: RuleId; readonly evidence: Evidence | undefined; readonly open?: boolean;
  },
): boolean {
  return open || evidence?.open === true || rule === 'to-be-judged';
}

function reason(told: Told): string {
  const { rule, evidence, comparison } = told;
  switch (rule) {
    case 'more-differs':
      return `${germinated(told)}, ${differsText(told.alsoDiffers)}`;
    case 'to-be-judged':
      return `${toBeJudgedText(told.judging!)}; ${germinated(told)}`;
    case 'fewer':
    case 'nothing-seen':
    case 'still-open':
    case 'too-few':
      return `${germinated(told)}: ${difference(comparison)}${rule === 'nothing-seen' ? `. ${excludes(comparison)}` : ''}`;
    case 'ended-early':
      return `${germinated(told)}: ${difference(comparison)}, but ${comparison.isCutShort ? CUT_SHORT : later(comparison)}`;
    case 'overtaken':
      return inTheEnd(told, evidence.overtaken!);
    case 'more':
      return `${germinated(told)}: ${difference(comparison)}${evidence.weaker ? `. It comes at a price: ${weak(comparison)}` : ''}`;
    case 'fewer-sound':
      return `${soundSeedlings(told)}; ${weak(comparison)}`;
    case 'more-but-weak':
      return `${germinated(told)}: ${difference(comparison)}, but ${weak(comparison)}`;
    case 'ready':
      return `${germinated(told)}: ${difference(comparison)}${half(comparison)}`;
    case 'ahead':
      return `the treated seed was ahead: ${gap(comparison.better, 'treated')}; ${germinated(told)}: ${difference(comparison)}`;
    case 'ahead-at-a-price':
      return `the treated seed was ahead: ${gap(comparison.better, 'treated')}; but ${price(told)}; ${germinated(told)}`;
    case 'behind':
    case 'behind-perhaps-more':
      return `the treated seed was behind: ${gap(comparison.worse, 'untreated')}; ${germinated(told)}: ${difference(comparison)}`
        + (rule === 'behind' ? '' : `, so a gain of up to ${upTo(comparison.germinated.difference.high)} is not excluded`);
  }
}

export function differsText(alsoDiffers: readonly string[]): string {
  return `but the sides also differ in ${alsoDiffers.join(', ')}`;
}

export function toBeJudgedText({ on, written }: JudgeDay): string {
  return `this trial is judged by the counts of ${on}, as you wrote on ${written}`;
}

/** Whose looks are told: those of the claim that was shown, else those that lie closer together. */
function claimOf({ rule, comparison, evidence }: Told): 'better' | 'worse' {
  if (rule === 'overtaken') return evidence.overtaken?.by === 'untreated' ? 'better' : 'worse';
  if (rule === 'more' || rule === 'ahead' || rule === 'ahead-at-a-price' || rule === 'more-but-weak') return 'better';
  if (rule === 'fewer' || rule === 'fewer-sound' || rule === 'behind' || rule === 'behind-perhaps-more') return 'worse';
  return comparison.shown;
}

function germinated(told: Told): string {
  return sides(told, 'germinated', 'had germinated');
}

function soundSeedlings(told: Told): string {
  return `${sides(told, 'sound', 'had given sound seedlings')}: ${difference(told.comparison, 'sound')}`;
}

/** The counts that were compared, with the days of the looks that found them. */
function sides(told: Told, what: 'germinated' | 'sound', did: string): string {
  const { comparison } = told;
  const claim = claimOf(told);
  const { looks: { first, second } } = comparison[claim];
  const [treatedLooks, untreatedLooks] = claim === 'better' ? [first, second] : [second, first];
  const { treated, untreated } = claim === comparison.shown
    ? comparison[what]
    : sharesOf(comparison[claim][what], claim);
  const [a, b] = [daysText(treatedLooks), daysText(untreatedLooks)];
  return a === b
    ? `${a}, ${ofSeeds(treated)} treated seeds ${did} (${share(treated)}) and ${ofSeeds(untreated)} untreated (${share(untreated)})`
    : `${ofSeeds(treated)} treated seeds ${did} ${a} (${share(treated)}) and ${ofSeeds(untreated)} untreated ${b} (${share(untreated)})`;
}

function sharesOf(
  { first, second }: Record<'first' | 'second', Share>, claim: 'better' | 'worse',
): Record<'treated' | 'untreated', Share> {
  return claim === 'better' ? { treated: first, untreated: second } : { treated: second, untreated: first };
}

/** Example: 'by day 28', or 'by days 26 to 28' of several dishes */
export function daysText({ from, to }: Looks): string {
  return from === to ? `by day ${to}` : `by days ${from} to ${to}`;
}

function difference(comparison: Comparison, what: 'germinated' | 'sound' = 'germinated'): string {
  const { difference: found } = comparison[what];
  const whole = Math.round(100 * found.value);
  const size = whole === 0 ? 'no difference' : `${pointsText(Math.abs(found.value))} ${whole > 0 ? 'more' : 'fewer'}`;
  return `${size} (95 % interval ${limitsText(found)})`;
}

/** Where the one side was furthest ahead of the other. */
function gap({ gap: { firstDays, secondDays, first, second } }: Claim, ahead: 'treated' | 'untreated'): string {
  const other = ahead === 'treated' ? 'untreated' : 'treated';
  const [a, b] = [daysText(firstDays), daysText(secondDays)];
  return a === b
    ? `${a}, ${ofSeeds(first)} ${ahead} seeds had germinated and ${ofSeeds(second)} ${other}`
    : `${ofSeeds(first)} ${ahead} seeds had germinated ${a} and ${ofSeeds(second)} ${other} ${b}`;
}

function price({ evidence, comparison }: Told): string {
  const loss = evidence.noGreatLoss
    ? undefined
    : `a loss of up to ${upTo(-comparison.germinated.difference.low)} is not excluded`;
  return [loss, evidence.weaker ? weak(comparison) : undefined].filter(text => text !== undefined).join(', and ');
}

function upTo(share: number): string {
  return pointsText(Math.ceil(100 * share - 1e-9) / 100);
}

function excludes({ germinated: { difference: { high } } }: Comparison): string {
  return high <= 0
    ? 'Any benefit is excluded'
    : `A benefit of more than ${upTo(high)} is excluded`;
}

function weak({ weak: { treated, untreated, by } }: Comparison): string {
  const when = by === 'last looks' ? 'by the last looks, ' : '';
  return `${when}${weakText(treated)} treated seedlings are weak (leggy, abnormal or dead) and ${weakText(untreated)} untreated`;
}

/** Example: '4 of 18', or '4 to 6 of 18' where the words of the counts may be about the same seedlings */
function weakText(weak: WeakSeedlings): string {
  return `${rangeText(weak)} of ${weak.of}`;
}

const STRICTER = 'The counts compared end where seed that had not germinated was taken out, so the stricter level applies.';

const CUT_SHORT = 'seed that had not germinated was taken out then, and what was counted since cannot be compared';

/** The counts compared, and those that take the claim back. */
function inTheEnd(told: Told, { by, what }: Overtaken): string {
  const did = what === 'germinated' ? 'had germinated' : 'had given sound seedlings';
  const { comparison: { better, worse } } = told;
  const { first, second } = (by === 'untreated' ? better : worse).inTheEnd![what];
  const other = by === 'untreated' ? 'treated' : 'untreated';
  return `${sides(told, what, did)}, but the last looks do not bear that out: by then, ${ofSeeds(second)} ${by} seeds ${did} `
    + `(${share(second)}) and ${ofSeeds(first)} ${other} (${share(first)})`;
}

/** The side that was watched for longer may have shown what the other had no time for. */
function later({ later: { treated, untreated } }: Comparison): string {
  const [n, side, other] = treated > untreated ? [treated, 'treated', 'untreated'] : [untreated, 'untreated', 'treated'];
  return `${n} more ${side} ${n === 1 ? 'seed' : 'seeds'} germinated after that, and the ${other} seed was not watched for as long`;
}

function half({ untreatedHalf }: Comparison): string {
  return isUndefined(untreatedHalf) ? '' : `; half of the untreated seed had germinated by day ${untreatedHalf.by}`;
}

function provisos({ rule, verdict, evidence, comparison, judging }: Told): string[] {
  const { open } = comparison;
  return [
    evidence.open ? waiting(open, comparison) : undefined,
    evidence.tooFew && rule === 'too-few' ? `Fewer than ${THRESHOLDS.fewestSeeds.value} seeds a side are too few to tell.` : undefined,
    comparison.isCutShort && rule !== 'ended-early' ? STRICTER : undefined,
    oneDishText(verdict, comparison),
    judging && judgedText(judging),
  ].filter(text => text !== undefined);
}

/** What no sum can tell apart; undefined where nothing is claimed, or where a side has several dishes. */
export function oneDishText(verdict: VerdictName, { dishes }: Comparison): string | undefined {
  const isClaim = verdict === 'worth repeating' || verdict === 'harmful';
  return isClaim && dishes.treated === 1 && dishes.untreated === 1
    ? 'With one dish a side, a difference between the two dishes themselves would look the same.'
    : undefined;
}

/** By which counts it was judged; undefined where the day has not come. */
export function judgedText({ on, written, state }: JudgeDay): string | undefined {
  switch (state) {
    case 'waiting': return undefined;
    case 'on the day': return `Judged on ${on}, as you wrote on ${written}; later counts do not change it.`;
    case 'off the day':
      return `You planned to judge it on ${on}, but did not count every batch on that day or in the week after, so all counts are `
        + 'used, and the stricter level for looks in between applies.';
  }
}

function waiting({ treated, untreated }: Comparison['open'], { germinated: seeds }: Comparison): string {
  const sides = [
    treated > 0 ? `${treated} of ${seeds.treated.n} treated` : undefined,
    untreated > 0 ? `${untreated} of ${seeds.untreated.n} untreated` : undefined,
  ].filter(text => text !== undefined);
  return `${sides.join(' and ')} seeds may still germinate.`;
}

function ofSeeds({ x, n }: Share): string {
  return `${x} of ${n}`;
}

function share({ x, n }: Share): string {
  return percent(x / n);
}
