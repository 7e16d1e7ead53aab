/** The packets of powder, stocks and dilutions of a journal: what each holds, how strong it is, until when. */
import type { Keyword } from '../model/keywords.ts';
import { factOf, type JournalRecord } from '../model/record.ts';
import { dayAfter, printQuantity, type Duration } from '../model/quantity.ts';
import type { Day } from '../model/day.ts';
import type { Agent } from '../solutions/agent.ts';
import { massInMg, volumeInMl, type Exact } from '../solutions/amounts.ts';
import { diluted } from '../solutions/dilution.ts';
import { toNumber } from '../solutions/display.ts';
import type { Left } from '../solutions/ledger.ts';
import { keepingText, keepingTime, type Form, type StockRule } from '../solutions/keeping.ts';
import { refused, type Outcome, type Refused } from '../solutions/outcome.ts';
import { contentOf, type Content } from '../solutions/purity.ts';
import { stockFromPowder, type PowderStock, type StockStrength } from '../solutions/stock.ts';
import { strengthInPpm } from '../solutions/strength.ts';
import type { Entry } from './life.ts';
import type { Limit } from './limits.ts';

export interface Solution {
  readonly id: string;
  readonly entry: Entry;
  /** `powder` is a packet, from which stocks are made. */
  readonly form: Form;
  readonly agent: Agent | undefined;
  /** Refused for a packet: powder has no strength. */
  readonly ppm: Outcome<Exact>;
  /** What went into a stock from powder, where that is enough for a strength. */
  readonly weighed: PowderStock | undefined;
  /** How a stock from powder was worked out. */
  readonly powder: StockStrength | undefined;
  /** The stock that a dilution was made from. */
  readonly from: string | undefined;
  /** The packet that the powder of a stock came from, as far as the journal has it. */
  readonly packet: string | undefined;
  /** A dilution that is made, directly or by way of others, from itself. */
  readonly circular: boolean;
  /** mL that were made up or bought; of a packet mg. */
  readonly made: Exact | undefined;
  /** Undefined for a record without a date, and for one with a mistake. */
  readonly keeps: Keeping | undefined;
  /**
   * What it was made from, where that was past its time already: an older bottle, or powder. Its strength is then at
   * most what it should be.
   */
  readonly staleSource: Stale | undefined;
  /** Another record defines it too, and says something else: which of them a record takes from is not known. */
  readonly isTwice?: true;
}

/** What is past its time, or will be, and when it was made. */
export type Stale = Readonly<{ made: Day; what: 'bottle' | 'older bottle' | 'powder' }>;

/** Of a dilution that keeps no longer than what it was made from, the age is of that. */
export interface Keeping extends Stale {
  /** The last good day. */
  readonly until: Day;
  /** In words: what says so. */
  readonly origin: string;
}

/** What it is made from: a solution, a packet, nothing that the journal knows, or in the end itself. */
export type Source = Solution | 'unknown' | 'circular';

/**
 * `limit` holds for stocks that say nothing themselves of how long they keep. `source` is of no account for a stock
 * that names no packet. `takenBy` tells how much powder (mg) a record took out of a packet.
 */
export function solutionOf(
  id: string, entry: Entry, agents: ReadonlyMap<string, Agent>, source: Source, limit: Limit<Duration>,
  takenBy: (entry: Entry, packet: Solution) => Left | undefined,
): Solution {
  const made = madeBy(entry, agents, source, takenBy);
  // What cannot be read may be the purity, or how long it keeps.
  if (isUnread(entry)) {
    const unknown = { keeps: undefined, staleSource: undefined, weighed: undefined, powder: undefined, ppm: unread };
    return { id, entry, ...made, ...unknown };
  }
  const keeps = keepingOf(entry, source, keepingTime(made.agent, formOf(entry), limit));
  return { id, entry, keeps, staleSource: staleSourceOf(entry, source, made.agent), ...made };
}

/** As the first of its records has it, less all that the other one may say otherwise. */
export function definedTwice(solution: Solution): Solution {
  return {
    ...solution, isTwice: true, made: undefined, keeps: undefined, staleSource: undefined,
    weighed: undefined, powder: undefined,
    ppm: solution.form === 'powder' ? solution.ppm : twiceDefined(solution.id),
  };
}

function twiceDefined(id: string): Refused {
  return refused('unread', `${id} is defined twice, so the strength is unknown until you rename one of the two.`);
}

