/** The stocks and dilutions of a journal: what each holds, how strong it is, until when it keeps, and what was drawn from it. */
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

export interface Solution {
  readonly id: string;
  readonly entry: Entry;
  readonly agent: Agent | undefined;
  readonly ppm: Outcome<Exact>;
  /** How a stock from powder was worked out. */
  readonly powder: StockStrength | undefined;
  /** The stock that a dilution was made from. */
  readonly from: string | undefined;
  readonly madeMl: Exact | undefined;
  /** The last good day. */
  readonly keepsUntil: Day | undefined;
}

export interface Draw {
  readonly entry: Entry;
  readonly ml: Exact | undefined;
}

/** `find` gives the stock that a dilution is made from; `keeps` is the limit for stocks that say nothing themselves. */
export function solutionOf(
  id: string, entry: Entry, agents: ReadonlyMap<string, Agent>, find: (id: string) => Solution | undefined, keeps: Duration,
): Solution {
  const { record, moment } = entry;
  const own = factOf(record, 'keeps')?.value;
  const keepsUntil = moment && dayAfter(moment.day, own ?? keeps);
  const base = { id, entry, keepsUntil };
  if (record.keyword === 'stock') return { ...base, ...fromPowder(entry, agents), from: undefined };
  const draw = factOf(record, 'draw');
  const to = factOf(record, 'to');
  const source = draw && find(draw.stock.text);
  const madeMl = to && volumeInMl(to.value);
  const known = { ...base, agent: source?.agent, powder: undefined, from: draw?.stock.text, madeMl };
  if (!draw?.volume || !madeMl) return { ...known, ppm: refused('no-volume', 'The volumes taken and made up to are not both written.') };
  if (!source) return { ...known, ppm: refused('unknown-stock', `“${draw.stock.text}” is no stock of this journal.`) };
  return { ...known, ppm: source.ppm.ok ? diluted(source.ppm.value, volumeInMl(draw.volume.value), madeMl) : source.ppm };
}

function fromPowder({ record }: Entry, agents: ReadonlyMap<string, Agent>): Pick<Solution, 'agent' | 'ppm' | 'powder' | 'madeMl'> {
  const substance = factOf(record, 'substance');
  const agent = substance && agents.get(substance.name.text);
  const volume = factOf(record, 'volume')?.value;
  const madeMl = volume && volumeInMl(volume);
  if (!substance || !agent) return { agent, madeMl, powder: undefined, ppm: refused('no-strength', 'Its agent is not known.') };
  if (!substance.mass) return { agent, madeMl, powder: undefined, ppm: refused('no-strength', 'The mass of powder is not written.') };
  if (!volume) return { agent, madeMl, powder: undefined, ppm: refused('no-volume', 'The volume it was made up to is not written.') };
  const purity = factOf(record, 'purity')?.percent;
  const made = stockFromPowder({
    agent, mass: substance.mass.value, volume, halved: substance.halved?.value,
    purity: purity === undefined ? undefined : { percent: purity },
  });
  return made.ok ? { agent, madeMl, powder: made.value, ppm: { ok: true, value: made.value.ppm } } : { agent, madeMl, powder: undefined, ppm: made };
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
  return ledgerOf(
    solution.madeMl,
    draws.map(draw => ({ key: draw, when: when(draw.entry), ml: draw.ml })),
    solution.entry.moment ? when(solution.entry) - (solution.entry.moment.minutes ?? 0) : undefined,
  );
}
