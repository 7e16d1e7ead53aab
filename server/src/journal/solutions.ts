/** The stocks and dilutions of a journal: what each holds, how strong it is, until when, and what was drawn from it. */
import { factOf, factsOf, type JournalRecord } from '../model/record.ts';
import { dayAfter, printQuantity, type Duration } from '../model/quantity.ts';
import type { Day } from '../model/day.ts';
import type { Agent } from '../solutions/agent.ts';
import { volumeInMl, type Exact } from '../solutions/amounts.ts';
import { diluted } from '../solutions/dilution.ts';
import { ledgerOf, type Ledger } from '../solutions/ledger.ts';
import { keepingText, keepingTime, type Form, type StockRule } from '../solutions/keeping.ts';
import { refused, type Outcome } from '../solutions/outcome.ts';
import { stockFromPowder, type PowderStock, type StockStrength } from '../solutions/stock.ts';
import { strengthInPpm } from '../solutions/strength.ts';
import type { Entry } from './life.ts';
import type { Limit } from './limits.ts';

export interface Solution {
  readonly id: string;
  readonly entry: Entry;
  readonly agent: Agent | undefined;
  readonly ppm: Outcome<Exact>;
  /** How a stock from powder was worked out. */
  readonly powder: StockStrength | undefined;
  /** The stock that a dilution was made from. */
  readonly from: string | undefined;
  /** A dilution that is made, directly or by way of others, from itself. */
  readonly circular: boolean;
  readonly madeMl: Exact | undefined;
  /** Undefined for a record without a date, and for one with a mistake. */
  readonly keeps: Keeping | undefined;
  /**
   * When what it was made from was made, where that was past its time already: an older stock, or powder. Its strength
   * is then at most what it should be.
   */
  readonly staleSince: Day | undefined;
}

export interface Keeping {
  /** The last good day. */
  readonly until: Day;
  /** When the bottle was made up that sets it: a dilution keeps no longer than what it was made from. */
  readonly made: Day;
  /** In words: what says so. */
  readonly origin: string;
}

export interface Draw {
  readonly entry: Entry;
  readonly ml: Exact | undefined;
}

/** What a dilution is made from: a solution, nothing that the journal knows, or in the end itself. */
export type Source = Solution | 'unknown' | 'circular';

/**
 * `limit` holds for stocks that say nothing themselves of how long they keep. `source` is of no account for a stock
 * from powder.
 */
export function solutionOf(
  id: string, entry: Entry, agents: ReadonlyMap<string, Agent>, source: Source, limit: Limit<Duration>,
): Solution {
  const made = entry.record.keyword === 'stock' ? fromShelf(entry, agents) : fromStock(entry, source);
  // What cannot be read may be the purity, or how long it keeps.
  const isUnread = entry.line.content.problems.length > 0;
  if (isUnread) return { id, entry, keeps: undefined, staleSince: undefined, ...made, powder: undefined, ppm: unread };
  const keeps = keepingOf(entry, source, keepingTime(made.agent, formOf(entry), limit));
  return { id, entry, keeps, staleSince: staleSource(entry, source, made.agent), ...made };
}

function formOf({ record }: Entry): Form {
  if (record.keyword === 'dilute') return 'dilution';
  return factOf(record, 'substance')?.strength ? 'bought' : 'stock';
}

/** Powder is as old as the last day on which it can have been bought. */
function staleSource({ record, moment }: Entry, source: Source, agent: Agent | undefined): Day | undefined {
  if (!moment) return undefined;
  if (record.keyword === 'dilute') return typeof source === 'object' ? staleOn(source, moment.day) : undefined;
  const bought = factOf(record, 'bought')?.when.value.last;
  if (bought === undefined || factOf(record, 'substance')?.strength) return undefined;
  return dayAfter(bought, keepingTime(agent, 'powder').value) < moment.day ? bought : undefined;
}

/** When the contents were made, if they are past their time on a day; undefined while they are good. */
export function staleOn({ keeps, staleSince }: Solution, day: Day): Day | undefined {
  const own = keeps && keeps.until < day ? keeps.made : undefined;
  return staleSince === undefined || own === undefined ? staleSince ?? own : Math.min(staleSince, own);
}

const unread = refused('unread', 'There is a mistake on its line: until it is mended its strength cannot be told.');

