/** Dilution: what is dissolved stays, so C1 V1 = C2 V2. Volumes of dilute solutions are taken to add up. */
import { type Exact, isPositive, powerOfTen } from './amounts.ts';
import { apartText } from './display.ts';
import { known, type Outcome, refused } from './outcome.ts';

export interface Draw {
  readonly stockMl: Exact;
  readonly waterMl: Exact;
}

/** A number of more digits than any bench comes to; exact sums with longer ones would take ever more time. */
const LONGEST = powerOfTen(1000).n;

/**
 * ppm of a volume taken from a stock and made up to another volume with water.
 *
 * Example: 10 mL of 1000 ppm made up to 20 mL is 500 ppm
 */
export function diluted(stockPpm: Exact, takenMl: Exact, toMl: Exact): Outcome<Exact> {
  if (!isPositive(takenMl) || !isPositive(toMl)) return refused('not-positive', 'Both volumes must be above zero.');
  if (takenMl.gt(toMl)) {
    const [taken, to] = apartText(takenMl, toMl);
    const text = `You cannot make ${taken} mL up to ${to} mL, which is less than you took.`;
    return refused('more-than-made', text);
  }
  if (stockPpm.n > LONGEST || stockPpm.d > LONGEST) {
    return refused('too-many-dilutions', 'Too many dilutions follow one another for an exact result.');
  }
  return known(stockPpm.mul(takenMl).div(toMl));
}

/**
 * What to draw from a stock, and the water to add, for a volume of a strength; refused above the stock's
 * strength.
 */
export function drawFor(stockPpm: Exact, targetPpm: Exact, volumeMl: Exact): Outcome<Draw> {
  if (![stockPpm, targetPpm, volumeMl].every(isPositive)) {
    return refused('not-positive', 'Strengths and volumes must be above zero.');
  }
  if (targetPpm.gt(stockPpm)) {
    const [wanted, stock] = apartText(targetPpm, stockPpm);
    return refused('stronger-than-stock', `You cannot make ${wanted} ppm from ${stock} ppm: water only makes it weaker.`);
  }
  const stockMl = volumeMl.mul(targetPpm).div(stockPpm);
  return known({ stockMl, waterMl: volumeMl.sub(stockMl) });
}
