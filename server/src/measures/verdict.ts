import type { Comparison } from './comparison.ts';
import { seedsASide } from './design.ts';
import { evidenceOf, type Corrected, type Evidence } from './evidence.ts';
import { isUndefined, type Measured, type Undefined } from './measured.ts';
import { isReady } from './readiness.ts';
import { RULES, type RuleId, type VerdictName } from './verdict-rules.ts';
import { sentence } from './verdict-text.ts';
import { asSentence } from './verdict-words.ts';

/** What a comparison of treated with untreated seed comes to, and why. */
export interface Verdict {
  readonly verdict: VerdictName;
  /** The rule that decided; its words stand in RULES. */
  readonly rule: RuleId;
  /** What the rules looked at; nothing where a side could not be measured. */
  readonly evidence: Evidence | undefined;
  /** For 'cannot tell' by too few seeds: how many a side would tell 30 points. */
  readonly seedsASide: Measured | undefined;
  /** Verdict and reason for a grower to read. */
  readonly sentence: string;
}

export interface Circumstances {
  /** What else differs between the sides, in plain words: 'temperature', 'sowing date'. */
  readonly alsoDiffers?: readonly string[];
  /** Where this is one rung of a ladder of doses. */
  readonly corrected?: Corrected;
}

/**
 * Judges a comparison by RULES. Two cases come first: a side that cannot be measured, and sides in which more
 * differs than the treatment; neither is called an effect of the treatment.
 *
 * @example
 * judge(compare([treated], [untreated])).sentence
 * // 'Worth repeating: 18 of 20 treated seeds germinated (90 %), 7 of 20 untreated (35 %): 55 points more, 95 %
 * // interval 25 to 73.'
 */
export function judge(comparison: Comparison | Undefined, circumstances: Circumstances = {}): Verdict {
  const { alsoDiffers = [], corrected } = circumstances;
  if (isUndefined(comparison)) {
    return {
      verdict: 'cannot tell',
      rule: 'not-measured',
      evidence: undefined,
      seedsASide: undefined,
      sentence: asSentence('cannot tell', comparison.undefined, false),
    };
  }
  const evidence = evidenceOf(comparison, isReady(comparison.untreated, comparison.untreatedT50OfSown), corrected);
  const { id: rule, verdict } = alsoDiffers.length > 0
    ? { id: 'more-differs' as const, verdict: 'cannot tell' as const }
    : RULES.find(({ holds }) => holds(evidence))!;
  const needed = rule === 'too-few' ? seedsNeeded(evidence) : undefined;
  return {
    verdict,
    rule,
    evidence,
    seedsASide: needed,
    sentence: sentence({ verdict, rule, evidence, needed, comparison, alsoDiffers }),
  };
}

/** To see 30 points; where the seeds sufficed for that, to see the difference that was found. */
function seedsNeeded({ from, to, visible, contrast: { treated, untreated } }: Evidence): Measured {
  return visible
    ? seedsASide(untreated.x / untreated.n, treated.x / treated.n)
    : seedsASide(from, to);
}
