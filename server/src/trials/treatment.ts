/** What was done to the seed of a batch, in the form in which batches are compared. */
import type { Batch, Dose } from '../journal/life.ts';
import { celsius, printTemperature, type Temperature } from '../model/quantity.ts';
import { factOf } from '../model/record.ts';
import type { Agent, Role } from '../solutions/agent.ts';
import { toNumber } from '../solutions/display.ts';

/** An agent that is given to break dormancy or to hasten growth, and how strong. */
export interface ActiveDose {
  readonly agent: Agent;
  /** ppm; undefined where nothing was measured or where the strength is not known. */
  readonly ppm: number | undefined;
}

export interface Treatment {
  /** In the order given. Empty: the seed is untreated, soaked in water or not at all. */
  readonly doses: readonly ActiveDose[];
  /** The same for batches that got the same doses. */
  readonly key: string;
}

/** Seed washed in bleach or lying in water is untreated: neither is given to break dormancy. */
const active: ReadonlySet<Role> = new Set(['hormone', 'promoter', 'declared']);

export function isActive({ agent }: Dose): boolean {
  return agent !== undefined && active.has(agent.role);
}

export function treatmentOf({ soaks }: Batch): Treatment {
  const doses = soaks.flatMap(soak => soak.doses).filter(isActive).map((dose): ActiveDose => ({
    agent: dose.agent!, ppm: dose.ppm.ok ? toNumber(dose.ppm.value) : undefined,
  }));
  const key = doses.map(({ agent, ppm }) => `${agent.word} ${ppm ?? 'unmeasured'}`).join(' + ');
  return { doses, key };
}

/** Whatever else may bear on germination, each in words; batches in which one differs are no fair comparison. */
export interface Conditions {
  readonly temperature: string;
  readonly medium: string;
  readonly stages: string;
  readonly scarification: string;
  readonly disinfection: string;
}

export function conditionsOf(batch: Batch): Conditions {
  const temperature = batch.sowing && factOf(batch.sowing.record, 'temperature')?.value;
  const life = [...batch.inherited, ...batch.events];
  const washes = batch.soaks.flatMap(({ doses }) => doses).filter(({ agent }) => agent?.role === 'disinfectant');
  return {
    temperature: temperature ? printTemperature(inCelsius(temperature)) : '',
    medium: batch.medium?.toLowerCase().replace(/\s+/g, ' ').trim() ?? '',
    stages: batch.stages.map(({ stage, temperature: at, planned }) =>
      [stage, at && printTemperature(inCelsius(at)), planned && `${planned.value} ${planned.unit}`].filter(Boolean).join(' '))
      .join(', '),
    scarification: life.some(({ type }) => type === 'scarify') ? 'scarified' : '',
    disinfection: washes.map(({ agent }) => agent?.word).join(' + '),
  };
}

function inCelsius({ day, night, unit }: Temperature): Temperature {
  const rounded = (value: number) => Math.round(celsius(value, unit) * 2) / 2;
  return { day: rounded(day), night: night === undefined ? undefined : rounded(night), unit: 'C' };
}
