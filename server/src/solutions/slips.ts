/** Strengths that look like a slip of the unit: 500 % where 500 ppm was meant, 0.5 ppm for 0.5 g/L. */
import type { Strength, StrengthUnit } from '../model/quantity.ts';
import type { Agent, UsualRange } from './agent.ts';
import { type Exact, exact } from './amounts.ts';
import { numberText } from './display.ts';
import { strengthInPpm } from './strength.ts';

export interface Slip {
  readonly tooStrong: boolean;
  /** The usual range in words, in ppm or %. */
  readonly usual: string;
  /** The same number in units that make it usual, likeliest first; may be empty. */
  readonly readings: readonly Strength[];
}

/** What a hand that wrote this unit most likely meant, likeliest first. */
const likelyMeant: Readonly<Record<StrengthUnit, readonly StrengthUnit[]>> = {
  ppm: ['g/L', '%', 'mM'],
  'mg/L': ['g/L', '%', 'mM'],
  'g/L': ['mg/L', '%', 'mM'],
  '%': ['ppm', 'g/L', 'mM'],
  mM: ['uM', 'ppm', 'g/L'],
  uM: ['mM', 'ppm', 'g/L'],
};

/**
 * Whether a strength meant for seed lies outside what growers use of this agent, and what may have been
 * meant; undefined when it does not or when nothing is known. Not for stocks, which are stronger on
 * purpose.
 */
export function unitSlip(strength: Strength, agent: Agent): Slip | undefined {
  const { usual } = agent;
  const ppm = strengthInPpm(strength, agent);
  if (!ppm.ok || usual === undefined || ppm.value.n === 0n || isWithin(ppm.value, usual)) return undefined;
  const candidates = likelyMeant[strength.unit];
  const readings = (isInPercent(usual) ? [...candidates].sort(percentFirst) : candidates)
    .map(unit => ({ value: strength.value, unit }))
    .filter((reading) => {
      const read = strengthInPpm(reading, agent);
      return read.ok && isWithin(read.value, usual);
    });
  return { tooStrong: ppm.value.gt(usual.high), usual: usualRangeText(usual), readings };
}

function isWithin(ppm: Exact, { low, high }: UsualRange): boolean {
  return ppm.gte(low) && ppm.lte(high);
}

/** Whether growers give the strength of it in %: where even the weakest is 0.01 %. */
function isInPercent({ low }: UsualRange): boolean {
  return low.gte(100);
}

function percentFirst(a: StrengthUnit, b: StrengthUnit): number {
  return Number(b === '%') - Number(a === '%');
}

/** Example: '5 to 5000 ppm', '0.01 to 100 %' */
export function usualRangeText(usual: UsualRange): string {
  const { low, high } = usual;
  const percent = isInPercent(usual);
  const per = exact(percent ? 10_000 : 1);
  return `${numberText(low.div(per)).text} to ${numberText(high.div(per)).text} ${percent ? '%' : 'ppm'}`;
}
