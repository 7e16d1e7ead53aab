/** What is in the liquid of a soak or a drop: agents, from stocks or by themselves, and how strong once it is mixed. */
import type { Day } from '../model/day.ts';
import { factOf, factsOf, type JournalRecord, type SubstanceFact } from '../model/record.ts';
import type { Agent } from '../solutions/agent.ts';
import { massInMg, strengthOf, volumeInMl, type Exact } from '../solutions/amounts.ts';
import { mayBeAsStrong } from '../solutions/comparison.ts';
import { dishOf, type Dish, type Pour } from '../solutions/dish.ts';
import { known, refused, type Outcome } from '../solutions/outcome.ts';
import { strengthInPpm } from '../solutions/strength.ts';
import type { Dose, DosePart, Entry } from './life.ts';
import { contentOfPacket, staleOn, type Solution } from './solutions.ts';

export interface Shelf {
  readonly agents: ReadonlyMap<string, Agent>;
  readonly solution: (id: string) => Solution | undefined;
}

/** What a journal has to take from. */
export function shelfOf(journal: Shelf): Shelf {
  return { agents: journal.agents, solution: id => journal.solution(id) };
}

const notSaid = refused('no-strength', 'No strength is recorded.');
const unread = refused('unread', 'Its line has a mistake, so the strength of the mixture is unknown until you fix it.');

/** The doses of a `soak`, an `apply` or a `guide`, each agent once. */
export function dosesOf({ record, moment }: Pick<Entry, 'record'> & Partial<Entry>, shelf: Shelf): Dose[] {
  const facts = factsOf(record, 'substance');
  const { shares, totalMl } = liquidOf(record, shelf);
  const byName = new Map<string, { agent: Agent | undefined; parts: DosePart[] }>();
  for (const fact of facts) {
    const { agent, disputed, ...taken } = takenFrom(fact, shelf, moment?.day, totalMl);
    const share = shares.get(fact);
    const ppm = share ? mixed(taken.held, share, record) : taken.held;
    const byStock = share && disputed ? mixed(disputed, share, record) : disputed;
    const isPoured = share !== undefined;
    const adds = isPoured || (taken.isPowder && fact.mass !== undefined);
    const part = { ...taken, isPoured, adds, ppm, byStock };
    // What no agent or stock is called stands for itself.
    const name = agent?.word ?? `? ${fact.name.text}`;
    const same = byName.get(name);
    if (same) same.parts.push(part);
    else byName.set(name, { agent, parts: [part] });
  }
  return Array.from(byName.values(), doseOf);
}

/** Whether it is the lowest rung of a ladder, written as 0 ppm: seed in it lies in plain water. */
export function isZero({ ppm }: Dose): boolean {
  return ppm.ok && ppm.value.equals(0);
}

export interface Liquid extends Omit<Dish, 'shares'> {
  /** The facts that are poured in, each with its share of the whole. */
  readonly shares: ReadonlyMap<SubstanceFact, Outcome<Exact>>;
}

/** What a `soak` or an `apply` pours together: its stocks, and all that stands there with a volume. */
export function liquidOf(record: JournalRecord, shelf: Shelf): Liquid {
  const poured = factsOf(record, 'substance').flatMap(fact => {
    const pour = pourOf(fact, shelf);
    return pour ? [{ fact, ...pour }] : [];
  });
  const volume = factOf(record, 'volume');
  const written = volume && volumeInMl(volume.value);
  const [only] = poured;
  // A volume on drops is what was used in all: of the only stock there it is all that was taken.
  const isUsed = record.keyword === 'apply' && only && poured.length === 1 && !only.isWater;
  const { shares, ...dish } = dishOf(isUsed ? [{ ...only, ml: only.ml ?? written }] : poured, written);
  return { ...dish, shares: new Map(poured.map(({ fact }, n) => [fact, shares[n]!])) };
}

/** Undefined for an agent that is in the whole liquid. A name that nothing has may be a stock not written down. */
function pourOf({ name, volume, strength, mass, unmeasured }: SubstanceFact, shelf: Shelf): Pour | undefined {
  const agent = shelf.agents.get(name.text);
  const ml = volume && volumeInMl(volume.value);
  if (agent) return ml || agent.role === 'water' ? { ml, isWater: agent.role === 'water' } : undefined;
  if (!ml && (strength ?? mass ?? unmeasured)) return undefined;
  // Powder is strewn in, whatever volume a slip says of it.
  return shelf.solution(name.text)?.form === 'powder' ? undefined : { ml, isWater: false };
}

interface Taken extends Omit<DosePart, 'isPoured' | 'adds' | 'ppm' | 'byStock'> {
  readonly agent: Agent | undefined;
  /** What the stock holds, where what is written beside it says otherwise. */
  readonly disputed?: Outcome<Exact> | undefined;
}

