/** What was done to the seed of a batch to make it germinate, in the form in which batches are compared. */
import { isZero } from '../journal/doses.ts';
import type { Batch, Dose, Soak } from '../journal/life.ts';
import { isBefore } from '../journal/moment.ts';
import { printQuantity } from '../model/quantity.ts';
import type { Agent, Role } from '../solutions/agent.ts';
import type { RefusalCode } from '../solutions/outcome.ts';
import { toNumber } from '../solutions/display.ts';
import { isSameDose, mayBeSameLength, type Range } from './alike.ts';

/** An agent that is given to break dormancy or to hasten growth, and how strong. */
export interface ActiveDose {
  readonly agent: Agent;
  /** ppm; undefined where nothing was measured or where the strength is not known. */
  readonly ppm: number | undefined;
  /** ppm that it was at most, from a bottle past its time: no dose to compare others with. */
  readonly atMost: number | undefined;
  /** Powder was halved by eye for it: the strength is an estimate. */
  readonly byEye: boolean;
  /** What its record says where it says two strengths: only the same words are the same dose. */
  readonly unclear: string | undefined;
}

/** A soak with at least one such agent. */
export interface ActiveSoak {
  readonly soak: Soak;
  /** In the order of their words. */
  readonly doses: readonly ActiveDose[];
  /** Minutes; undefined where it is not known when the seed came out. */
  readonly length: Range | undefined;
  /** Cold and warm stages that had begun before. */
  readonly stagesBefore: number;
}

/** The soaks in the order of time. None: the seed is untreated, soaked in water or not at all. */
export type Treatment = readonly ActiveSoak[];

/** Seed washed in bleach or lying in water is untreated: neither is given to break dormancy. */
const active: ReadonlySet<Role> = new Set(['hormone', 'promoter', 'declared']);

export function isActive(dose: Dose): boolean {
  return dose.agent !== undefined && isAgentGiven(dose.agent) && !isZero(dose);
}

/** Whether an agent is given to break dormancy or to hasten growth. */
export function isAgentGiven({ role }: Agent): boolean {
  return active.has(role);
}

export function isActiveSoak({ doses }: Soak): boolean {
  return doses.some(isActive);
}

/** The treatment of a batch by some of its soaks. */
export function treatmentOf({ stages }: Batch, soaks: readonly Soak[]): Treatment {
  return soaks.filter(isActiveSoak).map(soak => ({
    soak,
    doses: soak.doses.filter(isActive).map(activeDose).sort((a, b) => (a.agent.word < b.agent.word ? -1 : 1)),
    // Out by then at the latest is no length.
    length: soak.endedBy === 'next' ? undefined : soak.length,
    stagesBefore: stages.filter(({ start }) => isBefore(start, soak.start)).length,
  }));
}

function activeDose(dose: Dose): ActiveDose {
  const { agent, ppm, stale, byEye } = dose;
  const known = ppm.ok ? toNumber(ppm.value) : undefined;
  const unclear = ppm.ok || !saidTwice.has(ppm.refusal.code) ? undefined : wordsOf(dose);
  const strength = stale ? { ppm: undefined, atMost: known } : { ppm: known, atMost: undefined };
  return { agent: agent!, byEye, unclear, ...strength };
}

const saidTwice: ReadonlySet<RefusalCode> = new Set(['said-twice', 'beside-stock']);

function wordsOf({ parts }: Dose): string {
  return parts.map(({ fact: { strength, mass }, byStock, ppm: own }) => {
    const ppm = byStock ?? own;
    const said = [strength, mass].map(each => (each ? printQuantity(each.value) : ''));
    return `${ppm.ok ? ppm.value.toFraction() : ''} ${said.join()}`;
  }).join(' + ');
}

export function isSameTreatment(a: Treatment, b: Treatment): boolean {
  return a.length === b.length && a.every((soak, i) => isSameSoak(soak, b[i]!));
}

function isSameSoak(a: ActiveSoak, b: ActiveSoak): boolean {
  return isSameCourse(a, b) && a.doses.length === b.doses.length
    && a.doses.every(({ agent, ppm, atMost, unclear }, i) => {
      const other = b.doses[i]!;
      return agent.word === other.agent.word && isSame(ppm, other.ppm) && isSame(atMost, other.atMost)
        && unclear === other.unclear;
    });
}

function isSame(a: number | undefined, b: number | undefined): boolean {
  return a === undefined || b === undefined ? a === b : isSameDose(a, b);
}

/** Whether two soaks differ in nothing but what the seed lay in. */
export function isSameCourse(a: ActiveSoak, b: ActiveSoak): boolean {
  return a.stagesBefore === b.stagesBefore && mayBeSameLength(a.length, b.length);
}

/** Whether a dose of known strength rests on powder halved by eye, in any of the batches that had it. */
export function isByEye({ batches }: { readonly batches: readonly { readonly treatment: Treatment }[] }): boolean {
  const doses = batches.flatMap(({ treatment }) => treatment.flatMap(soak => soak.doses));
  return doses.some(({ ppm, byEye }) => byEye && ppm !== undefined);
}

/** The only soak of a treatment and its only agent; undefined where there are more or none. */
export function onlyDose(treatment: Treatment): { readonly soak: ActiveSoak; readonly dose: ActiveDose } | undefined {
  const [soak] = treatment;
  const [dose] = soak?.doses ?? [];
  return soak && dose && treatment.length === 1 && soak.doses.length === 1 ? { soak, dose } : undefined;
}
