/** Whether what the looks compared show holds by the last looks, too. */
import { ROUNDING, type Difference } from './difference.ts';
import { reaches } from './fisher.ts';
import { isUndefined, type Undefined } from './measured.ts';
import { THRESHOLDS } from './thresholds.ts';

/** What is claimed of the two sides. */
export interface Claimed {
  /** More of the treated seed germinated; gave sound seedlings; it was ahead over the days. */
  readonly more: boolean;
  readonly sounder: boolean;
  readonly ahead: boolean;
  /** The same for the untreated seed. */
  readonly fewer: boolean;
  readonly fewerSound: boolean;
  readonly behind: boolean;
}

/** What the last looks say for a claim: a one-sided p-value, and the side that is said to be ahead less the other. */
export interface Last {
  readonly p: number;
  readonly difference: Difference | Undefined;
}

export interface Lasts {
  readonly germinated: Last;
  readonly sound: Last;
}

/** Undefined: the last looks say nothing against the claim. */
export interface LastsOfClaims {
  readonly better: Lasts | undefined;
  readonly worse: Lasts | undefined;
}

/** What the looks compared show of one side and the last looks do not. */
export interface Overtaken {
  readonly by: 'treated' | 'untreated';
  /** The share that it was shown by. */
  readonly what: 'germinated' | 'sound';
  /** It was ahead over the days, and had no more at the looks compared. */
  readonly isPace: boolean;
}

export function lasting(compared: Claimed, { better, worse }: LastsOfClaims): Claimed {
  return {
    more: compared.more && isGreater(better?.germinated),
    sounder: compared.sounder && isGreater(better?.sound),
    ahead: compared.ahead && hasNoGreatLoss(better?.germinated),
    fewer: compared.fewer && isGreater(worse?.germinated),
    fewerSound: compared.fewerSound && isGreater(worse?.sound),
    behind: compared.behind && hasNoGreatLoss(worse?.germinated),
  };
}

/** Where something is shown of a side and lasts, it is of no account which side was ahead before. */
export function overtakenIn(compared: Claimed, claimed: Claimed): Overtaken | undefined {
  if (claimed.more || claimed.fewer || claimed.ahead) return undefined;
  const isLost = (what: keyof Claimed) => compared[what] && !claimed[what];
  const lost = (by: Overtaken['by'], what: Overtaken['what'], isPace = false): Overtaken => ({ by, what, isPace });
  if (isLost('fewer')) return lost('treated', 'germinated');
  if (!claimed.behind && isLost('behind')) return lost('treated', 'germinated', true);
  if (isLost('fewerSound')) return lost('treated', 'sound');
  if (isLost('more')) return lost('untreated', 'germinated');
  return isLost('ahead') ? lost('untreated', 'germinated', true) : undefined;
}

/** The side that is said to be ahead is shown to have more. */
export function isGreater(last: Last | undefined): boolean {
  if (!last) return true;
  const { p, difference } = last;
  return reaches(p, THRESHOLDS.level.value) && !isUndefined(difference) && difference.low > 0;
}

function hasNoGreatLoss(last: Last | undefined): boolean {
  return !last || (!isUndefined(last.difference) && excludesGreatLoss(last.difference));
}

/** Whether the interval excludes a loss above the tolerated one. */
export function excludesGreatLoss({ low }: Pick<Difference, 'low'>): boolean {
  return low >= -THRESHOLDS.toleratedLoss.value - ROUNDING;
}