function takenFrom(
  fact: SubstanceFact, shelf: Shelf, day: Day | undefined, totalMl: Exact | undefined,
): Taken {
  const agent = shelf.agents.get(fact.name.text);
  if (agent) {
    const held = saidOf(fact, agent) ?? notSaid;
    return { fact, stock: undefined, isPowder: false, agent, held, stale: undefined, byEye: false };
  }
  const stock = shelf.solution(fact.name.text);
  if (stock) {
    const past = day === undefined ? undefined : staleOn(stock, day);
    const stale = past && { ...past, on: day! };
    const isPowder = stock.form === 'powder';
    const halvings = halvedOrigin(stock, shelf)?.weighed?.halved ?? 0;
    const against = isPowder ? undefined : saidAgainst(fact, stock, halvings);
    return {
      fact, stock: stock.id, isPowder, agent: stock.agent, stale, byEye: halvings > 0,
      held: isPowder ? strewn(fact, stock, totalMl) : against ?? stock.ppm,
      disputed: against && stock.ppm,
    };
  }
  return {
    fact, stock: undefined, isPowder: false, agent: undefined, stale: undefined, byEye: false,
    held: refused('unknown-stock', `“${fact.name.text}” is neither an agent nor a stock.`),
  };
}

/** A strength, a mass or `unmeasured` that does not go with what the stock beside it holds: which is true? */
function saidAgainst({ name, strength, mass, unmeasured }: SubstanceFact, { agent, ppm }: Solution, halvings: number) {
  if (!agent || !(strength ?? mass ?? unmeasured)) return undefined;
  const written = strength && strengthInPpm(strength.value, agent);
  if (written?.ok && ppm.ok && mayBeAsStrong(written.value, ppm.value, halvings)) return undefined;
  return refused('beside-stock', `What is written beside ${name.text} is not what ${name.text} holds, so the strength is unclear.`);
}

/** More dilutions of dilutions than this nobody makes. */
const LONGEST_CHAIN = 100;

/** The stock from powder that a solution was diluted from, itself where it is one, if that powder was halved by eye. */
export function halvedOrigin(stock: Solution, { solution }: Pick<Shelf, 'solution'>): Solution | undefined {
  let made: Solution | undefined = stock;
  for (let n = 0; made?.from !== undefined && !made.circular && n < LONGEST_CHAIN; n++) made = solution(made.from);
  return made?.weighed?.halved === undefined ? undefined : made;
}

function saidOf({ unmeasured, strength }: SubstanceFact, agent: Agent): Outcome<Exact> | undefined {
  return unmeasured ? strengthInPpm('unmeasured', agent) : strength && strengthInPpm(strength.value, agent);
}

/** Powder out of a packet: its strength as written, or by its mass and purity in all of the liquid. */
function strewn(fact: SubstanceFact, packet: Solution, totalMl: Exact | undefined): Outcome<Exact> {
  const { agent } = packet;
  if (!agent) return notSaid;
  const said = saidOf(fact, agent);
  if (said) return said;
  if (!fact.mass || fact.halved || !totalMl) return notSaid;
  const content = contentOfPacket(packet);
  return content.ok ? known(strengthOf(massInMg(fact.mass.value).mul(content.value.share), totalMl)) : content;
}

/** On a line with a mistake a volume may be missing. */
function mixed(held: Outcome<Exact>, share: Outcome<Exact>, { broken }: JournalRecord): Outcome<Exact> {
  if (!held.ok) return held;
  if (broken) return unread;
  return share.ok ? known(held.value.mul(share.value)) : share;
}

function doseOf({ agent, parts }: { agent: Agent | undefined; parts: DosePart[] }): Dose {
  const [{ fact, held, isPoured, stock }, ...others] = parts as [DosePart, ...DosePart[]];
  const stocks = new Set(parts.map(({ stock }) => stock));
  const ppm = inAll(parts);
  const isWhole = !isPoured || (ppm.ok && held.ok && held.value.equals(ppm.value));
  return {
    parts, fact, agent, ppm,
    stock: stocks.size === 1 ? stock : undefined,
    written: others.length === 0 && isWhole && stock === undefined ? fact.strength?.value : undefined,
    unmeasured: parts.some(part => part.fact.unmeasured !== undefined),
    byEye: parts.some(part => part.byEye),
    stale: parts.flatMap(part => part.stale ?? []).sort((a, b) => a.made - b.made)[0],
  };
}

/**
 * What is poured in adds up, and so does weighed powder. A strength that is written for the whole liquid says how
 * much is in it: beside these it must be their sum. Of two packets it is not known whether each was to bring its own.
 */
function inAll(parts: readonly DosePart[]): Outcome<Exact> {
  const [first, ...others] = parts;
  if (others.length === 0) return first!.ppm;
  let added: Exact | undefined;
  let whole: Exact | undefined;
  let packets = 0;
  for (const { adds, isPowder, ppm } of parts) {
    if (!ppm.ok) return ppm;
    if (adds) {
      added = added?.add(ppm.value) ?? ppm.value;
      continue;
    }
    if (isPowder) packets++;
    if (packets > 1 || (whole && !whole.equals(ppm.value))) return saidTwice;
    whole = ppm.value;
  }
  if (added && whole && !added.equals(whole)) return saidTwice;
  return known((whole ?? added)!);
}

const saidTwice = refused('said-twice', 'Its record gives two strengths that do not agree.');
