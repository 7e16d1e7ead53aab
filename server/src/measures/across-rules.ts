import type { Comparison } from './comparison.ts';
import { reaches } from './fisher.ts';
import type { ChiSquare, MantelHaenszel } from './mantel-haenszel.ts';
import { isUndefined, type Undefined } from './measured.ts';
import type { SpeedTests } from './speed-test.ts';
import { THRESHOLDS } from './thresholds.ts';
import type { VerdictName } from './verdict-rules.ts';

/** What the rules over lots look at. */
export interface AcrossFindings {
  /** One for each lot, or for each of the conditions that it was tried under. */
  readonly strata: readonly Comparison[];
  readonly lots: number;
  readonly open: number;
  readonly mantelHaenszel: MantelHaenszel | Undefined;
  readonly homogeneity: ChiSquare | Undefined;
  readonly speed: SpeedTests;
}

export interface AcrossRule {
  readonly id: string;
  readonly verdict: VerdictName;
  readonly says: string;
  readonly holds: (findings: AcrossFindings) => boolean;
}

/**
 * The rules of the verdict over several lots, in order: the first one that holds decides. There is no 'no
 * sign of a benefit' here: the power of the combined tests is not computed, so an absence cannot be claimed.
 */
export const ACROSS_RULES = [
  {
    id: 'lots-differ',
    verdict: 'cannot tell',
    says: 'The lots do not have one odds ratio (Breslow-Day), and more germinated in some, fewer in others.',
    holds: ({ homogeneity, strata }) => {
      const signs = new Set(strata.map(({ germinated: { difference } }) => Math.sign(difference.value)));
      return shown(homogeneity) && signs.has(1) && signs.has(-1);
    },
  },
  {
    id: 'fewer-in-lots',
    verdict: 'harmful',
    says: 'Fewer germinated (Mantel-Haenszel with continuity correction).',
    holds: ({ mantelHaenszel: found }) => !isUndefined(found) && shown(found.corrected) && found.excess < 0,
  },
  {
    id: 'more-in-lots',
    verdict: 'worth repeating',
    says: 'More germinated (Mantel-Haenszel with continuity correction).',
    holds: ({ mantelHaenszel: found }) => !isUndefined(found) && shown(found.corrected) && found.excess > 0,
  },
  {
    id: 'slower-in-lots',
    verdict: 'harmful',
    says: 'Germination was slower (log-rank tests stratified by lot).',
    holds: ({ speed: { combined } }) => shown(combined) && !combined.faster,
  },
  {
    id: 'faster-in-lots',
    verdict: 'worth repeating',
    says: 'Germination was faster (log-rank tests stratified by lot).',
    holds: ({ speed: { combined } }) => shown(combined) && combined.faster,
  },
  {
    id: 'not-shown',
    verdict: 'cannot tell',
    says: 'None of the above.',
    holds: () => true,
  },
] as const satisfies readonly AcrossRule[];

export type AcrossRuleId = typeof ACROSS_RULES[number]['id'];

function shown<T extends { readonly p: number }>(test: T | Undefined): test is T {
  return !isUndefined(test) && reaches(test.p, THRESHOLDS.level.value);
}
