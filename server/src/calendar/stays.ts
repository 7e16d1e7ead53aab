/** Where each batch of a lot lay, and from when to when: `at` facts and `move` read in the order of time. */
import { isGivenOut } from '../journal/given-out.ts';
import { noTotals, type Batch, type DatedEntry, type Entry, type Lot, type Soak, type SowEvent } from '../journal/life.ts';
import type { JournalLine } from '../journal/journal-file.ts';
import { isBefore, type Moment } from '../journal/moment.ts';
import { meaningOf } from '../model/events.ts';
import { factOf, type TextFact } from '../model/record.ts';
import { placeKey } from './place-text.ts';
import { areSeedlingsGone, isAllPotted } from './potted.ts';
import { lastSoak } from './soaks.ts';
import type { Standing } from './standing.ts';

export interface Stay {
  /** The batch or the stock. */
  readonly id: string;
  readonly plant: string | undefined;
  readonly batch: Batch | undefined;
  /** As written. */
  readonly place: string;
  /** Undefined: since before anything is known. */
  readonly from: Moment | undefined;
  /** Undefined: to this day. A moment to come where the end is planned. */
  readonly to: Moment | undefined;
  /** `to` is the planned end of a soak, and no record shows that the seed came out. */
  readonly toIsPlanned: boolean;
  /** The record that put it there; that of the parent where the batch was split off there. */
  readonly entry: Entry;
  readonly fact: TextFact;
  /** The soak that it lies there in. */
  readonly soak: Soak | undefined;
  /** What of the batch lies there: all of it, what was sown, what a sowing left over, or seedlings pricked out. */
  readonly part: 'all' | 'sown' | 'rest' | 'potted';
}

type Open = { -readonly [Key in keyof Stay]: Stay[Key] };

/**
 * The stays of all batches of a lot. The rules:
 * - `sow`, `chill`, `warm` and `move` with `at` end the stay before; without `at` they change nothing, but seed
 *   that is sown no longer lies where its packet does.
 * - `pot` with `at` puts seedlings there. The seed that was not potted stays where it was, until nothing is left of it.
 *   A stage or a soak is about that seed; a `move` takes both along.
 * - A sowing of fewer seeds than there are leaves the rest where it lay; a second sowing lies beside the first. Later
 *   records are about what was sown.
 * - A soak with `at` ends the stay before, and itself ends with the soak: where the seed lies after it is not known
 *   until a record says so.
 * - A batch that is split off begins where its parent lies. A batch that is given out or closed lies nowhere.
 */
export function staysOf(lot: Lot): readonly Stay[] {
  const kept = known.get(lot);
  if (kept) return kept;
  const stays = readStays(lot);
  known.set(lot, stays);
  return stays;
}

/** A lot is never changed but read anew, and its stays are asked for by the due list, the places and the checks. */
const known = new WeakMap<Lot, readonly Stay[]>();

function readStays(lot: Lot): Stay[] {
  const all: Open[] = [];
  const begun = new Map<Batch, Open[]>();
  // Each batch comes before those that were split off from it.
  for (const batch of lot.batches.values()) follow(lot, batch, begun, all);
  return all.filter(({ from, to }) => !from || !to || isBefore(from, to));
}

function follow(lot: Lot, batch: Batch, begun: Map<Batch, Open[]>, all: Open[]): void {
  const bench = new Bench(lot, batch, all);
  for (const { entry, from } of begun.get(batch) ?? []) bench.put(entry, from, 'all');
  if (!batch.parent) bench.put(lot.definition, lot.definition.moment, 'all');
  const last = batch.events.findLast(({ type }) => type === 'split');
  for (const [n, event] of batch.events.entries()) {
    const { entry, entry: { moment } } = event;
    // What is written of a closed batch is a slip, and a problem of its own.
    if (event.closedBy) continue;
    const { place } = meaningOf(event);
    switch (place) {
      case 'soak': bench.soak(entry); break;
      case 'sowing': if (event.type === 'sow') bench.sow(event); break;
      case 'stage': bench.stage(entry); break;
      case 'move': bench.move(entry); break;
      case 'pot': bench.pot(entry); break;
      case 'split':
        for (const child of batch.parts.get(entry.record) ?? []) {
          begun.set(child, bench.takenAlong(moment, child));
        }
        if (event === last && isGivenOut(batch)) bench.end(moment, isSeed);
        break;
      case 'end': bench.end(moment); break;
      case 'none': break;
      default: place satisfies never;
    }
    if (bench.isPotted()) bench.clear(moment, lifeUpTo(batch, n));
  }
}

/** The life of a batch up to one of its own events. */
function lifeUpTo(batch: Batch, n: number): Pick<Standing, 'batch' | 'past' | 'totals'> {
  const past = [...batch.inherited, ...batch.events.slice(0, n + 1)];
  const count = past.findLast(event => event.type === 'count' && event.batch === batch);
  return { batch, past, totals: count?.type === 'count' ? count.after : noTotals };
}

