import type { AcrossClaim, AcrossLots } from './across-lots.ts';
import type { Comparison } from './comparison.ts';
import { reaches } from './fisher.ts';
import { isUndefined, type Undefined } from './measured.ts';
import { THRESHOLDS } from './thresholds.ts';
import type { VerdictName } from './verdict-rules.ts';

/** What is known of the lots together. */
type Combined = Pick<AcrossLots, 'lots' | 'open' | 'better' | 'worse' | 'difference' | 'mantelHaenszel' | 'homogeneity'>;

/** What the rules over lots look at. */
export interface AcrossFindings extends Combined {
  /** One for each lot, or for each of the conditions that it was tried under. */
  readonly strata: readonly Comparison[];
  /** Only the smaller level counts: seed may still germinate, or an end may have been chosen. */
  readonly isStrict: boolean;
  /** Weak seedlings are shown to be more frequent. */
  readonly weaker: boolean;
  /** In every lot untreated seed came up readily. */
  readonly ready: boolean;
  /** The claim is shown for a single dose too, or there was only one. */
  readonly betterInADose: boolean;
  readonly worseInADose: boolean;
}

export interface AcrossRule {
  readonly id: string;
  readonly verdict: VerdictName;
  readonly says: string;
  readonly holds: (findings: AcrossFindings) => boolean;
}

/**
 * The rules of the verdict over several lots, in order: the first one that holds decides. There is no 'no sign of a
 * benefit' here.
 */
export const ACROSS_RULES = [
  {
    id: 'lots-differ',
    verdict: 'cannot tell',
    says: 'The lots do not share one odds ratio (Breslow-Day): more germinated in some, fewer in others.',
    holds: ({ homogeneity, strata }) => {
      const signs = new Set(strata.map(({ germinated }) => Math.sign(germinated.difference.value)));
      return !isUndefined(homogeneity) && reaches(homogeneity.p) && signs.has(1) && signs.has(-1);
    },
  },
  {
    id: 'fewer-in-lots',
    verdict: 'harmful',
    says: 'Fewer of the treated seeds germinated, in the lots together and with a single dose.',
    holds: findings => findings.worseInADose && shown(findings, 'worse', 'germinated'),
  },
  {
    id: 'fewer-sound-in-lots',
    verdict: 'harmful',
    says: 'Fewer of the treated seeds gave sound seedlings, in the lots together and with a single dose.',
    holds: findings => findings.worseInADose && shown(findings, 'worse', 'sound'),
  },
  {
    id: 'behind-in-lots',
    verdict: 'harmful',
    says: 'The treated seed was behind over the days, and the interval excludes a gain of more than 20 points.',
    holds: findings => (
      findings.worseInADose && isPace(findings, 'worse') && !isMore(findings) && !takesIn(findings, 'a great gain')),
  },
  {
    id: 'ready-in-lots',
    verdict: 'germinates well without it',
    says: 'In every lot untreated seed germinated well and soon (thresholds "ready..."), and no more of the treated seed is '
      + 'shown to have germinated.',
    holds: findings => findings.ready && !isMore(findings),
  },
  {
    id: 'more-in-lots',
    verdict: 'worth repeating',
    says: 'More of the treated seeds germinated, in the lots together and with a single dose, and weak seedlings are not more '
      + 'frequent or more of the seedlings are sound.',
    holds: findings => (
      findings.betterInADose && isMore(findings) && (!findings.weaker || shown(findings, 'better', 'sound'))),
  },
  {
    id: 'ahead-in-lots',
    verdict: 'worth repeating',
    says: 'The treated seed was ahead over the days, in the lots together and with a single dose, the interval excludes a loss '
      + 'of more than 20 points, and weak seedlings are not more frequent.',
    holds: findings => (
      findings.betterInADose && isPace(findings, 'better') && !findings.weaker && !takesIn(findings, 'a great loss')),
  },
  {
    id: 'at-a-price-in-lots',
    verdict: 'cannot tell',
    says: 'More of the treated seeds germinated, or they were ahead, but weak seedlings are more frequent, a loss of more than '
      + '20 points is not excluded, or no single dose shows it.',
    holds: findings => isMore(findings) || isPace(findings, 'better'),
  },
  {
    id: 'not-shown',
    verdict: 'cannot tell',
    says: 'None of the above.',
    holds: () => true,
  },
] as const satisfies readonly AcrossRule[];

function isMore(findings: AcrossFindings): boolean {
  return shown(findings, 'better', 'germinated');
}

function isPace(findings: AcrossFindings, claim: 'better' | 'worse'): boolean {
  return shown(findings, claim, 'ahead') || shown(findings, claim, 'sooner');
}

/** Whether the interval of the difference takes in a greater loss, or a greater gain, than the tolerated one. */
function takesIn({ difference }: AcrossFindings, what: 'a great loss' | 'a great gain'): boolean {
  if (isUndefined(difference)) return true;
  const { value } = THRESHOLDS.toleratedLoss;
  return what === 'a great loss' ? difference.low < -value : difference.high > value;
}

function shown(findings: AcrossFindings, claim: 'better' | 'worse', what: keyof Omit<AcrossClaim, 'p'>): boolean {
  const found: AcrossClaim | Undefined = findings[claim];
  if (isUndefined(found)) return false;
  const finding = found[what];
  const { level, soFar } = THRESHOLDS;
  return !isUndefined(finding) && reaches(finding.joint, findings.isStrict ? soFar.value : level.value);
}

export type AcrossRuleId = typeof ACROSS_RULES[number]['id'];
