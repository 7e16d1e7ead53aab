import type { Claim, Looks } from './claim.ts';
import type { Comparison, WeakBy } from './comparison.ts';
import { claimed } from './contrast.ts';
import type { Difference, Share } from './difference.ts';
import type { Evidence } from './evidence.ts';
import { rangeText } from '../model/estimate.ts';
import { fisher, reaches } from './fisher.ts';
import type { Overtaken } from './lasting.ts';
import { isUndefined } from './measured.ts';
import { THRESHOLDS } from './thresholds.ts';
import { chanceWords, CUT_SHORT, DID, laterWords, TOO_SOON, unseenSide, unseenWords, weakWords } from './verdict-phrases.ts';
import type { RuleId, VerdictName } from './verdict-rules.ts';
import { bySide } from './seen.ts';
import { asSentence, limitsText, limitText, percent, pointsText, wholePercent } from './verdict-words.ts';
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
      return `${germinated(told)}: ${difference(told)}${rule === 'nothing-seen' ? `. ${excludes(comparison)}` : ''}`;
    case 'too-few':
      return `${germinated(told)}: ${difference(told)}${evidence.tooFew ? '' : undecided(told)}`;
    case 'ended-early':
      return `${germinated(told)}: ${difference(told)}, but ${comparison.isCutShort ? CUT_SHORT : later(comparison)}`;
    case 'overtaken':
      return inTheEnd(told, evidence.overtaken!);
    case 'more':
      return `${germinated(told)}: ${difference(told)}${evidence.weaker ? `. It comes at a price: ${weak(comparison)}` : ''}`;
    case 'fewer-sound':
      return soundSeedlings(told) + (evidence.weaker ? `; ${weak(comparison)}`
        : evidence.untreatedWeaker ? `, though ${weakOf(comparison.untreatedWeak)}` : '');
    case 'fewer-but-sound':
      return `${germinated(told)}: ${difference(told)}, but ${weakOf(comparison.untreatedWeak)}`;
    case 'more-but-weak':
      return `${germinated(told)}: ${difference(told)}, but ${weak(comparison)}`;
    case 'ready':
      return `${germinated(told)}: ${difference(told)}${half(comparison)}`;
    case 'ahead':
      return `the treated seed was ahead: ${gap(comparison.better, 'treated')}; ${germinated(told)}: ${difference(told)}`
        + lastText(comparison);
    case 'too-soon':
      return `${germinated(told)}, ${TOO_SOON}`;
    case 'ahead-at-a-price':
      return `the treated seed was ahead: ${gap(comparison.better, 'treated')}; but ${price(told)}; ${germinated(told)}`;
    case 'behind':
    case 'behind-perhaps-more':
      return `the treated seed was behind: ${gap(comparison.worse, 'untreated')}; ${germinated(told)}: ${difference(told)}`
        + (rule === 'behind' ? '' : `, so a gain of up to ${limitText(comparison.germinated.difference.high)} is not excluded`);
  }
}

export function differsText(alsoDiffers: readonly string[]): string {
  return `but ${differsInText(alsoDiffers)}`;
}

export function differsInText(alsoDiffers: readonly string[]): string {
  return `the sides also differ in ${alsoDiffers.join(', ')}`;
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
  return sides(told, 'germinated');
}

function soundSeedlings(told: Told): string {
  return `${sides(told, 'sound')}: ${difference(told, 'sound')}`;
}

/** The counts that were compared, with the days of the looks that found them. */
function sides(told: Told, what: 'germinated' | 'sound'): string {
  const did = DID[what];
  const { comparison } = told;
  const claim = claimOf(told);
  const looks = bySide(comparison[claim], claim)[what];
  const { treated, untreated } = comparison.seen[claim][what];
  const [a, b] = [daysText(looks.treated), daysText(looks.untreated)];
  // Where no difference is told beside it, a look that nobody took is not told as one that found nothing.
  const unseen = told.rule === 'more-differs' ? unseenSide(looks) : undefined;
  if (unseen === 'treated') return unseenWords('treated', `${b}, ${ofSeeds(untreated)} untreated seeds ${did} (${share(untreated)})`);
  if (unseen === 'untreated') return unseenWords('untreated', `${a}, ${ofSeeds(treated)} treated seeds ${did} (${share(treated)})`);
  return a === b
    ? `${a}, ${ofSeeds(treated)} treated seeds ${did} (${share(treated)}) and ${ofSeeds(untreated)} untreated (${share(untreated)})`
    : `${ofSeeds(treated)} treated seeds ${did} ${a} (${share(treated)}) and ${ofSeeds(untreated)} untreated ${b} (${share(untreated)})`;
}

/** Example: 'by day 28', or 'by days 26 to 28' of several dishes */
export function daysText({ from, to }: Looks): string {
  return from === to ? `by day ${to}` : `by days ${from} to ${to}`;
}

/** Of the counts that are told beside it. */
function difference(told: Told, what: 'germinated' | 'sound' = 'germinated'): string {
  const { value, low, high } = differenceOf(told.comparison, claimOf(told), what);
  const whole = wholePercent(value);
  const size = whole === 0 ? 'no difference' : `${pointsText(Math.abs(value))} ${whole > 0 ? 'more' : 'fewer'}`;
  return `${size} (95 % interval ${limitsText({ low, high })})`;
}