function formOf({ record }: Entry): Form {
  if (record.keyword === 'dilute') return 'dilution';
  if (record.keyword === 'powder') return 'powder';
  return factOf(record, 'substance')?.strength ? 'bought' : 'stock';
}

/** Powder is as old as the last day on which it can have been bought. */
function staleSourceOf({ record, moment }: Entry, source: Source, agent: Agent | undefined): Stale | undefined {
  if (!moment) return undefined;
  const before = typeof source === 'object' ? staleOn(source, moment.day) : undefined;
  if (before) return inside(before);
  const bought = factOf(record, 'bought')?.when.value.last;
  if (record.keyword !== 'stock' || bought === undefined || factOf(record, 'substance')?.strength) return undefined;
  return dayAfter(bought, keepingTime(agent, 'powder').value) < moment.day ? { made: bought, what: 'powder' } : undefined;
}

/** As it is called in what was made from it. */
function inside<Age extends Stale>(stale: Age): Age {
  return stale.what === 'bottle' ? { ...stale, what: 'older bottle' } : stale;
}

/** The oldest of the contents and what they came from that is past its time on a day; undefined while all is good. */
export function staleOn({ keeps, staleSource }: Solution, day: Day): Stale | undefined {
  const own = keeps && keeps.until < day ? { made: keeps.made, what: keeps.what } : undefined;
  return own && staleSource && own.made <= staleSource.made ? own : staleSource ?? own;
}

function isUnread({ line }: Entry): boolean {
  return line.content.problems.length > 0;
}

/** Why it is not known how pure a packet is; undefined where its record says it. */
function unreadPacket({ id, entry, isTwice }: Solution): Refused | undefined {
  if (isTwice) return twiceDefined(id);
  return isUnread(entry) ? refused('unread', `The line of ${id} has a mistake, so the strength is unknown until you fix it.`) : undefined;
}

/** How much of its agent the powder of a packet holds. What cannot be read on its line may be the purity. */
export function contentOfPacket(packet: Solution): Outcome<Content> {
  const { agent, entry } = packet;
  if (!agent) return refused('no-strength', 'Its agent is unknown.');
  return unreadPacket(packet) ?? contentOf(agent, factOf(entry.record, 'purity'));
}

const unread = refused('unread', 'Its line has a mistake, so its strength is unknown until you fix it.');

/** A dilution that says nothing itself keeps no longer than what it was made from. */
function keepingOf({ record, moment }: Entry, source: Source, rule: StockRule): Keeping | undefined {
  if (!moment) return undefined;
  // Powder is as old as it was when it came.
  const bought = record.keyword === 'powder' ? factOf(record, 'bought')?.when.value.last : undefined;
  const made = bought ?? moment.day;
  const age: Stale = { made, what: record.keyword === 'powder' ? 'powder' : 'bottle' };
  const own = factOf(record, 'keeps')?.value;
  if (own) return { ...age, until: dayAfter(made, own), origin: `its record says “keeps ${printQuantity(own)}”` };
  const until = dayAfter(made, rule.value);
  const before = record.keyword === 'dilute' && typeof source === 'object' ? source.keeps : undefined;
  if (before && before.until < until) return { ...inside(before), origin: 'no longer than what it was made from' };
  return { ...age, until, origin: keepingText(rule) };
}

type Made = Omit<Solution, 'id' | 'entry' | 'keeps' | 'staleSource'>;

function madeBy(
  entry: Entry, agents: ReadonlyMap<string, Agent>, source: Source,
  takenBy: (entry: Entry, packet: Solution) => Left | undefined,
): Made {
  switch (entry.record.keyword) {
    case 'stock': return fromShelf(entry, agents, source, takenBy);
    case 'powder': return packetOf(entry, agents);
    default: return fromStock(entry, source);
  }
}

function packetOf({ record }: Entry, agents: ReadonlyMap<string, Agent>): Made {
  const substance = factOf(record, 'substance');
  return {
    form: 'powder', agent: substance && agents.get(substance.name.text), weighed: undefined, powder: undefined,
    from: undefined, packet: undefined, circular: false, made: substance?.mass && massInMg(substance.mass.value),
    ppm: refused('no-strength', 'It is powder: a strength comes with the liquid.'),
  };
}

