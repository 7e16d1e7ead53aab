import { claimOf } from './claim.ts';
import type { Comparison } from './comparison.ts';
import type { Course } from './course.ts';
import { reaches } from './fisher.ts';
import { holm } from './holm.ts';
import { isUndefined, measured, undefinedBecause, type Known, type Undefined } from './measured.ts';
import { THRESHOLDS } from './thresholds.ts';
import type { VerdictName } from './verdict-rules.ts';

/** A dose with its comparison and verdict against untreated seed. */
interface Candidate {
  readonly dose: number;
  /** The dose as a reader is told it, with its unit. */
  readonly name: string;
  readonly batches: readonly Course[];
  readonly comparison: Comparison | Undefined;
  readonly verdict: { readonly verdict: VerdictName };
}

type Measurable = Candidate & { readonly comparison: Comparison };

/**
 * The best dose of a ladder: the one with the greatest share of sound seedlings, if it is worth repeating and more of
 * its seed is shown to have given sound seedlings than that of every other dose (see claimOf, after Holm's correction
 * over these contests). Otherwise there is no best dose yet, and the reason names the doses it could not be told from.
 * Common practice, no source.
 *
 * @example
 * bestDose(doses) // { value: 500 }
 * // or { undefined: '500 ppm has the most sound seedlings, but cannot be told apart from 250 ppm' }
 */
export function bestDose(candidates: readonly Candidate[]): Known | Undefined {
  const known = candidates.filter((candidate): candidate is Measurable => !isUndefined(candidate.comparison));
  const order = [...known].sort((a, b) => soundShare(b) - soundShare(a) || a.dose - b.dose);
  const [top, ...others] = order;
  if (!top || !known.some(({ verdict }) => verdict.verdict === 'worth repeating')) {
    return undefinedBecause('no dose is shown to be worth repeating');
  }
  const ps = holm(others.map(other => ahead(top, other)));
  const equals = others.filter((_, i) => !reaches(ps[i]!, THRESHOLDS.level.value));
  if (equals.length > 0) {
    const names = equals.sort((a, b) => a.dose - b.dose).map(({ name }) => name);
    const told = [names.slice(0, -1).join(', '), names.at(-1)!].filter(text => text !== '').join(' and ');
    return undefinedBecause(`${top.name} has the most sound seedlings, but cannot be told apart from ${told}`);
  }
  return top.verdict.verdict === 'worth repeating'
    ? measured(top.dose)
    : undefinedBecause(`${top.name} has the most sound seedlings, but is not shown to be worth repeating`);
}

function soundShare({ comparison: { sound: { treated } } }: Measurable): number {
  return treated.x / treated.n;
}

function ahead(top: Measurable, other: Measurable): number {
  const claim = claimOf([top.batches], [other.batches], 'more, sooner or sounder');
  return isUndefined(claim) ? 1 : Math.max(claim.sound.joint, claim.inTheEnd?.sound.p ?? 0);
}
