/** What all ways of making up a solution share. */
import { isoOf } from '../model/day.ts';
import { dayAfter, printQuantity, type Strength, type StrengthUnit } from '../model/quantity.ts';
import type { Agent } from './agent.ts';
import { type Exact, exact } from './amounts.ts';
import { numberText, showMass, showVolume, toNumber } from './display.ts';
import { measure, type Measurability, type Measurement } from './measurable.ts';
import { type Form, keepingText, keepingTime } from './keeping.ts';
import type { MixKeeping, MixPlan, MixRefusal, PlannedAmount, PlanLimits } from './mix-plan.ts';
import type { Refused } from './outcome.ts';
import type { Remedy } from './remedies.ts';
import { label, type LabelDates, type Step, store } from './steps.ts';
import { strengthFromPpm, strengthText } from './strength.ts';
import type { Bench } from './tools.ts';
import { limitsOf } from './uncertainty.ts';

export interface Task {
  readonly agent: Agent;
  /** The strength asked for, above zero. */
  readonly ppm: Exact;
  /** The volume asked for, above zero. */
  readonly volumeMl: Exact;
  /** The same as it was asked for; strengths are told in its unit. */
  readonly asked: Strength;
  readonly bench: Bench;
  readonly dates: LabelDates;
  readonly keeping: MixKeeping;
  /** No stronger than asked, whatever the tools round: what is more would not dissolve. */
  readonly isMost: boolean;
}

/**
 * Label the bottle and put it away: what it holds, and how long that can be relied on. `sign`: what stands before a
 * strength that is not known exactly, where what it is made from does not say so already.
 */
export function bottled({ agent, dates, keeping }: Task, strength: string, form: Form, sign = ''): Step[] {
  const { rule, today, sourceUntil } = keeping;
  const { sign: known = '' } = dates;
  const time = keepingTime(agent, form, rule);
  const own = today === undefined ? undefined : dayAfter(today, time.value);
  const isShorter = own !== undefined && sourceUntil !== undefined && sourceUntil < own;
  const until = isShorter ? sourceUntil : own;
  const keeps = `${printQuantity(time.value)} (${time.origin})`;
  const why = isShorter ? 'no longer than what it was made from' : keepingText(time);
  return [
    label(agent, strength, { ...dates, sign: known === '' ? sign : known, keepsUntil: until === undefined ? undefined : isoOf(until) }),
    store(agent, until === undefined ? `It keeps ${keeps}.` : `Good until ${isoOf(until)} (${why}).`),
  ];
}

export function refusal(agent: Agent, why: Refused, nearest: readonly Remedy[] = []): MixRefusal {
  return { possible: false, agent: { word: agent.word, name: agent.name }, ...why.refusal, nearest };
}

export function planned(wanted: Exact, { tool, shown }: Measurement): PlannedAmount {
  const show = tool.measures === 'mass' ? showMass : showVolume;
  return { wanted: show(wanted), measured: shown, tool: { id: tool.id, name: tool.name } };
}

/** The best measure for the volume that is made up to, or why there is none. */
export function vesselFor({ bench, isMost }: Task, volumeMl: Exact): Measurability {
  return measure(volumeMl, 'volume', bench, isMost ? 'up' : 'nearest');
}

/** From 2 % on (ppm) a litre weighs so much more than a kilogram that it counts. Common practice, no source. */
const HEAVY = exact(20_000);

/** What is left out of account where a strong liquid is weighed as if it were water. */
export function weighedAsWater({ tool }: Measurement, ppm: Exact, { strengthIs }: Agent): string[] {
  return tool.id === 'weighed-water' && strengthIs === 'by weight' && ppm.gte(HEAVY) ? ['that it weighs more than water'] : [];
}

/** Example: 'from 0.4825 to 0.5075 %' */
function limitsText(low: Exact, high: Exact, unit: StrengthUnit, agent: Agent): string {
  const [from, to] = [low, high].map(ppm => strengthFromPpm(ppm, unit, agent));
  const texts = from!.ok && to!.ok ? [from!.value, to!.value] : [low, high];
  const [least, most] = texts.map(value => numberText(value, 3).text);
  return `from ${least!} to ${most!} ${from!.ok ? unit.replace(/^u/, 'µ') : 'ppm'}`;
}

export function resultOf(
  task: Task,
  ppm: Exact,
  factors: readonly Exact[],
  divisors: readonly Exact[],
  words: Pick<PlanLimits, 'counted' | 'notCounted'>,
): MixPlan['result'] {
  const { agent, asked: { unit } } = task;
  const { low, high } = limitsOf(ppm, factors, divisors);
  return {
    ppm: toNumber(ppm),
    text: strengthText(ppm, unit, agent),
    offPercent: toNumber(ppm.div(task.ppm).sub(exact(1)).mul(100)),
    limits: { lowPpm: toNumber(low), highPpm: toNumber(high), text: limitsText(low, high, unit, agent), ...words },
  };
}
