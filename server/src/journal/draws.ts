/** What is taken from the bottles and packets of a journal, and what that leaves. */
import { factOf, factsOf } from '../model/record.ts';
import type { Agent } from '../solutions/agent.ts';
import { massInMg, volumeInMl, type Exact } from '../solutions/amounts.ts';
import { ledgerOf, type Amount, type Ledger, type Left } from '../solutions/ledger.ts';
import { contentOf } from '../solutions/purity.ts';
import { strengthInPpm } from '../solutions/strength.ts';
import { liquidOf, type Shelf } from './doses.ts';
import type { Entry } from './life.ts';
import type { Solution } from './solutions.ts';

export interface Draw {
  readonly entry: Entry;
  /** mL of a liquid, mg of powder or a part of what is left in the packet; undefined where the record does not say. */
  readonly amount: Amount;
}

/** What a record takes from a bottle or a packet. */
export function drawnBy(entry: Entry, solution: Solution, shelf: Shelf): Draw {
  return { entry, amount: solution.form === 'powder' ? powderIn(entry, solution, shelf) : drawnMl(entry, solution.id) };
}

/** A volume on a soak is that of the whole liquid, on drops all that was used. */
function drawnMl({ record }: Entry, id: string): Exact | undefined {
  const draw = factOf(record, 'draw');
  if (draw?.stock.text === id) return draw.volume && volumeInMl(draw.volume.value);
  const substances = factsOf(record, 'substance');
  const own = substances.find(({ name }) => name.text === id)?.volume;
  if (own) return volumeInMl(own.value);
  const volume = record.keyword === 'apply' && substances.length === 1 ? factOf(record, 'volume') : undefined;
  return volume && volumeInMl(volume.value);
}

function powderIn({ record }: Entry, { id, agent, entry }: Solution, shelf: Shelf): Amount {
  const draw = factOf(record, 'draw');
  if (draw?.stock.text === id) {
    if (draw.mass) return massInMg(draw.mass.value);
    return draw.halved && { halved: draw.halved.value };
  }
  const fact = factsOf(record, 'substance').find(({ name }) => name.text === id);
  // What was halved by eye, of a mass that was not all of the packet, was not measured.
  if (fact?.mass) return fact.halved ? undefined : massInMg(fact.mass.value);
  const { totalMl } = liquidOf(record, shelf);
  const ppm = fact?.strength && agent && strengthInPpm(fact.strength.value, agent);
  const share = agent && powderShare(agent, entry);
  return totalMl && ppm?.ok && share ? ppm.value.mul(totalMl).div(1000).div(share) : undefined;
}

/** mg of the agent in 1 mg of the powder of a packet; undefined where its purity cannot be. */
function powderShare(agent: Agent, { record }: Entry): Exact | undefined {
  const content = contentOf(agent, factOf(record, 'purity'));
  return content.ok ? content.value.share : undefined;
}

/** What is left after each draw, in the order of time. */
export function ledger({ made }: Pick<Solution, 'made'>, draws: readonly Draw[]): Ledger<Draw> {
  const when = ({ moment }: Entry) => (moment ? moment.day * 1440 + (moment.minutes ?? 0) : 0);
  return ledgerOf(made, draws.map(draw => ({ key: draw, when: when(draw.entry), amount: draw.amount })));
}

/** mg that a record took out of a packet, as far as it is known. */
export function takenBy(entry: Entry, packet: Solution, draws: readonly Draw[]): Left | undefined {
  return ledger(packet, draws).entries.find(({ key }) => key.entry.line === entry.line)?.taken;
}
