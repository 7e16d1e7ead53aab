import type { AcrossFindings, AcrossRuleId } from './across-rules.ts';
import { isUndefined, type Undefined } from './measured.ts';
import type { VerdictName } from './verdict-rules.ts';
import { asSentence, probability, ratio, speedWords } from './verdict-words.ts';

/** The verdict over several lots with its reason, in one sentence of plain words. */
export function acrossSentence(verdict: VerdictName, rule: AcrossRuleId, findings: AcrossFindings): string {
  return asSentence(verdict, reason(rule, findings), findings.open > 0);
}

function reason(rule: AcrossRuleId, findings: AcrossFindings): string {
  const { lots, open, mantelHaenszel, homogeneity, speed: { combined } } = findings;
  const stillOpen = open === 0 ? '' : lots === 1 ? ' (still open)' : ` (${open} of them still open)`;
  const many = `in ${lots === 1 ? '1 lot' : `${lots} lots`}${stillOpen}`;
  switch (rule) {
    case 'lots-differ':
      return `${many} the seed did not answer alike (Breslow-Day${p(homogeneity)}): more germinated in some, fewer in `
        + 'others';
    case 'fewer-in-lots':
    case 'more-in-lots':
      return `${many} ${odds(findings, rule)}`;
    case 'weaker-in-lots':
      return `${many} weak seedlings (leggy, abnormal or dead) are more frequent after the treatment, and no more or faster `
        + 'germination is shown';
    case 'bought-in-lots':
      return `${many} ${speed(findings)}, but weak seedlings (leggy, abnormal or dead) are more frequent`;
    case 'ready-in-lots':
      return `${many} untreated seed germinated well and soon, and no more germinated after the treatment`;
    case 'slower-in-lots':
    case 'faster-in-lots':
      return `${many} ${speed(findings)}`;
    case 'not-shown':
      return lots === 0
        ? 'no lot has treated and untreated seed that was counted'
        : `${many} no difference is shown (Mantel-Haenszel${isUndefined(mantelHaenszel) ? '' : p(mantelHaenszel.corrected)}`
          + `, log-rank tests${p(combined)})`;
  }
}

function speed({ speed: { combined } }: AcrossFindings): string {
  const how = isUndefined(combined) ? '' : speedWords(combined.faster, combined.ofGerminated);
  return `treated seed ${how} (log-rank tests stratified by lot${p(combined)})`;
}

function odds({ mantelHaenszel: found, outcome }: AcrossFindings, rule: AcrossRuleId): string {
  const did = outcome === 'sound' ? 'gave sound seedlings' : 'germinated';
  const treated = `${rule === 'more-in-lots' ? 'more' : 'less'} of the treated seed ${did}`;
  if (isUndefined(found)) return treated;
  const { oddsRatio, corrected } = found;
  return isUndefined(oddsRatio)
    ? `${treated} (Mantel-Haenszel${p(corrected)})`
    : `${treated}: odds ratio ${ratio(oddsRatio.value)} (95 % interval ${ratio(oddsRatio.low)} to `
      + `${ratio(oddsRatio.high)})`;
}

function p(test: { readonly p: number } | Undefined): string {
  return isUndefined(test) ? '' : `, p ${probability(test.p)}`;
}
