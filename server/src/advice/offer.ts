/** A treatment that may be given: from the own records, or from a guide. Plumule makes up none. */
import type { Guide } from '../journal/guides.ts';
import type { Journal } from '../journal/journal.ts';
import type { StrengthLimit } from '../journal/limits.ts';
import { minutesOf, printQuantity, type Duration } from '../model/quantity.ts';
import { factsOf } from '../model/record.ts';
import type { Agent } from '../solutions/agent.ts';
import { exact, type Exact } from '../solutions/amounts.ts';
import { comparedPpm } from '../solutions/comparison.ts';
import { toNumber } from '../solutions/display.ts';
import { strengthInPpm } from '../solutions/strength.ts';
import { isAgentGiven } from '../trials/treatment.ts';
import { soakMinutes, type Tried } from './tried.ts';

export interface Offer {
  readonly agent: Agent;
  /** ppm; undefined where nobody measured it or the guide says none. */
  readonly ppm: number | undefined;
  /** As it stands in a record: 'GA3 500 ppm', 'GA3 unmeasured'; undefined where no strength is known. */
  readonly text: string | undefined;
  /** As it stands in a record: '24 h'. */
  readonly soak: string;
  /** What was done or is said where that is longer than the limit of the journal. */
  readonly longer: string | undefined;
  /** What it comes from. */
  readonly tried: Tried | undefined;
  readonly guide: Guide | undefined;
  /** The limit of the journal that it is above. */
  readonly above: StrengthLimit | undefined;
}

/** Of a dose that was given before. */
export function offerOf(tried: Tried, plant: string | undefined, journal: Journal): Offer {
  const { agent, ppm, text } = tried;
  const minutes = soakMinutes(tried);
  return {
    agent, ppm, text, tried, guide: undefined,
    above: limitBelow(agent, ppm === undefined ? undefined : exact(ppm), plant, journal),
    ...soakOf(minutes === undefined ? undefined : { value: minutes, unit: 'min' }, plant, journal),
  };
}

/** Each agent that a guide gives before its stages, or behind them. */
export function offersOf(guide: Guide, plant: string | undefined, journal: Journal): Offer[] {
  return factsOf(guide.record, 'substance').flatMap(({ name, strength, unmeasured }) => {
    const agent = journal.agents.get(name.text);
    if (!agent || !isAgentGiven(agent)) return [];
    const found = strength && strengthInPpm(strength.value, agent);
    const ppm = found?.ok ? found.value : undefined;
    const amount = strength ? printQuantity(strength.value) : unmeasured ? 'unmeasured' : undefined;
    return [{
      agent, ppm: ppm && toNumber(ppm), guide, tried: undefined, above: limitBelow(agent, ppm, plant, journal),
      text: amount === undefined ? undefined : `${agent.word} ${amount}`,
      ...soakOf(guide.soak, plant, journal),
    }];
  });
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

function limitBelow(
  agent: Agent, ppm: Exact | undefined, plant: string | undefined, { limits, agents }: Journal,
): StrengthLimit | undefined {
  const limit = limits.strength(agent, plant);
  const limited = limit && agents.get(limit.of);
  const most = limited && strengthInPpm(limit.value, limited);
  return ppm && most?.ok && comparedPpm(ppm, agent).gt(most.value) ? limit : undefined;
}
