/**
 * Temperatures that a stage can have, and what was probably meant by one that it cannot. Cold stages are best at 1 to
 * 3 C and a refrigerator is at 38 to 40 F, warm ones are at 15 to 20 C or at 68 to 86 F (pages of growers and an
 * encyclopaedia; read in excerpts). The ranges here are drawn much wider, so that only a slip falls outside: common
 * practice, no source.
 */
import { celsius, printTemperature, type Temperature } from '../model/quantity.ts';

export type Stage = 'chill' | 'warm' | 'sow';

interface Range {
  readonly low: number;
  readonly high: number;
}

/** Degrees C by day; at night it may be as cold as winter. */
const byDay: Readonly<Record<Stage, Range>> = {
  chill: { low: -10, high: 12 }, warm: { low: 8, high: 40 }, sow: { low: -10, high: 40 },
};
const NIGHT_LOW = -25;

/** What is offered is not the unlikely. */
const likely: Readonly<Record<Stage, Range>> = {
  chill: { low: -3, high: 10 }, warm: { low: 10, high: 35 }, sow: { low: 0, high: 35 },
};

export interface WarmthSlip {
  /** The plausible range, in words. */
  readonly usual: string;
  /** What was most likely meant; none where nothing fits. */
  readonly readings: readonly string[];
  /** The other kind of stage, where the temperature fits that. */
  readonly stage: Stage | undefined;
}

/** Undefined for a temperature that the stage can have. */
export function warmthSlip(temperature: Temperature, stage: Stage): WarmthSlip | undefined {
  if (fits(temperature, byDay[stage])) return undefined;
  const { unit } = temperature;
  const other = unit === 'C' ? 'F' : 'C';
  const scaled = (by: number, to: Temperature['unit']): Temperature => ({
    day: temperature.day / by, night: temperature.night === undefined ? undefined : temperature.night / by, unit: to,
  });
  const readings = [scaled(1, other), ...(Math.abs(temperature.day) < 100 ? [] : [scaled(10, unit), scaled(10, other)])]
    .filter(each => fits(each, likely[stage]));
  const swapped = stage === 'chill' ? 'warm' : stage === 'warm' ? 'chill' : undefined;
  const { low, high } = byDay[stage];
  return {
    usual: `${low} to ${high} C`,
    // A point that slipped is less likely than the unit, and likely only in what no bench has.
    readings: readings.slice(0, 1).map(printTemperature),
    stage: swapped && fits(temperature, likely[swapped]) ? swapped : undefined,
  };
}

function fits({ day, night, unit }: Temperature, { low, high }: Range): boolean {
  const [warm, cool] = [celsius(day, unit), celsius(night ?? day, unit)];
  return warm >= low && warm <= high && cool >= Math.min(low, night === undefined ? low : NIGHT_LOW) && cool <= high;
}
