/** Dilution: what is dissolved stays, so C1 V1 = C2 V2. Volumes of dilute solutions are taken to add up. */
import { type Exact, isPositive } from './amounts.ts';
import { numberText } from './display.ts';
import { known, type Outcome, refused } from './outcome.ts';

export interface Draw {
  readonly stockMl: Exact;
  readonly waterMl: Exact;
}

/**
 * ppm of a volume taken from a stock and made up to another volume with water.
 *
 * Example: 10 mL of 1000 ppm made up to 20 mL is 500 ppm
 */
export function diluted(stockPpm: Exact, takenMl: Exact, toMl: Exact): Outcome<Exact> {
  if (!isPositive(takenMl) || !isPositive(toMl)) return refused('not-positive', 'Both volumes must be above zero.');
  if (takenMl.gt(toMl)) {
    const text = `${numberText(takenMl).text} mL cannot be made up to ${numberText(toMl).text} mL: that is less than was taken.`;
    return refused('more-than-made', text);
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
    const [wanted, stock] = [targetPpm, stockPpm].map(ppm => numberText(ppm).text);
    return refused('stronger-than-stock', `${wanted} ppm cannot be made from ${stock} ppm: water only makes it weaker.`);
  }
  const stockMl = volumeMl.mul(targetPpm).div(stockPpm);
  return known({ stockMl, waterMl: volumeMl.sub(stockMl) });
}
