/** The stocks and dilutions of a journal: what each holds, how strong it is, until when, and what was drawn from it. */
import { factOf, factsOf } from '../model/record.ts';
import { dayAfter, type Duration } from '../model/quantity.ts';
import type { Day } from '../model/day.ts';
import type { Agent } from '../solutions/agent.ts';
import { volumeInMl, type Exact } from '../solutions/amounts.ts';
import { diluted } from '../solutions/dilution.ts';
import { ledgerOf, type Ledger } from '../solutions/ledger.ts';
import { refused, type Outcome } from '../solutions/outcome.ts';
import { stockFromPowder, type StockStrength } from '../solutions/stock.ts';
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
  /** The last good day, and in words what says so; undefined for a record without a date. */
  readonly keeps: { readonly until: Day; readonly origin: string } | undefined;
}

export interface Draw {
  readonly entry: Entry;
  readonly ml: Exact | undefined;
}

/** What a dilution is made from: a solution, nothing that the journal knows, or in the end itself. */
export type Source = Solution | 'unknown' | 'circular';

/** `limit` holds for stocks that say nothing themselves of how long they keep. `source` is of no account for a stock from powder. */
export function solutionOf(
  id: string, entry: Entry, agents: ReadonlyMap<string, Agent>, source: Source, limit: Limit<Duration>,
): Solution {
  const { record, moment } = entry;
  const own = factOf(record, 'keeps')?.value;
  const keeps = moment && {
    until: dayAfter(moment.day, own ?? limit.value), origin: own ? 'as its own record says' : limit.origin,
  };
  const base = { id, entry, keeps };
  return record.keyword === 'stock' ? { ...base, ...fromPowder(entry, agents) } : { ...base, ...fromStock(entry, source) };
}

type Made = Omit<Solution, 'id' | 'entry' | 'keeps'>;

function fromStock({ record }: Entry, source: Source): Made {
  const draw = factOf(record, 'draw');
  const to = factOf(record, 'to');
  const madeMl = to && volumeInMl(to.value);
  const found = typeof source === 'object' ? source : undefined;
  const made = { agent: found?.agent, powder: undefined, from: draw?.stock.text, circular: source === 'circular', madeMl };
  if (!draw?.volume || !madeMl) {
    return { ...made, ppm: refused('no-volume', 'The volumes taken and made up to are not both written.') };
  }
  if (source === 'circular') return { ...made, ppm: refused('no-strength', 'It is made from itself, by way of others or directly.') };
  if (!found) return { ...made, ppm: refused('unknown-stock', `“${draw.stock.text}” is no stock of this journal.`) };
  return { ...made, ppm: found.ppm.ok ? diluted(found.ppm.value, volumeInMl(draw.volume.value), madeMl) : found.ppm };
}

function fromPowder({ record }: Entry, agents: ReadonlyMap<string, Agent>): Made {
  const substance = factOf(record, 'substance');
  const agent = substance && agents.get(substance.name.text);
  const volume = factOf(record, 'volume')?.value;
  const made = {
    agent, powder: undefined, from: undefined, circular: false, madeMl: volume && volumeInMl(volume),
  };
  if (!substance || !agent) return { ...made, ppm: refused('no-strength', 'Its agent is not known.') };
  if (!substance.mass) return { ...made, ppm: refused('no-strength', 'The mass of powder is not written.') };
  if (!volume) return { ...made, ppm: refused('no-volume', 'The volume it was made up to is not written.') };
  const purity = factOf(record, 'purity')?.percent;
  const powder = stockFromPowder({
    agent, mass: substance.mass.value, volume, halved: substance.halved?.value,
    purity: purity === undefined ? undefined : { percent: purity },
  });
  return powder.ok ? { ...made, powder: powder.value, ppm: { ok: true, value: powder.value.ppm } } : { ...made, ppm: powder };
}

/** The volume that a record takes from a stock; undefined where it does not say. */
export function drawnMl({ record }: Entry, id: string): Exact | undefined {
  const draw = factOf(record, 'draw');
  if (draw?.stock.text === id) return draw.volume && volumeInMl(draw.volume.value);
  const substances = factsOf(record, 'substance');
  const own = substances.find(({ name }) => name.text === id)?.volume;
  if (own) return volumeInMl(own.value);
  const volume = factOf(record, 'volume');
  return volume && substances.length === 1 ? volumeInMl(volume.value) : undefined;
}

/** What is left after each draw, in the order of time. */
export function ledger(solution: Solution, draws: readonly Draw[]): Ledger<Draw> {
  const when = ({ moment }: Entry) => (moment ? moment.day * 1440 + (moment.minutes ?? 0) : 0);
  return ledgerOf(solution.madeMl, draws.map(draw => ({ key: draw, when: when(draw.entry), ml: draw.ml })));
}
