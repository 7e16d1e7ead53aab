import type { Comparison } from './comparison.ts';
import { reaches } from './fisher.ts';
import type { ChiSquare, MantelHaenszel } from './mantel-haenszel.ts';
import { isUndefined, type Undefined } from './measured.ts';
import type { SpeedTests } from './speed-test.ts';
import { isReady } from './readiness.ts';
import { THRESHOLDS } from './thresholds.ts';
import type { VerdictName } from './verdict-rules.ts';

/** What the rules over lots look at. */
export interface AcrossFindings {
  /** One for each lot, or for each of the conditions that it was tried under. */
  readonly strata: readonly Comparison[];
  readonly lots: number;
  readonly open: number;
  /** Weak seedlings are shown to be more frequent (Mantel-Haenszel over the germinated seed). */
  readonly cost: boolean;
  /** What the tables are of: with `cost` sound seedlings, else germinated seed. */
  readonly outcome: 'germinated' | 'sound';
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
 * The rules of the verdict over several lots, in order: the first one that holds decides. As for one lot,
 * 'more' and 'fewer' are about germinated seed or, where weak seedlings are shown to be more frequent, about
 * sound seedlings. There is no 'no sign of a benefit' here: the power of the combined tests is not computed,
 * so an absence cannot be claimed.
 */
export const ACROSS_RULES = [
  {
    id: 'lots-differ',
    verdict: 'cannot tell',
    says: 'The lots do not have one odds ratio (Breslow-Day), and more germinated in some, fewer in others.',
    holds: ({ homogeneity, strata, outcome }) => {
      const signs = new Set(strata.map(comparison => Math.sign(comparison[outcome].difference.value)));
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
    id: 'weaker-in-lots',
    verdict: 'harmful',
    says: 'Weak seedlings are more frequent (Mantel-Haenszel), and there is neither more nor faster germination.',
    holds: findings => findings.cost && !isMore(findings) && !isFaster(findings),
  },
  {
    id: 'slower-in-lots',
    verdict: 'harmful',
    says: 'Germination was slower (log-rank tests stratified by lot), and it is not shown that more germinated.',
    holds: findings => shown(findings.speed.combined) && !isFaster(findings) && !isMore(findings),
  },
  {
    id: 'ready-in-lots',
    verdict: 'germinates well without it',
    says: 'In every lot untreated seed germinated well and soon (thresholds "ready..."), and it is not shown that more '
      + 'germinated.',
    holds: findings => findings.strata.length > 0 && findings.strata.every(isUntreatedReady) && !isMore(findings),
  },
  {
    id: 'more-in-lots',
    verdict: 'worth repeating',
    says: 'More germinated (Mantel-Haenszel with continuity correction).',
    holds: isMore,
  },
  {
    id: 'faster-in-lots',
    verdict: 'worth repeating',
    says: 'Germination was faster (log-rank tests stratified by lot), and weak seedlings are not shown to be more frequent.',
    holds: findings => isFaster(findings) && !findings.cost,
  },
  {
    id: 'bought-in-lots',
    verdict: 'cannot tell',
    says: 'Germination was faster, but it is bought with weak seedlings.',
    holds: isFaster,
  },
  {
    id: 'not-shown',
    verdict: 'cannot tell',
    says: 'None of the above.',
    holds: () => true,
  },
] as const satisfies readonly AcrossRule[];

function isMore({ mantelHaenszel: found }: AcrossFindings): boolean {
  return !isUndefined(found) && shown(found.corrected) && found.excess > 0;
}

function isFaster({ speed: { combined } }: AcrossFindings): boolean {
  return shown(combined) && combined.faster;
}

function isUntreatedReady({ untreated, untreatedT50OfSown }: Comparison): boolean {
  return isReady(untreated, untreatedT50OfSown);
}

export type AcrossRuleId = typeof ACROSS_RULES[number]['id'];

function shown<T extends { readonly p: number }>(test: T | Undefined): test is T {
  return !isUndefined(test) && reaches(test.p, THRESHOLDS.level.value);
}
