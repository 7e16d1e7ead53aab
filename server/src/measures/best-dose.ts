import type { Comparison } from './comparison.ts';
import { contrast } from './contrast.ts';
import { reaches } from './fisher.ts';
import { holm } from './holm.ts';
import { isUndefined, measured, undefinedBecause, type Known, type Undefined } from './measured.ts';
import type { VerdictName } from './verdict-rules.ts';

/** A dose with its comparison and verdict against untreated seed. */
interface Candidate {
  readonly dose: number;
  readonly comparison: Comparison | Undefined;
  readonly verdict: { readonly verdict: VerdictName };
}

type Measurable = Candidate & { readonly comparison: Comparison };

/**
 * The best dose of a ladder: the one with the greatest share of sound seedlings, if it is worth repeating and
 * was shown to be better than every other dose (Newcombe's interval above 0 and Fisher's test after Holm's
 * correction over these contests). Otherwise there is no best dose yet, and the reason names the doses it
 * could not be told from. Common practice, no source.
 *
 * @example
 * bestDose(judgeLadder(untreated, doses).doses) // { value: 500 }
 * // or { undefined: '500 has the most sound seedlings, but is not told apart from 250' }
 */
export function bestDose(candidates: readonly Candidate[]): Known | Undefined {
  const known = candidates.filter((candidate): candidate is Measurable => !isUndefined(candidate.comparison));
  const order = [...known].sort((a, b) => soundShare(b) - soundShare(a) || a.dose - b.dose);
  const [top, ...others] = order;
  if (!top || !known.some(({ verdict }) => verdict.verdict === 'worth repeating')) {
    return undefinedBecause('no dose is shown to be worth repeating');
  }
  const contests = others.map(other => contestOf(top, other));
  const ps = holm(contests.map(({ fisher }) => fisher.twoSided));
  const equals = others.filter((_, i) => !(contests[i]!.difference.low > 0 && reaches(ps[i]!)));
  if (equals.length > 0) {
    const doses = equals.map(({ dose }) => dose).sort((a, b) => a - b);
    return undefinedBecause(`${top.dose} has the most sound seedlings, but is not told apart from ${doses.join(', ')}`);
  }
  return top.verdict.verdict === 'worth repeating'
    ? measured(top.dose)
    : undefinedBecause(`${top.dose} has the most sound seedlings, but is not shown to be worth repeating`);
}

function soundShare({ comparison: { sound: { treated } } }: Measurable): number {
  return treated.x / treated.n;
}

function contestOf(top: Measurable, other: Measurable): ReturnType<typeof contrast> {
  const overdispersion = Math.max(top.comparison.overdispersion, other.comparison.overdispersion);
  return contrast(top.comparison.sound.treated, other.comparison.sound.treated, overdispersion);
}
