/** A treatment that may be given: from the own records, or from a guide. Plumule makes up none. */
import { stageOf, type RegimeStage } from '../calendar/regime-match.ts';
import type { Guide } from '../journal/guides.ts';
import type { Journal } from '../journal/journal.ts';
import type { StrengthLimit } from '../journal/limits.ts';
import { minutesOf, printQuantity, type Duration, type StrengthUnit } from '../model/quantity.ts';
import { factsOf } from '../model/record.ts';
import type { Agent, Solubility } from '../solutions/agent.ts';
import { exact, type Exact } from '../solutions/amounts.ts';
import { comparedPpm, isStronger } from '../solutions/comparison.ts';
import { toNumber } from '../solutions/display.ts';
import { exceededSolubility } from '../solutions/stock.ts';
import { strengthInPpm } from '../solutions/strength.ts';
import type { Group } from '../trials/groups.ts';
import { isAgentGiven } from '../trials/treatment.ts';
import { soakMinutes, type Tried } from './tried.ts';

export interface Offer {
  readonly agent: Agent;
  /** ppm; undefined where nobody measured it or the guide says none. */
  readonly ppm: number | undefined;
  /** The unit that a guide gives it in. */
  readonly unit: StrengthUnit | undefined;
  /** As it stands in a record: 'GA3 500 ppm', 'GA3 unmeasured'; undefined where no strength is known. */
  readonly text: string | undefined;
  /** As it stands in a record: '24 h'. */
  readonly soak: string;
  /** What was done or is said where that is longer than the limit of the journal. */
  readonly longer: string | undefined;
  /** What it comes from. */
  readonly tried: Tried | undefined;
  readonly guide: Guide | undefined;
  /** The stages that come before the soak, and those that follow it. */
  readonly first: readonly RegimeStage[];
  readonly next: readonly RegimeStage[];
  /** It was given to scarified seed. */
  readonly isScarified: boolean;
  /** It was given to seed that had been sown and watched. */
  readonly isLate: boolean;
  /** What the guide has in the same line: 'KNO3 0.2 %'. */
  readonly beside: readonly string[];
  /** The limit of the journal that it is above. */
  readonly above: StrengthLimit | undefined;
  /** What dissolves in water, where it is more than that. */
  readonly undissolved: Solubility | undefined;
}

/** Such a dose is the grower's own to write: Plumule's own check would point it out at once. */
export function isRefused({ above, undissolved }: Offer): boolean {
  return above !== undefined || undissolved !== undefined;
}

/** Of a dose that was given before. */
export function offerOf(tried: Tried, plant: string | undefined, journal: Journal): Offer {
  const { agent, ppm, text } = tried;
  const minutes = soakMinutes(tried);
  return {
    agent, ppm, unit: undefined, text, tried, guide: undefined, beside: [], ...stagesOf(tried),
    isLate: tried.treated.every(({ since }) => since !== undefined), isScarified: tried.treated.every(isScarified),
    ...exceededBy(ppm === undefined ? undefined : { agent, ppm: exact(ppm), unit: undefined }, plant, journal),
    ...soakOf(minutes === undefined ? undefined : { value: minutes, unit: 'min' }, plant, journal),
  };
}

/** A hard coat keeps seed shut: what was not scarified says nothing of what was. */
export function isScarified({ batches }: Group): boolean {
  return batches.every(({ conditions }) => conditions.scarified.length > 0);
}

/** Each agent that a guide gives before its stages, or behind them. */
export function offersOf(guide: Guide, plant: string | undefined, journal: Journal): Offer[] {
  const { facts } = guide.record;
  const given = factsOf(guide.record, 'substance').flatMap(fact => {
    const agent = journal.agents.get(fact.name.text);
    return agent && isAgentGiven(agent) ? [{ agent, fact }] : [];
  });
  const amountOf = ({ fact: { strength, unmeasured } }: typeof given[number]) => (
    strength ? printQuantity(strength.value) : unmeasured ? 'unmeasured' : undefined);
  const stages = (from: number, to: number) => guide.stages
    .filter(stage => facts.indexOf(stage) >= from && facts.indexOf(stage) < to)
    .map(stageOf);
  return given.map(each => {
    const { agent, fact } = each;
    const { strength } = fact;
    const found = strength && strengthInPpm(strength.value, agent);
    const ppm = found?.ok ? found.value : undefined;
    const amount = amountOf(each);
    const at = facts.indexOf(fact);
    return {
      first: stages(0, at), next: stages(at, facts.length), isLate: false, isScarified: false,
      beside: given.filter(other => other !== each).map(other => `${other.agent.word} ${amountOf(other) ?? ''}`.trim()),
      agent, ppm: ppm && toNumber(ppm), guide, tried: undefined,
      unit: strength?.value.unit, ...exceededBy(ppm && { agent, ppm, unit: strength?.value.unit }, plant, journal),
      text: amount === undefined ? undefined : `${agent.word} ${amount}`,
      ...soakOf(guide.soak, plant, journal),
    };
  });
}

/** What the latest of its lots had before and after the soak; nothing before it where one of them did without. */
function stagesOf({ treated }: Tried): Pick<Offer, 'first' | 'next'> {
  const latest = treated.at(-1)!;
  const before = treated.every(({ treatment }) => treatment[0]!.stagesBefore > 0)
    ? latest.treatment[0]!.stagesBefore : 0;
  const stages = latest.batches[0]!.batch.stages.map(({ stage, temperature, planned, start, end }): RegimeStage => ({
    stage, temperature, duration: planned ?? (end && { value: end.day - start.day, unit: 'days' }),
  }));
  return { first: stages.slice(0, before), next: stages.slice(latest.treatment[0]!.stagesBefore) };
}

/** No longer than the limit of the journal, which is also the length where nobody says one. */
function soakOf(wanted: Duration | undefined, plant: string | undefined, { limits }: Journal): Pick<Offer, 'soak' | 'longer'> {
  const limit = limits.soak(plant).value;
  const [minutes, most] = [wanted && minutesOf(wanted), minutesOf(limit)];
  if (!wanted || minutes === undefined) return { soak: printQuantity(limit), longer: undefined };
  const inWords = wanted.unit === 'min' && minutes >= 60 ? `${Math.round(minutes / 60)} h` : printQuantity(wanted);
  return most !== undefined && minutes > most
    ? { soak: printQuantity(limit), longer: inWords } : { soak: inWords, longer: undefined };
}

/** A dose in ppm, and the unit that it was written in; undefined where it is worked out. */
interface Strong {
  readonly agent: Agent;
  readonly ppm: Exact;
  readonly unit: StrengthUnit | undefined;
}

function exceededBy(
  dose: Strong | undefined, plant: string | undefined, journal: Journal,
): Pick<Offer, 'above' | 'undissolved'> {
  if (!dose) return { above: undefined, undissolved: undefined };
  return { above: limitBelow(dose, plant, journal), undissolved: exceededSolubility(dose.ppm, dose.agent) };
}

function limitBelow(
  { agent, ppm, unit }: Strong, plant: string | undefined, { limits, agents }: Journal,
): StrengthLimit | undefined {
  const limit = limits.strength(agent, plant);
  const limited = limit && agents.get(limit.of);
  const most = limited && strengthInPpm(limit.value, limited);
  if (!limited || !most?.ok) return undefined;
  const isAbove = isStronger(comparedPpm(ppm, agent), comparedPpm(most.value, limited), [unit, limit.value.unit]);
  return isAbove ? limit : undefined;
}