/** A dilution that says nothing itself keeps no longer than what it was made from. */
function keepingOf({ record, moment }: Entry, source: Source, rule: StockRule): Keeping | undefined {
  if (!moment) return undefined;
  const { day: made } = moment;
  const own = factOf(record, 'keeps')?.value;
  if (own) return { made, until: dayAfter(made, own), origin: `keeps ${printQuantity(own)}, as its own record says` };
  const until = dayAfter(made, rule.value);
  const before = record.keyword === 'dilute' && typeof source === 'object' ? source.keeps : undefined;
  if (before && before.until < until) return { ...before, origin: 'no longer than what it was made from' };
  return { made, until, origin: keepingText(rule) };
}

type Made = Omit<Solution, 'id' | 'entry' | 'keeps' | 'staleSince'>;

function fromStock({ record }: Entry, source: Source): Made {
  const draw = factOf(record, 'draw');
  const to = factOf(record, 'to');
  const madeMl = to && volumeInMl(to.value);
  const found = typeof source === 'object' ? source : undefined;
  const from = draw?.stock.text;
  const made = { agent: found?.agent, powder: undefined, from, circular: source === 'circular', madeMl };
  if (!draw?.volume || !madeMl) {
    return { ...made, ppm: refused('no-volume', 'The volumes taken and made up to are not both written.') };
  }
  if (source === 'circular') return { ...made, ppm: refused('no-strength', 'It is made from itself, by way of others or directly.') };
  if (!found) return { ...made, ppm: refused('unknown-stock', `“${draw.stock.text}” is no stock of this journal.`) };
  return { ...made, ppm: found.ppm.ok ? diluted(found.ppm.value, volumeInMl(draw.volume.value), madeMl) : found.ppm };
}

function fromShelf({ record }: Entry, agents: ReadonlyMap<string, Agent>): Made {
  const substance = factOf(record, 'substance');
  const agent = substance && agents.get(substance.name.text);
  const volume = factOf(record, 'volume')?.value;
  const made = {
    agent, powder: undefined, from: undefined, circular: false, madeMl: volume && volumeInMl(volume),
  };
  if (!substance || !agent) return { ...made, ppm: refused('no-strength', 'Its agent is not known.') };
  // Bought as a liquid, with the strength on its label.
  if (substance.strength) return { ...made, ppm: strengthInPpm(substance.strength.value, agent) };
  if (!substance.mass) return { ...made, ppm: refused('no-strength', 'The mass of powder is not written.') };
  const stock = powderStock(record, agents);
  if (!stock) return { ...made, ppm: refused('no-volume', 'The volume it was made up to is not written.') };
  const powder = stockFromPowder(stock);
  if (!powder.ok) return { ...made, ppm: powder };
  return { ...made, powder: powder.value, ppm: { ok: true, value: powder.value.ppm } };
}

/** What the record of a stock says of its powder; undefined where that is not enough for a strength. */
export function powderStock(record: JournalRecord, agents: ReadonlyMap<string, Agent>): PowderStock | undefined {
  const substance = factOf(record, 'substance');
  const agent = substance && agents.get(substance.name.text);
  const volume = factOf(record, 'volume')?.value;
  if (!agent || !substance.mass || !volume) return undefined;
  return {
    agent, mass: substance.mass.value, volume, halved: substance.halved?.value, purity: factOf(record, 'purity'),
  };
}

/** Whether a record takes something from a stock: a soak, drops or a dilution that names it. */
export function takesFrom({ keyword, facts }: JournalRecord, id: string): boolean {
  if (keyword !== 'soak' && keyword !== 'apply' && keyword !== 'dilute') return false;
  return facts.some(fact => (fact.type === 'draw' ? fact.stock.text : fact.type === 'substance' && fact.name.text) === id);
}

/**
 * The volume that a record takes from a stock; undefined where it does not say. A volume on a soak is that of the whole
 * liquid, on drops all that was used.
 */
export function drawnMl({ record }: Entry, id: string): Exact | undefined {
  const draw = factOf(record, 'draw');
  if (draw?.stock.text === id) return draw.volume && volumeInMl(draw.volume.value);
  const substances = factsOf(record, 'substance');
  const own = substances.find(({ name }) => name.text === id)?.volume;
  if (own) return volumeInMl(own.value);
  const volume = record.keyword === 'apply' && substances.length === 1 ? factOf(record, 'volume') : undefined;
  return volume && volumeInMl(volume.value);
}

/** What is left after each draw, in the order of time. */
export function ledger(solution: Pick<Solution, 'madeMl'>, draws: readonly Draw[]): Ledger<Draw> {
  const when = ({ moment }: Entry) => (moment ? moment.day * 1440 + (moment.minutes ?? 0) : 0);
  return ledgerOf(solution.madeMl, draws.map(draw => ({ key: draw, when: when(draw.entry), ml: draw.ml })));
}
