/** What was counted by the looks of a claim, for a reader: seed that was lost has not germinated here. */
import type { Claim, Looks } from './claim.ts';
import { germinated, shareOf, sound, type Count } from './contrast.ts';
import { seedsCounted, type Course } from './course.ts';
import type { Share } from './difference.ts';
import { until } from './looks.ts';

/** The batches of both sides. */
export interface Sides {
  readonly treated: readonly Course[];
  readonly untreated: readonly Course[];
}

/** Looks at both sides. */
interface LooksAt {
  readonly treated: Looks;
  readonly untreated: Looks;
}

interface Counted {
  readonly treated: Share;
  readonly untreated: Share;
}

export interface Seen {
  readonly germinated: Counted;
  readonly sound: Counted;
}

/** The looks of a claim by side: the treated one is the first of the claim that it was better. */
export function bySide(
  { looks, soundLooks }: Claim, claim: 'better' | 'worse',
): { readonly germinated: LooksAt; readonly sound: LooksAt } {
  const sided = ({ first, second }: Claim['looks']): LooksAt => (
    claim === 'better' ? { treated: first, untreated: second } : { treated: second, untreated: first });
  return { germinated: sided(looks), sound: sided(soundLooks) };
}

export function cutAt({ treated, untreated }: Sides, looks: LooksAt): Sides {
  return {
    treated: treated.map(course => until(course, looks.treated.to)),
    untreated: untreated.map(course => until(course, looks.untreated.to)),
  };
}

export function seenBy(all: Sides, looks: ReturnType<typeof bySide>): Seen {
  return {
    germinated: counted(cutAt(all, looks.germinated), germinated), sound: counted(cutAt(all, looks.sound), sound),
  };
}

/** By all looks at both sides. */
export function countedOf(all: Sides): Seen {
  return { germinated: counted(all, germinated), sound: counted(all, sound) };
}

function counted({ treated, untreated }: Sides, count: Count): Counted {
  return { treated: shareOf(treated, count, seedsCounted), untreated: shareOf(untreated, count, seedsCounted) };
}
