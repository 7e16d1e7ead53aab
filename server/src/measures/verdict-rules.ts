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
 * The rules of the verdict on treated against untreated seed, in order: the first one that holds decides. Two
 * cases come before them (see judge): a side that cannot be measured, and sides in which more differs than
 * the treatment.
 *
 * 'More' and 'fewer' are about germinated seed or, where weak seedlings are shown to be more frequent after
 * the treatment, about sound seedlings. 'Faster' and 'slower' come from two log-rank tests: of all the seed
 * sown, which also sees how much germinated by when, and of the seed that germinated; the smaller p-value is
 * doubled. On a ladder of doses, p-values are corrected after Holm. While seed may still germinate, every
 * verdict is one "so far", and none says that there is no benefit.
 *
 * Without any effect, 'worth repeating' comes out about 1 time in 20 or less, and so does 'harmful'; with two
 * overdispersed replicates a side, whose spread is hardly known, up to 1 time in 10 (simulated).
 */
export const RULES = [
  {
    id: 'fewer',
    verdict: 'harmful',
    says: 'The 95 % interval of the difference lies below 0.',
    holds: ({ fewer }) => fewer,
  },
  {
    id: 'weaker',
    verdict: 'harmful',
    says: 'Weak seedlings are more frequent (95 % interval above 0), and there is neither more nor faster germination.',
    holds: ({ cost, more, faster }) => cost && !more && !faster,
  },
  {
    id: 'slower',
    verdict: 'harmful',
    says: 'The log-rank tests find slower germination, and the difference is not shown to be above 0.',
    holds: ({ slower, more }) => slower && !more,
  },
  {
    id: 'ready',
    verdict: 'germinates well without it',
    says: 'Untreated seed germinated well and soon (thresholds "ready..."), and the difference is not shown to be above 0.',
    holds: ({ ready, more }) => ready && !more,
  },
  {
    id: 'more',
    verdict: 'worth repeating',
    says: 'The 95 % interval of the difference lies above 0.',
    holds: ({ more }) => more,
  },
  {
    id: 'faster',
    verdict: 'worth repeating',
    says: 'The log-rank tests find faster germination, weak seedlings are not shown to be more frequent, and no more '
      + 'than the tolerated loss fewer germinated.',
    holds: ({ faster, cost, tolerable }) => faster && !cost && tolerable,
  },
  {
    id: 'bought',
    verdict: 'cannot tell',
    says: 'The log-rank tests find faster germination, but it is bought with weak seedlings or fewer germinated.',
    holds: ({ faster }) => faster,
  },
  {
    id: 'still-open',
    verdict: 'cannot tell',
    says: 'None of the above, and seed that may still germinate can change it.',
    holds: ({ open }) => open,
  },
  {
    id: 'nothing-seen',
    verdict: 'no sign of a benefit',
    says: 'A benefit of 30 points would have been visible with these seeds, and the interval of the difference ends '
      + 'below it without lying above 0.',
    holds: ({ visible, excluded }) => visible && excluded,
  },
  {
    id: 'too-few',
    verdict: 'cannot tell',
    says: 'None of the above: the seeds are too few, or too near a limit.',
    holds: () => true,
  },
] as const satisfies readonly Rule[];

/** What decided: a rule, or one of the cases that come before the rules. */
export type RuleId = typeof RULES[number]['id'] | 'not-measured' | 'more-differs';
