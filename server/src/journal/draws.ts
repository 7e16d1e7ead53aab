/** What is taken from the bottles and packets of a journal, and what that leaves. */
import { factOf, factsOf } from '../model/record.ts';
import { dissolvedMg, exact, massInMg, volumeInMl, type Exact } from '../solutions/amounts.ts';
import { isFound, ledgerOf, type Amount, type Found, type Ledger, type Left } from '../solutions/ledger.ts';
import { strengthInPpm } from '../solutions/strength.ts';
import { liquidOf, type Shelf } from './doses.ts';
import type { Entry } from './life.ts';
import { contentOfPacket, type Solution } from './solutions.ts';

export interface Draw {
  readonly entry: Entry;
  /** mL of a liquid, mg of powder or a part of what is left in the packet; undefined where the record does not say. */
  readonly amount: Amount;
}

/** A line in the account of a bottle or a packet: something taken, or what was found to be left. */
export interface AccountEntry {
  readonly entry: Entry;
  readonly amount: Amount | Found;
}

/** Whether something was taken. */
export function isDraw(each: AccountEntry): each is Draw {
  return !isFound(each.amount);
}

/**
 * What a record says of a bottle or a packet; undefined for a `left` in the wrong unit. Of a `left` that cannot be read
 * it is only known that no more was there than before.
 */
export function accountedBy(entry: Entry, solution: Solution, shelf: Shelf): AccountEntry | undefined {
  const { keyword, broken } = entry.record;
  if (keyword !== 'left') return drawnBy(entry, solution, shelf);
  const found = foundIn(entry, solution);
  if (!found) return broken ? { entry, amount: undefined } : undefined;
  return { entry, amount: { found } };
}

function foundIn({ record }: Entry, { form }: Solution): Exact | undefined {
  if (form !== 'powder') {
    const volume = factOf(record, 'volume');
    return volume && volumeInMl(volume.value);
  }
  const mass = factOf(record, 'mass');
  return mass && massInMg(mass.value);
}

/** What a record takes from a bottle or a packet. */
function drawnBy(entry: Entry, solution: Solution, shelf: Shelf): Draw {
  return { entry, amount: solution.form === 'powder' ? powderIn(entry, solution, shelf) : drawnMl(entry, solution.id, shelf) };
}

/** A volume on a soak is that of the whole liquid, on drops all that was used of the only liquid. */
function drawnMl({ record }: Entry, id: string, shelf: Shelf): Exact | undefined {
  const draw = factOf(record, 'draw');
  if (draw?.stock.text === id) return draw.volume && volumeInMl(draw.volume.value);
  const own = factsOf(record, 'substance').filter(({ name }) => name.text === id);
  if (own.length === 0) return undefined;
  const volumes = own.flatMap(({ volume }) => (volume ? [volumeInMl(volume.value)] : []));
  if (volumes.length === own.length) return volumes.reduce((sum, ml) => sum.add(ml), exact(0));
  const isOnly = record.keyword === 'apply' && liquidOf(record, shelf).shares.size === 1;
  const used = isOnly ? factOf(record, 'volume') : undefined;
  return used && volumeInMl(used.value);
}

function powderIn({ record }: Entry, packet: Solution, shelf: Shelf): Amount {
  const { id, agent } = packet;
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
  const content = contentOfPacket(packet);
  return totalMl && ppm?.ok && content.ok ? dissolvedMg(ppm.value, totalMl).div(content.value.share) : undefined;
}

/** Behind all that was taken on the day. */
const EVENING = 1440;

/** What is left after each entry, in the order of time. What was measured with no time of day is of the evening. */
export function ledger(
  { made }: Pick<Solution, 'made'>, account: readonly AccountEntry[],
): Ledger<AccountEntry> {
  const when = ({ entry: { moment }, amount }: AccountEntry) =>
    (moment ? moment.day * EVENING + (moment.minutes ?? (isFound(amount) ? EVENING - 0.5 : 0)) : 0);
  return ledgerOf(made, account.map(each => ({ key: each, when: when(each), amount: each.amount })));
}

/** mg that a record took out of a packet, as far as it is known. */
export function takenBy(entry: Entry, packet: Solution, account: readonly AccountEntry[]): Left | undefined {
  return ledger(packet, account).entries.find(({ key }) => key.entry.line === entry.line)?.taken;
}
