import type { Comparison } from './comparison.ts';
import type { Contrast } from './contrast.ts';
import type { Share } from './difference.ts';
import type { Evidence } from './evidence.ts';
import { reaches } from './fisher.ts';
import { isUndefined, type Measured } from './measured.ts';
import type { RuleId, VerdictName } from './verdict-rules.ts';
import { asSentence, limitsText, percent, probability, speedWords } from './verdict-words.ts';

/** All that the sentence of a verdict may speak of. */
export interface Told {
  readonly verdict: VerdictName;
  readonly rule: Exclude<RuleId, 'not-measured'>;
  readonly evidence: Evidence;
  readonly needed: Measured | undefined;
  readonly comparison: Comparison;
  readonly alsoDiffers: readonly string[];
}

/** The verdict with its reason, in one sentence of plain words. */
export function sentence(told: Told): string {
  return asSentence(told.verdict, reason(told), told.evidence.open);
}

function reason(told: Told): string {
  const { rule, evidence } = told;
  switch (rule) {
    case 'more-differs':
      return `${counts(told)}, but the sides also differ in ${told.alsoDiffers.join(', ')}`;
    case 'fewer':
    case 'more':
      return `${counts(told)}, ${points(evidence)}${doubt(evidence.contrast)}`;
    case 'weaker':
      return `${weak(told)}; ${counts(told)}`;
    case 'slower':
    case 'faster':
      return `${speed(told)}; ${counts(told)}`;
    case 'bought':
      return `${speed(told)}, but at a price; ${evidence.cost ? `${weak(told)}; ` : ''}${counts(told)}`;
    case 'ready':
      return `${counts(told)}, ${points(evidence)}${amongDoses(evidence)}${ready(told)}`;
    case 'still-open':
      return `${counts(told)}, ${points(evidence)}${amongDoses(evidence)}; ${waiting(told)} may still germinate`;
    case 'nothing-seen':
      return `${counts(told)}, ${points(evidence)}${amongDoses(evidence)}; ${contest(evidence)} would have been told apart with a `
        + `probability of ${evidence.power > 0.99 ? 'more than 99 %' : percent(evidence.power)}`;
    case 'too-few':
      return `${counts(told)}, ${points(evidence)}${amongDoses(evidence)}; ${wanted(told)}`;
  }
}

function counts({ comparison: { byDay }, evidence: { outcome, contrast } }: Told): string {
  const did = outcome === 'sound' ? 'gave sound seedlings' : 'germinated';
  return `by day ${byDay}, ${ofSeeds(contrast.treated)} treated seeds ${did} (${share(contrast.treated)}), `
    + `${ofSeeds(contrast.untreated)} untreated (${share(contrast.untreated)})`;
}

function points({ contrast: { difference } }: Evidence): string {
  const whole = Math.round(100 * difference.value);
  const size = Math.abs(whole) === 1 ? '1 point' : `${Math.abs(whole)} points`;
  const found = whole === 0 ? 'no difference' : `${size} ${whole > 0 ? 'more' : 'fewer'}`;
  return `${found} (95 % interval ${limitsText(difference)})`;
}

/** What would be shown by itself may be chance among the doses of a ladder; the reader is told. */
function amongDoses({ more, fewer, fisherP, contrast: { difference } }: Evidence): string {
  if (more || fewer || (difference.low <= 0 && difference.high >= 0)) return '';
  return `; among so many doses that may be chance (Fisher's exact test after Holm, p ${probability(fisherP)})`;
}

/** Newcombe's interval and Fisher's test may disagree; the reader is told. */
function doubt({ fisher }: Contrast): string {
  return reaches(fisher.twoSided)
    ? ''
    : `; Fisher's exact test by itself leaves room for chance (p ${probability(fisher.twoSided)})`;
}

function speed({ rule, evidence: { speedP }, comparison: { t50, speed: { combined } } }: Told): string {
  const how = speedWords(rule !== 'slower', !isUndefined(combined) && combined.ofGerminated);
  const p = speedP === undefined ? '' : ` (log-rank tests, p ${probability(speedP)})`;
  const days = isUndefined(t50) || Math.abs(t50.value) < 0.05
    ? ''
    : `, T50 ${Math.abs(t50.value).toFixed(1)} days ${t50.value < 0 ? 'earlier' : 'later'}`;
  return `treated seed ${how}${p}${days}`;
}

function weak({ comparison: { seedlings } }: Told): string {
  if (isUndefined(seedlings.weak)) return 'weak seedlings are more frequent';
  const { treated, untreated } = seedlings.weak;
  return `weak seedlings (leggy, abnormal or dead) are ${ofSeeds(treated)} treated ones, ${ofSeeds(untreated)} untreated`
    + doubt(seedlings.weak);
}

function ready({ comparison: { untreatedT50OfSown } }: Told): string {
  return isUndefined(untreatedT50OfSown)
    ? ''
    : `; half of the untreated seed was up by day ${untreatedT50OfSown.by}`;
}

function waiting({ comparison: { open } }: Told): string {
  const sides = (['treated', 'untreated'] as const).filter(side => open[side] > 0);
  const one = sides.length === 1 && open[sides[0]!] === 1;
  return `${sides.map(side => `${open[side]} ${side}`).join(' and ')} ${one ? 'seed' : 'seeds'}`;
}

function wanted({ evidence, needed }: Told): string {
  if (needed === undefined || isUndefined(needed)) return needed?.undefined ?? 'the seeds are too few';
  const { visible, contrast: { treated, untreated } } = evidence;
  const pair = visible ? `${share(untreated)} and ${share(treated)}` : contest(evidence);
  return `to tell ${pair} apart takes ${needed.value} seeds a side`;
}

/** The two shares whose difference was, or was not, visible. */
function contest({ from, to }: Evidence): string {
  return `${percent(from)} and ${percent(to)}`;
}

function ofSeeds({ x, n }: Share): string {
  return `${x} of ${n}`;
}

function share({ x, n }: Share): string {
  return percent(x / n);
}
