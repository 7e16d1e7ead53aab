import { hypergeometric } from './discrete.ts';
import { asUnlikely, LEVEL, reaches } from './fisher.ts';

/**
 * The outcomes of a design that Fisher's two-sided test calls a difference. For each number germinated in all
 * (both samples together), the first sample is rejected with fewer than `from` or more than `to`.
 */
export interface RejectionRegion {
  readonly n1: number;
  readonly n2: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
}

/**
 * The rejection region of Fisher's two-sided test for n1 and n2 seeds. Computed once for a design, so that
 * the power at many pairs of shares is only a sum: 100 seeds a side take about a millisecond.
 */
export function rejectionRegion(n1: number, n2: number, level = LEVEL): RejectionRegion {
  const from = new Int32Array(n1 + n2 + 1);
  const to = new Int32Array(n1 + n2 + 1);
  for (let total = 0; total <= n1 + n2; total++) {
    const { first, probabilities } = hypergeometric(n1, n2, total);
    let low = 0;
    let high = probabilities.length - 1;
    let p = 0;
    // Inwards from both ends in order of probability: the p-value of a table is the sum of all up to it. Ties
    // join together, or not at all.
    while (low <= high) {
      const next = Math.min(probabilities[low]!, probabilities[high]!);
      let [lowTo, highTo, sum] = [low, high, p];
      while (lowTo <= highTo && asUnlikely(probabilities[lowTo]!, next)) sum += probabilities[lowTo++]!;
      while (highTo >= lowTo && asUnlikely(probabilities[highTo]!, next)) sum += probabilities[highTo--]!;
      if (!reaches(sum, level)) break;
      [low, high, p] = [lowTo, highTo, sum];
    }
    from[total] = first + low;
    to[total] = first + high;
  }
  return { n1, n2, from, to };
}
