/**
 * Solutions poured together in one vessel. What is dissolved stays, so each counts with its share of the whole volume.
 * Volumes of dilute solutions are taken to add up.
 */
import { type Exact, exact } from './amounts.ts';
import { known, type Outcome, refused } from './outcome.ts';

/** A liquid that goes into the vessel; without a volume it is not known how much of it does. */
export interface Pour {
  readonly ml: Exact | undefined;
  readonly isWater: boolean;
}

export interface Dish {
  /** mL in all: the total that is written, else the sum of what is poured in. Undefined where that is not known. */
  readonly totalMl: Exact | undefined;
  /** mL of all that is poured in with a volume. */
  readonly pouredMl: Exact;
  /** mL of plain water that fill the vessel up to the total that is written; undefined where that is not known. */
  readonly fillMl: Exact | undefined;
  /** Of each pour its part of the whole volume, between 0 and 1; refused where it is not known. */
  readonly shares: readonly Outcome<Exact>[];
  /** The total is less than what is poured in, or a volume is not written that is needed. */
  readonly issue: 'total-below-parts' | 'no-volume' | undefined;
}

const belowParts = refused('more-than-made', 'The total is less than the parts poured in.');
const noVolume = refused('no-volume', 'The volume of each part is not recorded.');

/**
 * `writtenMl` is the total that is written. Water without a volume fills up to it. A solution alone without any volume
 * is used as it is.
 *
 * Example: 5 mL of a stock in 20 mL has a share of 1/4; 5 mL of it and 5 mL of water, without a total, one of 1/2
 */
export function dishOf(pours: readonly Pour[], writtenMl: Exact | undefined): Dish {
  const pouredMl = pours.reduce((sum, { ml }) => (ml ? sum.add(ml) : sum), exact(0));
  const isOpen = pours.some(({ ml, isWater }) => !ml && !isWater);
  const isAlone = pours.length === 1 && isOpen && !writtenMl;
  if (isAlone) {
    return { totalMl: undefined, pouredMl, fillMl: undefined, shares: [known(exact(1))], issue: undefined };
  }
  if (writtenMl && pouredMl.gt(writtenMl)) {
    return { totalMl: undefined, pouredMl, fillMl: undefined, shares: pours.map(() => belowParts), issue: 'total-below-parts' };
  }
  const isMixed = pours.some(({ isWater }) => !isWater);
  const isKnown = writtenMl !== undefined || pours.every(({ ml }) => ml);
  const totalMl = writtenMl ?? (isKnown && pours.length > 0 ? pouredMl : undefined);
  return {
    totalMl, pouredMl,
    fillMl: totalMl && !isOpen ? totalMl.sub(pouredMl) : undefined,
    shares: pours.map(({ ml }) => (ml && totalMl ? known(ml.div(totalMl)) : noVolume)),
    issue: isMixed && (isOpen || !isKnown) ? 'no-volume' : undefined,
  };
}