function fromStock({ record }: Entry, source: Source): Made {
  const draw = factOf(record, 'draw');
  const to = factOf(record, 'to');
  const madeMl = to && volumeInMl(to.value);
  const found = typeof source === 'object' ? source : undefined;
  const from = draw?.stock.text;
  const made = {
    form: 'dilution', agent: found?.agent, weighed: undefined, powder: undefined, from, packet: undefined,
    circular: source === 'circular', made: madeMl,
  } as const;
  if (!draw?.volume || !madeMl) {
    return { ...made, ppm: refused('no-volume', 'Its record needs both volumes: what was taken and what it was made up to.') };
  }
  if (source === 'circular') return { ...made, ppm: refused('no-strength', 'It is made from itself, directly or through others.') };
  if (!found) return { ...made, ppm: refused('unknown-stock', `This journal has no stock “${draw.stock.text}”.`) };
  return { ...made, ppm: found.ppm.ok ? diluted(found.ppm.value, volumeInMl(draw.volume.value), madeMl) : found.ppm };
}

function fromShelf(
  entry: Entry, agents: ReadonlyMap<string, Agent>, source: Source,
  takenBy: (entry: Entry, packet: Solution) => Left | undefined,
): Made {
  const { record } = entry;
  const substance = factOf(record, 'substance');
  const draw = factOf(record, 'draw');
  const packet = draw && typeof source === 'object' && source.form === 'powder' ? source : undefined;
  const agent = draw ? packet?.agent : substance && agents.get(substance.name.text);
  const volume = factOf(record, 'volume')?.value;
  const made = {
    form: formOf(entry), agent, weighed: undefined, powder: undefined, from: undefined, packet: packet?.id,
    circular: draw !== undefined && source === 'circular', made: volume && volumeInMl(volume),
  };
  const without = (why: string): Made => ({ ...made, ppm: refused('no-strength', why) });
  if (draw && !packet) return without(`This journal has no packet of powder “${draw.stock.text}”.`);
  if (!agent) return without('Its agent is unknown.');
  // Bought as a liquid, with the strength on its label.
  if (!draw && substance?.strength) return { ...made, ppm: strengthInPpm(substance.strength.value, agent) };
  const amount = packet ? portionOf(entry, packet, takenBy(entry, packet))
    : substance?.mass && { mass: substance.mass.value, halved: substance.halved?.value };
  if (!amount) return without('The mass of powder is not recorded.');
  if (typeof amount === 'string') return without(amount);
  if (!volume) return { ...made, ppm: refused('no-volume', 'Its final volume is not recorded.') };
  const own = factOf(record, 'purity');
  const unknown = packet && !own && unreadPacket(packet);
  if (unknown) return { ...made, ppm: unknown };
  const purity = own ?? (packet && factOf(packet.entry.record, 'purity'));
  const weighed: PowderStock = { agent, ...amount, purity, volume };
  const powder = stockFromPowder(weighed);
  if (!powder.ok) return { ...made, weighed, ppm: powder };
  return { ...made, weighed, powder: powder.value, ppm: { ok: true, value: powder.value.ppm } };
}

/** What was taken out of a packet; why that is not known; undefined where it is not written. */
function portionOf(
  { record }: Entry, packet: Solution, taken: Left | undefined,
): Pick<PowderStock, 'mass' | 'halved' | 'portion'> | string | undefined {
  const { mass, halved } = factOf(record, 'draw')!;
  if (mass) return { mass: mass.value };
  if (!halved) return undefined;
  if (!taken?.likely) return `It is unknown how much powder was left in ${packet.id}.`;
  const whole = toNumber(taken.likely.mul(2 ** halved.value));
  if (whole === 0) return `Nothing was left in ${packet.id}.`;
  return {
    mass: { value: whole, unit: 'mg' }, halved: halved.value, portion: { low: taken.least, high: taken.most },
  };
}

/** Whether a record makes a bottle or a packet known. */
export function isSolution(keyword: Keyword): boolean {
  return keyword === 'stock' || keyword === 'dilute' || keyword === 'powder';
}

/** Whether a record takes something from a stock or a packet: a soak, drops, a dilution or a stock that names it. */
export function takesFrom({ keyword, facts, unread }: JournalRecord, id: string): boolean {
  const isTaker = keyword === 'soak' || keyword === 'apply' || keyword === 'dilute' || keyword === 'stock';
  if (!isTaker) return false;
  if (unread.some(({ text }) => text === id)) return true;
  return facts.some(fact => (fact.type === 'draw' ? fact.stock.text : fact.type === 'substance' && keyword !== 'stock' && fact.name.text) === id);
}

/** Whether a record says how much is left of a stock or a packet. */
export function tellsWhatIsLeft({ keyword, subject }: JournalRecord, id: string): boolean {
  return keyword === 'left' && subject?.text === id;
}
