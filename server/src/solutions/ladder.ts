/** A ladder of strengths from one stock: 1000, 500, 250 ppm. */
import { type Exact, exact, isPositive } from './amounts.ts';
import { drawFor } from './dilution.ts';
import { known, type Outcome, refused } from './outcome.ts';

/**
 * `from the stock`: every rung is drawn from the stock. `down the ladder`: every rung is made from the one
 * above it, so that the volumes to measure stay large; a rung is then made larger by what the next one
 * takes.
 */
export type LadderWay = 'from the stock' | 'down the ladder';

export interface Rung {
  readonly ppm: Exact;
  /** The index of the rung that it is made from; undefined for the stock. */
  readonly from: number | undefined;
  /** Drawn from there. */
  readonly drawMl: Exact;
  readonly waterMl: Exact;
  /** drawMl + waterMl; more than what stays when the next rung takes from it. */
  readonly makeMl: Exact;
  /** What stays for use. */
  readonly keepMl: Exact;
}

export interface Ladder {
  readonly rungs: readonly Rung[];
  /** Drawn from the stock in all. */
  readonly stockMl: Exact;
  readonly waterMl: Exact;
}

/**
 * The rungs from the strongest down, each with the same volume kept. Refused as drawFor is, or without a
 * target.
 */
export function ladder(
  stockPpm: Exact,
  targetsPpm: readonly Exact[],
  keepMl: Exact,
  way: LadderWay = 'from the stock',
): Outcome<Ladder> {
  const targets = [...targetsPpm].sort((a, b) => b.compare(a));
  if (targets.length === 0 || ![stockPpm, keepMl, ...targets].every(isPositive)) {
    return refused('not-positive', 'A ladder needs a volume and strengths above zero.');
  }
  const rungs: Rung[] = [];
  let extra = exact(0);
  // From the weakest up, because each rung has to hold what the one below takes.
  for (let i = targets.length - 1; i >= 0; i -= 1) {
    const serial = way === 'down the ladder' && i > 0;
    const makeMl = keepMl.add(extra);
    const draw = drawFor(serial ? targets[i - 1]! : stockPpm, targets[i]!, makeMl);
    if (!draw.ok) return draw;
    const { stockMl: drawMl, waterMl } = draw.value;
    rungs.unshift({ ppm: targets[i]!, from: serial ? i - 1 : undefined, drawMl, waterMl, makeMl, keepMl });
    extra = serial ? drawMl : exact(0);
  }
  const sum = (amounts: readonly Exact[]): Exact => amounts.reduce((a, b) => a.add(b), exact(0));
  return known({
    rungs,
    stockMl: sum(rungs.filter(rung => rung.from === undefined).map(rung => rung.drawMl)),
    waterMl: sum(rungs.map(rung => rung.waterMl)),
  });
}
