import { counted } from '../model/counted.ts';
import { rangeText } from '../model/estimate.ts';
import type { AcrossFindings, AcrossRuleId } from './across-rules.ts';
import { isUndefined } from './measured.ts';
import { THRESHOLDS } from './thresholds.ts';
import { chanceWords, weakWords } from './verdict-phrases.ts';
import type { VerdictName } from './verdict-rules.ts';
import { asSentence, limitsText, pointsText, wholePercent } from './verdict-words.ts';
import { weakOver } from './weak.ts';

/** Their reason names the weak seedlings where it has any to name. */
const NAMING_WEAK: readonly AcrossRuleId[] = ['more-in-lots', 'at-a-price-in-lots', 'fewer-but-sound-in-lots'];

/** The verdict over several lots with its reason in plain words, and with the weak seedlings of the treated side. */
export function acrossSentence(verdict: VerdictName, rule: AcrossRuleId, findings: AcrossFindings): string {
  const first = asSentence(verdict, reason(rule, findings), findings.open > 0);
  return findings.weaker && !NAMING_WEAK.includes(rule) ? `${first} ${weakText(findings, 'weak')}.` : first;
}

function reason(rule: AcrossRuleId, findings: AcrossFindings): string {
  const { lots, open } = findings;
  const stillOpen = open === 0 ? '' : lots === 1 ? ' (still open)' : ` (${open} of them still open)`;
  const those = `${counted(lots, 'lot')}${stillOpen}`;
  const many = `in ${those}`;
  switch (rule) {
    case 'lots-differ':
      return `the ${those} did not respond alike: more of the treated seeds germinated in some, fewer in others`;
    case 'fewer-in-lots':
      return `${many} ${difference(findings)}`;
    case 'more-in-lots':
      return `${many} ${difference(findings)}${findings.weaker ? `. It comes at a price: ${weakText(findings, 'weak')}` : ''}`;
    case 'fewer-but-sound-in-lots':
      return `${many} ${difference(findings)}, but ${weakText(findings, 'untreatedWeak')}`;
    case 'fewer-sound-in-lots':
      return `${many} fewer of the treated seeds gave sound seedlings`;
    case 'behind-in-lots':
      return `${many} treated seed was behind over the days; ${difference(findings)}`;
    case 'ahead-in-lots':
      return `${many} treated seed was ahead over the days; ${difference(findings)}`;
    case 'overtaken-in-lots':
      return `${many} ${difference(findings)} at the looks compared, but the last looks do not bear out that one side was ahead`;
    case 'at-a-price-in-lots':
      return `${many} treated seed was ahead, ${price(findings)}; ${difference(findings)}`;
    case 'ready-in-lots':
      return `${many} untreated seed germinated well and soon; ${difference(findings)}`;
    case 'not-shown':
      return lots === 0 ? 'no lot has treated and untreated seed that was counted' : `${many} ${difference(findings)}${chance(findings)}`;
  }
}

/** Example: '40 of 44 treated seedlings are weak (leggy, abnormal or dead) and 0 of 5 untreated' */
function weakText({ strata }: AcrossFindings, what: 'weak' | 'untreatedWeak'): string {
  const [treated, untreated] = (['treated', 'untreated'] as const).map(side => weakOver(strata.map(each => each[what][side])));
  return weakWords({
    treated: `${rangeText(treated!)} of ${treated!.of}`, untreated: `${rangeText(untreated!)} of ${untreated!.of}`,
  });
}

function price(findings: AcrossFindings): string {
  if (findings.weaker) return `but ${weakText(findings, 'weak')}`;
  const tolerated = pointsText(THRESHOLDS.toleratedLoss.value);
  return findings.betterInADose ? `but a loss of more than ${tolerated} is not excluded` : 'but no single dose shows it';
}

/** Why a difference is not enough, where more seed will not change it. */
function chance({ open, difference: found }: AcrossFindings): string {
  return open > 0 || isUndefined(found) ? '' : chanceWords(found);
}

function difference({ difference: found }: AcrossFindings): string {
  if (isUndefined(found)) return found.undefined;
  const whole = wholePercent(found.value);
  return whole === 0
    ? `as many treated seeds germinated as untreated ones (95 % interval ${limitsText(found)} points)`
    : `${pointsText(Math.abs(found.value))} ${whole > 0 ? 'more' : 'fewer'} of the treated seeds germinated (95 % interval ${limitsText(found)})`;
}
