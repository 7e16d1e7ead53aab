import type { Comparison } from './comparison.ts';
import { evidenceOf, type Evidence, type Room } from './evidence.ts';
import { isUndefined, type Undefined } from './measured.ts';
import { RULES, type RuleId, type VerdictName } from './verdict-rules.ts';
import { sentence, type JudgeDay } from './verdict-text.ts';
import { asSentence } from './verdict-words.ts';

/** What a comparison of treated with untreated seed comes to, and why. */
export interface Verdict {
  readonly verdict: VerdictName;
  /** The rule that decided; its words stand in RULES. */
  readonly rule: RuleId;
  /** What the rules looked at; nothing where a side could not be measured. */
  readonly evidence: Evidence | undefined;
  /** More seed may germinate; said of estimated seed, which has no evidence to tell it by. */
  readonly open?: boolean;
  /** Verdict and reason for a grower to read. */
  readonly sentence: string;
}

export interface Circumstances {
  /** What else differs between the sides, in plain words: 'temperature', 'sowing date'. */
  readonly alsoDiffers?: readonly string[];
  /** What other treatments beside the same untreated seed leave to this one. */
  readonly room?: Room;
  /** The day on which the grower said beforehand that it is to be judged. */
  readonly judging?: JudgeDay;
}

/**
 * Judges a comparison by RULES. Three cases come first: a side that cannot be measured; sides in which more differs
 * than the treatment, which is never called an effect of it; and a day of judging that has not come.
 *
 * @example
 * judge(compare([treated], [untreated])).sentence
 * // 'Worth repeating: by day 28, 18 of 20 treated seeds had germinated (90 %) and 7 of 20 untreated (35 %): 55 points
 * // more (95 % interval 25 to 73). ...'
 */
export function judge(comparison: Comparison | Undefined, circumstances: Circumstances = {}): Verdict {
  const { alsoDiffers = [], room, judging } = circumstances;
  if (isUndefined(comparison)) {
    return {
      verdict: 'cannot tell',
      rule: 'not-measured',
      evidence: undefined,
      sentence: asSentence('cannot tell', comparison.undefined, false),
    };
  }
  const evidence = evidenceOf(comparison, room, judging?.state === 'off the day');
  const { id: rule, verdict } = alsoDiffers.length > 0
    ? { id: 'more-differs' as const, verdict: 'cannot tell' as const }
    : judging?.state === 'waiting'
      ? { id: 'to-be-judged' as const, verdict: 'cannot tell' as const }
      : RULES.find(({ holds }) => holds(evidence))!;
  return { verdict, rule, evidence, sentence: sentence({ verdict, rule, evidence, comparison, alsoDiffers, judging }) };
}
