/**
 * What to do with seed that nothing was done to: whether to treat it and with what, how to divide it, what that needs.
 * From the records and the guides of the journal alone; where they say nothing, nothing is said.
 */
import { inJournalOrder } from '../journal/journal-file.ts';
import type { Guide } from '../journal/guides.ts';
import type { Journal } from '../journal/journal.ts';
import type { Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { genusIn, plantKey } from '../model/plant.ts';
import { readyBefore, type ReadyRecord } from '../trials/ready.ts';
import { untreatedShares, type UntreatedShare } from '../trials/untreated-shares.ts';
import { choose, type Choice } from './choice.ts';
import { divisionFor, type Division } from './division.ts';
import { ageOn, untouchedIn, type Age, type Untouched } from './seed.ts';
import { suppliesFor, type Supplies } from './supplies.ts';
import { triedOn, type TriedAgent } from './tried.ts';

export interface Advice {
  readonly lot: Lot;
  readonly now: Moment;
  /** Undefined where there is no seed left to decide about. */
  readonly seed: Untouched | undefined;
  readonly age: Age | undefined;
  /** What the records say of the plant, this lot included, and of the other species of its genus. */
  readonly species: readonly TriedAgent[];
  readonly genus: readonly TriedAgent[];
  readonly untreated: readonly UntreatedShare[];
  /** Untreated seed of the plant that came up well and soon, the latest record of it. */
  readonly ready: ReadyRecord | undefined;
  /** Those that name the plant most fully first. */
  readonly guides: readonly Guide[];
  readonly choice: Choice;
  readonly division: Division | undefined;
  readonly supplies: Supplies | undefined;
}

export function adviceFor(lot: Lot, journal: Journal, now: Moment): Advice {
  const { plant } = lot;
  const { species: ownLots, genus: kinLots } = plant === undefined
    ? { species: [lot], genus: [] } : kinOf(plant, journal);
  const species = triedOn(plant ?? lot.id, ownLots);
  const genus = plant === undefined ? [] : triedOn(genusIn(plant), kinLots);
  const ready = readyBefore(ownLots, now.day + 1);
  const guides = journal.guides.of(plant);
  const untreated = untreatedShares(ownLots);
  const seed = untouchedIn(lot, now);
  const choice = choose({ journal, plant, species, genus, ready, guides });
  const offer = choice.kind === 'treat' || choice.kind === 'try' ? choice.offer : undefined;
  return {
    lot, now, seed, species, genus, untreated, ready, guides, choice, age: ageOn(lot.collected, now.day),
    division: seed && divisionFor(choice, seed, untreated),
    supplies: offer && suppliesFor(offer, journal, now),
  };
}

/** The lots of a plant, and those of the other species of its genus, in the order of the journal. */
function kinOf(plant: string, journal: Journal): { species: Lot[]; genus: Lot[] } {
  const [key, genusKey] = [plantKey(plant), plantKey(genusIn(plant))];
  const kin = [...journal.lots()].filter(lot => lot.plant !== undefined && plantKey(genusIn(lot.plant)) === genusKey);
  const byLine = new Map(kin.map(lot => [lot.definition.line, lot]));
  const ordered = inJournalOrder(byLine.keys()).map(line => byLine.get(line)!);
  const isSpecies = (lot: Lot) => plantKey(lot.plant!) === key;
  return { species: ordered.filter(isSpecies), genus: ordered.filter(lot => !isSpecies(lot)) };
}
