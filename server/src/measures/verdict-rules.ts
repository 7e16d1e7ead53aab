import type { Evidence } from './evidence.ts';

/** What a comparison comes to. */
export type VerdictName =
  | 'worth repeating'
  | 'no sign of a benefit'
  | 'harmful'
  | 'cannot tell'
  | 'germinates well without it';

export interface Rule {
  readonly id: string;
  readonly verdict: VerdictName;
  /** The condition in plain words, as the format reference prints it. */
  readonly says: string;
  readonly holds: (evidence: Evidence) => boolean;
}

/**
 * The rules of the verdict on treated against untreated seed, in order: the first one that holds decides.
 * Three cases come before them (see judge): a side that cannot be measured, sides in which more differs than the
 * treatment, and a day of judging that has not come.
 *
 * All roads to "worth repeating" share one error, and so do all roads to "harmful", see claim.ts; several treatments
 * beside one untreated part share it too, and while seed may still germinate it is smaller.
 */
export const RULES = [
  {
    id: 'fewer',
    verdict: 'harmful',
    says: 'Fewer of the treated seeds germinated, and weak seedlings are not more frequent among the untreated.',
    holds: ({ fewer, untreatedWeaker }) => fewer && !untreatedWeaker,
  },
  {
    id: 'fewer-sound',
    verdict: 'harmful',
    says: 'Fewer of the treated seeds gave sound seedlings.',
    holds: ({ fewerSound }) => fewerSound,
  },
  {
    id: 'behind',
    verdict: 'harmful',
    says: 'The treated seed was behind over the days, the interval excludes a gain of more than 20 points, and weak seedlings are '
      + 'not more frequent among the untreated.',
    holds: ({ behind, more, noGreatGain, untreatedWeaker }) => behind && !more && noGreatGain && !untreatedWeaker,
  },
  {
    id: 'fewer-but-sound',
    verdict: 'cannot tell',
    says: 'Fewer of the treated seeds germinated, they were behind, or untreated seed germinated well and soon, but weak seedlings '
      + 'are more frequent among the untreated.',
    holds: ({ fewer, behind, ready, more, untreatedWeaker }) => untreatedWeaker && !more && (fewer || behind || ready),
  },
  {
    id: 'behind-perhaps-more',
    verdict: 'cannot tell',
    says: 'The treated seed was behind over the days, but a gain of more than 20 points is not excluded.',
    holds: ({ behind, more }) => behind && !more,
  },
  {
    id: 'ready',
    verdict: 'germinates well without it',
    says: 'Untreated seed germinated well and soon (thresholds "ready..."), and no more of the treated seed is shown to have '
      + 'germinated.',
    holds: ({ ready, more }) => ready && !more,
  },
  {
    id: 'overtaken',
    verdict: 'cannot tell',
    says: 'One side had more or was ahead at the looks compared, but the last looks at both do not bear that out.',
    holds: ({ overtaken }) => overtaken !== undefined,
  },
  {
    id: 'more',
    verdict: 'worth repeating',
    says: 'More of the treated seeds germinated, and weak seedlings are not more frequent or more of the seedlings are sound.',
    holds: ({ more, weaker, sounder }) => more && (!weaker || sounder),
  },
  {
    id: 'more-but-weak',
    verdict: 'cannot tell',
    says: 'More of the treated seeds germinated, but weak seedlings are more frequent, and no more sound ones are shown.',
    holds: ({ more }) => more,
  },
  {
    id: 'ahead',
    verdict: 'worth repeating',
    says: 'The treated seed was ahead over the days, the interval excludes a loss of more than 20 points, and weak seedlings are not '
      + 'more frequent.',
    holds: ({ ahead, noGreatLoss, weaker }) => ahead && noGreatLoss && !weaker,
  },
  {
    id: 'ahead-at-a-price',
    verdict: 'cannot tell',
    says: 'The treated seed was ahead over the days, but a loss of more than 20 points is not excluded, or weak seedlings are more '
      + 'frequent.',
    holds: ({ ahead }) => ahead,
  },
  {
    id: 'still-open',
    verdict: 'cannot tell',
    says: 'None of the above, and seed that may still germinate can change it.',
    holds: ({ open }) => open,
  },
  {
    id: 'ended-early',
    verdict: 'cannot tell',
    says: 'The interval of the difference includes 0 and ends below 30 points, but not with all that germinated after the counts '
      + 'compared, or the comparison ends where seed was taken out.',
    holds: ({ excluded, endedEarly, tooFew }) => excluded && endedEarly && !tooFew,
  },
  {
    id: 'too-soon',
    verdict: 'cannot tell',
    says: 'The same, but living seed was left, and fewer than 4 seeds germinated in all in less than 180 days, or less than half '
      + 'of them in less than 28 days.',
    holds: ({ excluded, tooSoon, tooFew }) => excluded && tooSoon && !tooFew,
  },
  {
    id: 'nothing-seen',
    verdict: 'no sign of a benefit',
    says: 'The interval of the difference includes 0 and ends below 30 points.',
    holds: ({ excluded, tooFew }) => excluded && !tooFew,
  },
  {
    id: 'too-few',
    verdict: 'cannot tell',
    says: 'None of the above: the seeds are too few, or too near a limit.',
    holds: () => true,
  },
] as const satisfies readonly Rule[];

/** What decided: a rule, or one of the cases that come before the rules. */
export type RuleId = typeof RULES[number]['id'] | 'not-measured' | 'more-differs' | 'to-be-judged';
