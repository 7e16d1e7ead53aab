/** What a trial can show before it is made, in plain words. */
import { isUndefined, type Measured } from '../../measures/measured.ts';
import type { Plan } from '../../measures/plan.ts';
import type { SplitPlan } from '../../trials/split-plan.ts';

export const PLAN_HEAD = ['Untreated', 'Treated must reach', 'Better split'] as const;

export const PLAN_BASIS = 'Shares of germinated seed; Fisher’s exact test at 5 % with a power of 80 %.';

/**
 * One share of the untreated seed, the smallest treated share that is told from it, and what would show more.
 *
 * Example: ['10 %', '69 % or more', '13 and 11: 64 %']
 */
export function planRow({ treated, share, visible, best }: Plan): [string, string, string] {
  const better = best.treated === treated ? '' : `${best.treated} and ${best.untreated}: ${visibleText(best.visible)}`;
  return [`${percentText(share)} %`, isUndefined(visible) ? '– (not even 100 %)' : `${visibleText(visible)} or more`, better];
}

/** Example: '24 treated (A, B) and 12 untreated (C) seeds' */
export function planSides({ treated, untreated }: Pick<SplitPlan, 'treated' | 'untreated'>): string {
  return `${treated.seeds} treated (${treated.names.join(', ')}) and ${untreated.seeds} untreated (${untreated.names.join(', ')}) seeds`;
}

/** Rounded up, so that the share that is shown can be seen. */
function visibleText(visible: Measured): string {
  return isUndefined(visible) ? '–' : `${Math.ceil(100 * visible.value)} %`;
}

function percentText(share: number): string {
  return String(Math.round(1000 * share) / 10);
}