function isSeed({ part }: Open): boolean {
  return part !== 'potted';
}

/** The seed that the counts are about. */
function isCounted({ part }: Open): boolean {
  return part === 'all' || part === 'sown';
}

/** The stays of one batch while its life is read. */
class Bench {
  /** Those that nothing has ended yet. */
  #here: Open[] = [];
  #isSown: boolean;
  readonly #lot: Lot;
  readonly #batch: Batch;
  readonly #all: Open[];
  readonly #soaks: ReadonlyMap<JournalLine, Soak>;
  /** The soak that the seed was in last. */
  readonly #lastSoak: Soak | undefined;

  constructor(lot: Lot, batch: Batch, all: Open[]) {
    this.#lot = lot;
    this.#batch = batch;
    this.#all = all;
    this.#isSown = batch.inherited.some(({ type }) => type === 'sow');
    this.#soaks = new Map(batch.soaks.map(soak => [soak.entry.line, soak]));
    this.#lastSoak = lastSoak([...batch.inherited, ...batch.events]);
  }

  put(entry: Entry, from: Moment | undefined, part: Stay['part']): void {
    const fact = factOf(entry.record, 'at');
    // A second sowing into the same pot.
    if (!fact || this.#here.some(stay => (stay.part === 'potted') === (part === 'potted') && placeKey(stay.place) === placeKey(fact.value.text))) return;
    const soak = this.#soaks.get(entry.line);
    const stay: Open = {
      id: this.#batch.path, plant: this.#lot.plant, batch: this.#batch,
      place: fact.value.text, from, to: soak?.end,
      toIsPlanned: soak?.end !== undefined && this.#lastSoak?.entry.line === soak.entry.line,
      soak, entry, fact, part,
    };
    this.#here.push(stay);
    this.#all.push(stay);
  }

  end(to: Moment, which: (stay: Open) => boolean = () => true): void {
    for (const stay of this.#here.filter(which)) {
      stay.to = stay.to && isBefore(stay.to, to) ? stay.to : to;
      stay.toIsPlanned = false;
    }
    this.#here = this.#here.filter(stay => !which(stay));
  }

  soak(entry: DatedEntry): void {
    if (!factOf(entry.record, 'at')) return;
    this.end(entry.moment, isSeed);
    this.put(entry, entry.moment, 'all');
  }

  stage(entry: DatedEntry): void {
    if (!factOf(entry.record, 'at')) return;
    this.end(entry.moment, isCounted);
    this.put(entry, entry.moment, this.#leavesRest() ? 'sown' : 'all');
  }

  pot(entry: DatedEntry): void {
    this.put(entry, entry.moment, 'potted');
  }

  isPotted(): boolean {
    return this.#here.some(({ part }) => part === 'potted');
  }

  /** What lies where, once seedlings were potted, where nothing is left. */
  clear(moment: Moment, life: Pick<Standing, 'batch' | 'past' | 'totals'>): void {
    if (isAllPotted(life)) this.end(moment, isCounted);
    if (areSeedlingsGone(life)) this.end(moment, ({ part }) => part === 'potted');
  }

  #leavesRest(): boolean {
    return this.#here.some(({ part }) => part === 'rest');
  }

  move(entry: DatedEntry): void {
    if (!factOf(entry.record, 'at')) return;
    this.end(entry.moment, ({ part }) => part !== 'rest');
    this.put(entry, entry.moment, this.#leavesRest() ? 'sown' : 'all');
  }

  sow({ entry, asked, available, again }: SowEvent): void {
    const { moment } = entry;
    const placed = factOf(entry.record, 'at') !== undefined;
    const leavesRest = asked !== undefined && available !== undefined && asked < available;
    if (again) this.end(moment, isCounted);
    else if (this.#isSown && !leavesRest) this.end(moment, ({ part }) => part === 'rest');
    else if (!this.#isSown && leavesRest) for (const stay of this.#here.filter(isSeed)) stay.part = 'rest';
    else if (!this.#isSown) this.end(moment, stay => isSeed(stay) && (placed || stay.entry.record.keyword === 'lot'));
    this.put(entry, moment, this.#here.some(isSeed) ? 'sown' : 'all');
    this.#isSown = true;
  }

  /** What a batch that is split off begins with. */
  takenAlong(moment: Moment, child: Batch): Open[] {
    const dated = Number.isFinite(moment.day);
    const isRest = !child.sowing && this.#here.some(({ part }) => part === 'rest');
    return this.#here
      .filter(({ part, to }) => part !== 'potted' && (part === 'rest') === isRest && !(to && isBefore(to, moment)))
      .map(stay => ({ ...stay, from: dated ? moment : stay.from }));
  }
}
