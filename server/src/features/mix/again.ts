/** What to ask again after a refusal. */
import type { Shown } from '../../solutions/display.ts';
import type { MixRefusal } from '../../solutions/mix-plan.ts';
import type { RemedyKind } from '../../solutions/remedies.ts';

/** A question, and another answer to it. */
export interface ChangedAnswer {
  readonly field: 'strength' | 'volume';
  readonly value: string;
}

/** Remedies that keep the way and change one number: which one, and to which side it may be rounded. */
const changing: Partial<Record<RemedyKind, { field: ChangedAnswer['field']; amount: string; round: (n: number) => number }>> = {
  'make-more': { field: 'volume', amount: 'makeUpTo', round: Math.ceil },
  'less-volume': { field: 'volume', amount: 'makeUpTo', round: Math.floor },
  'use-undiluted': { field: 'strength', amount: 'strength', round: Math.floor },
  'at-solubility': { field: 'strength', amount: 'strength', round: Math.floor },
};

/** The likeliest first; of each the number itself, and a round one in case the tools cannot measure it. */
export function changesFor({ nearest }: MixRefusal): ChangedAnswer[] {
  return nearest.flatMap(({ kind, amounts }) => {
    const change = changing[kind];
    const shown = change && amounts[change.amount];
    if (!shown) return [];
    return [shown.text, rounded(shown, change.round)].map(value => ({ field: change.field, value }));
  });
}

/** To two digits. Example: of 33.33 mL, upwards, '34 mL' */
function rounded({ value, unit }: Shown, round: (n: number) => number): string {
  const digit = 10 ** (Math.floor(Math.log10(value)) - 1);
  return `${Number((round(value / digit) * digit).toPrecision(2))} ${unit}`;
}