/** Where the claims are told by one pair of looks, with the limits of both; else with those of the one claim. */
function differenceOf(comparison: Comparison, claim: 'better' | 'worse', what: 'germinated' | 'sound'): Difference {
  const { treated, untreated } = comparison.seen[claim][what];
  const shown = comparison[what];
  if (isSame(treated, shown.treated) && isSame(untreated, shown.untreated)) return shown.difference;
  const value = treated.x / treated.n - untreated.x / untreated.n;
  const { low, high } = claimed(comparison[claim][what]);
  const own = claim === 'better' ? { low, high } : { low: -high, high: -low };
  return { value, low: Math.min(value, own.low), high: Math.max(value, own.high) };
}

function isSame(a: Share, b: Share): boolean {
  return a.x === b.x && a.n === b.n;
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
    : `a loss of up to ${limitText(-comparison.germinated.difference.low)} is not excluded`;
  return [loss, evidence.weaker ? weak(comparison) : undefined].filter(text => text !== undefined).join(', and ');
}

/** Why the counts do not tell, though there are some. */
function undecided(told: Told): string {
  const found = differenceOf(told.comparison, claimOf(told), 'germinated');
  return chanceWords(found) || (found.high > 0 ? `, but a benefit of up to ${limitText(found.high)} is not excluded` : '');
}

function excludes({ germinated: { difference: { high } } }: Comparison): string {
  return high <= 0
    ? 'Any benefit is excluded'
    : `A benefit of ${wholePercent(high) + 1} points or more is excluded`;
}

function weak(comparison: Comparison): string {
  return weakOf(comparison.weak);
}

function weakOf({ treated, untreated, by }: WeakBy): string {
  return weakWords({ treated: weakText(treated), untreated: weakText(untreated) }, by === 'last looks');
}

/** Example: '4 of 18', or '4 to 6 of 18' where the words of the counts may be about the same seedlings */
function weakText(weak: WeakSeedlings): string {
  return `${rangeText(weak)} of ${weak.of}`;
}

const STRICTER = 'The counts compared end where seed that had not germinated was taken out, so the stricter level applies.';

/** The counts compared, and those that take the claim back. */
function inTheEnd(told: Told, { by, what, isPace }: Overtaken): string {
  const did = DID[what];
  const { comparison } = told;
  const other = by === 'untreated' ? 'treated' : 'untreated';
  const lead = isPace ? gap(comparison[by === 'untreated' ? 'better' : 'worse'], other) : sides(told, what);
  const last = comparison.inTheEnd[what];
  return `${lead}, but that does not show by the last looks any more: ${ofSeeds(last[other])} ${other} seeds ${did} `
    + `(${share(last[other])}) and ${ofSeeds(last[by])} ${by} (${share(last[by])})`;
}

/** What the sides came to, where the one that was ahead was caught up with; not what was said of the lead already. */
function lastText({ better, inTheEnd: { germinated: { treated, untreated } } }: Comparison): string {
  const { inTheEnd: last, gap: lead } = better;
  return last && !(isSame(lead.first, treated) && isSame(lead.second, untreated))
    ? `; by the last looks, ${ofSeeds(treated)} treated (${share(treated)}) and ${ofSeeds(untreated)} untreated (${share(untreated)})`
    : '';
}

function later({ later: { treated, untreated }, lastLooks }: Comparison): string {
  const [side, other] = treated > untreated ? ['treated', 'untreated'] as const : ['untreated', 'treated'] as const;
  return laterWords(String(Math.max(treated, untreated)), side, lastLooks[other] < lastLooks[side]);
}

function half({ untreatedHalf }: Comparison): string {
  return isUndefined(untreatedHalf) ? '' : `; half of the untreated seed had germinated by day ${untreatedHalf.by}`;
}

function provisos({ rule, verdict, evidence, comparison, judging }: Told): string[] {
  const { open } = comparison;
  return [
    evidence.open ? waiting(open, comparison) : undefined,
    evidence.tooFew && rule === 'too-few' ? tooFewText(comparison) : undefined,
    comparison.isCutShort && rule !== 'ended-early' ? STRICTER : undefined,
    evidence.tooFew ? undefined : apartText(rule, comparison),
    oneDishText(verdict, comparison),
    judging && judgedText(judging),
  ].filter(text => text !== undefined);
}

/** Where the last counts differ more than chance explains, but were not made on one day. */
function apartText(
  rule: RuleId, { germinated: { treated, untreated }, later, lastLooks }: Comparison,
): string | undefined {
  if ((rule !== 'too-few' && rule !== 'still-open') || lastLooks.treated === lastLooks.untreated) return undefined;
  const [a, b] = [{ x: treated.x + later.treated, n: treated.n }, { x: untreated.x + later.untreated, n: untreated.n }];
  return reaches(fisher(a, b).twoSided)
    ? `By the last looks, ${ofSeeds(a)} treated seeds had germinated and ${ofSeeds(b)} untreated, but they were not on the same day: `
      + 'look at both sides on one day.'
    : undefined;
}

function tooFewText({ full, germinated: { treated, untreated } }: Comparison): string {
  const isEmpty = full.treated < treated.n || full.untreated < untreated.n;
  return `Fewer than ${THRESHOLDS.fewestSeeds.value} ${isEmpty ? 'full seeds' : 'seeds'} a side are too few to tell.`;
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
    case 'on the day': return `Judged on ${on}, as you wrote on ${written}; later counts of what germinated do not change it.`;
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
