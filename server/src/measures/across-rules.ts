import type { AcrossClaim, AcrossLots } from './across-lots.ts';
import type { Comparison } from './comparison.ts';
import { reaches } from './fisher.ts';
import { lasting, overtakenIn, type Claimed, type LastsOfClaims } from './lasting.ts';
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
  /** The same among the untreated. */
  readonly untreatedWeaker: boolean;
  readonly inTheEnd: LastsOfClaims;
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
    says: 'Fewer of the treated seeds germinated, in the lots together and with a single dose, and weak seedlings are not more '
      + 'frequent among the untreated.',
    holds: findings => claimed(findings).fewer && !findings.untreatedWeaker,
  },
  {
    id: 'fewer-sound-in-lots',
    verdict: 'harmful',
    says: 'Fewer of the treated seeds gave sound seedlings, in the lots together and with a single dose.',
    holds: findings => claimed(findings).fewerSound,
  },
  {
    id: 'behind-in-lots',
    verdict: 'harmful',
    says: 'The treated seed was behind over the days, the interval excludes a gain of more than 20 points, and weak seedlings are '
      + 'not more frequent among the untreated.',
    holds: findings => {
      const { behind, more } = claimed(findings);
      return behind && !more && !findings.untreatedWeaker && !takesIn(findings, 'a great gain');
    },
  },
  {
    id: 'fewer-but-sound-in-lots',
    verdict: 'cannot tell',
    says: 'Fewer of the treated seeds germinated, they were behind, or untreated seed germinated well and soon, but weak seedlings '
      + 'are more frequent among the untreated.',
    holds: findings => {
      const { fewer, behind, more } = claimed(findings);
      return findings.untreatedWeaker && !more && (fewer || behind || findings.ready);
    },
  },
  {
    id: 'ready-in-lots',
    verdict: 'germinates well without it',
    says: 'In every lot untreated seed germinated well and soon (thresholds "ready..."), and no more of the treated seed is '
      + 'shown to have germinated.',
    holds: findings => findings.ready && !claimed(findings).more,
  },
  {
    id: 'overtaken-in-lots',
    verdict: 'cannot tell',
    says: 'One side had more or was ahead at the looks compared, but the last looks at both do not bear that out.',
    holds: findings => overtakenIn(compared(findings), claimed(findings)) !== undefined,
  },
  {
    id: 'more-in-lots',
    verdict: 'worth repeating',
    says: 'More of the treated seeds germinated, in the lots together and with a single dose, and weak seedlings are not more '
      + 'frequent or more of the seedlings are sound.',
    holds: findings => {
      const { more, sounder } = claimed(findings);
      return findings.betterInADose && more && (!findings.weaker || sounder);
    },
  },
  {
    id: 'ahead-in-lots',
    verdict: 'worth repeating',
    says: 'The treated seed was ahead over the days, in the lots together and with a single dose, the interval excludes a loss '
      + 'of more than 20 points, and weak seedlings are not more frequent.',
    holds: findings => (
      findings.betterInADose && claimed(findings).ahead && !findings.weaker && !takesIn(findings, 'a great loss')),
  },
  {
    id: 'at-a-price-in-lots',
    verdict: 'cannot tell',
    says: 'More of the treated seeds germinated, or they were ahead, but weak seedlings are more frequent, a loss of more than '
      + '20 points is not excluded, or no single dose shows it.',
    holds: findings => {
      const { more, ahead } = claimed(findings);
      return more || ahead;
    },
  },
  {
    id: 'not-shown',
    verdict: 'cannot tell',
    says: 'None of the above.',
    holds: () => true,
  },
] as const satisfies readonly AcrossRule[];

/** By the looks compared. Harm is claimed where a single dose shows it, and the rules ask that of a benefit. */
function compared(findings: AcrossFindings): Claimed {
  const { worseInADose } = findings;
  const isPace = (claim: 'better' | 'worse') => shown(findings, claim, 'ahead') || shown(findings, claim, 'sooner');
  return {
    more: shown(findings, 'better', 'germinated'), sounder: shown(findings, 'better', 'sound'), ahead: isPace('better'),
    fewer: worseInADose && shown(findings, 'worse', 'germinated'),
    fewerSound: worseInADose && shown(findings, 'worse', 'sound'), behind: worseInADose && isPace('worse'),
  };
}

/** By the last looks, too. */
function claimed(findings: AcrossFindings): Claimed {
  return lasting(compared(findings), findings.inTheEnd);
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
