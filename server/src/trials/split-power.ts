/** Before the experiment: what difference the numbers of seed in a split can show, and what would show more. */
import { factsOf, type JournalRecord } from '../model/record.ts';
import { bestSplit, visibleShare, type Split } from '../measures/design.ts';
import type { Measured } from '../measures/measured.ts';

/** Untreated shares for which a split is judged: poor, middling, good germination. Common practice, no source. */
export const EXPECTED_SHARES = [0.1, 0.4, 0.7] as const;

interface Side {
  readonly name: string;
  readonly seeds: number;
}

export interface SplitPower {
  /** The first two parts. */
  readonly sides: readonly [Side, Side];
  /** For each share of untreated seed the smallest treated share that these seeds can tell from it. */
  readonly visible: readonly { readonly untreated: number; readonly treated: Measured }[];
  /** The division of the same seeds that shows the smallest difference from the middle share. */
  readonly best: Split;
}

/** Undefined for a split that makes fewer than two parts with seeds. */
export function splitPower(record: JournalRecord): SplitPower | undefined {
  const parts = factsOf(record, 'part')
    .map(({ name, n }): Side => ({ name: name.text, seeds: n.value }))
    .filter(({ seeds }) => seeds > 0);
  const [first, second] = parts;
  if (!first || !second) return undefined;
  return {
    sides: [first, second],
    visible: EXPECTED_SHARES.map(
      untreated => ({ untreated, treated: visibleShare(first.seeds, second.seeds, untreated) })),
    best: bestSplit(first.seeds + second.seeds, EXPECTED_SHARES[1]),
  };
}
