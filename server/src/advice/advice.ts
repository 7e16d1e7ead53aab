/**
 * What to do with seed that nothing was done to: whether to treat it and with what, how to divide it, what that needs.
 * From the records and the guides of the journal alone; where they say nothing, nothing is said.
 */
import type { Guide } from '../journal/guides.ts';
import type { Journal } from '../journal/journal.ts';
import type { Batch, Lot } from '../journal/life.ts';
import { lotsInOrder } from '../journal/lots.ts';
import type { Moment } from '../journal/moment.ts';
import type { Day } from '../model/day.ts';
import { genusIn, plantKey, speciesIn } from '../model/plant.ts';
import { comparedPpm, isStronger, substanceOf } from '../solutions/comparison.ts';
import { exact } from '../solutions/amounts.ts';
import type { LeftOut } from '../trials/groups.ts';
import { isDropsOnSeed } from '../trials/drops-on-seed.ts';
import { leftOutByError, notCompared, trialOf, type Contest } from '../trials/lot-trial.ts';
import { readyBefore, readyPrepared, type ReadyRecord } from '../trials/ready.ts';
import { isActiveSoak, onlyDose } from '../trials/treatment.ts';
import { untreatedShares, type UntreatedShare } from '../trials/untreated-shares.ts';
import { choose, offerIn, type Choice } from './choice.ts';
import { divisionFor, type Division } from './division.ts';
import { offersOf, type Offer } from './offer.ts';
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
  /** Of other forms of its species, such as cultivars, or of the species itself. */
  readonly forms: readonly TriedAgent[];
  readonly untreated: readonly UntreatedShare[];
  /** Batches of the plant that were sown or counted but that nothing rests on, because of an error in the records. */
  readonly leftOut: readonly LeftOut[];
  /** Comparisons of the plant that nothing rests on, each for a reason of its own. */
  readonly aside: readonly SetAside[];
  /** Treated batches of the plant in no comparison, though no record of theirs has an error. */
  readonly uncompared: readonly LeftOut[];
  /** Untreated seed of the plant that came up well and soon, the latest record of it. */
  readonly ready: ReadyRecord | undefined;
  /** The same of seed that had been chilled, warmed or scarified, or was the rest of a sowing; the latest first. */
  readonly readyPrepared: readonly ReadyRecord[];
  /** Those that name the plant most fully first. */
  readonly guides: readonly Guide[];
  readonly choice: Choice;
  /** What is advised rests on own records and is stronger than all that the guides say of that agent. */
  readonly isBeyondGuides: boolean;
  readonly division: Division | undefined;
  readonly supplies: Supplies | undefined;
}

export function adviceFor(lot: Lot, journal: Journal, now: Moment): Advice {
  const { plant } = lot;
  const { species: ownLots, forms: formLots, genus: kinLots } = plant === undefined
    ? { species: [lot], forms: [], genus: [] } : kinOf(plant, journal);
  const species = triedOn(plant ?? lot.id, ownLots, now.day);
  const genus = plant === undefined ? [] : triedOn(genusIn(plant), kinLots, now.day);
  const forms = plant === undefined ? [] : triedOn(speciesIn(plant), formLots, now.day);
  const ready = readyBefore(ownLots, now.day + 1);
  const guides = journal.guides.of(plant);
  const untreated = untreatedShares(ownLots.map(each => trialOf(each, now.day)));
  const seed = untouchedIn(lot, now);
  const choice = choose({ journal, today: now.day, plant, species, forms, genus, ready, untreated, guides });
  const offer = offerIn(choice);
  return {
    lot, now, seed, species, genus, forms, untreated, ready, guides, choice,
    readyPrepared: readyPrepared(ownLots, now.day + 1), age: ageOn(lot.collected, now.day),
    leftOut: ownLots.flatMap(each => leftOutByError(each, now.day)),
    aside: ownLots.flatMap(each => setAsideIn(each, now.day)),
    uncompared: ownLots.flatMap(each => uncomparedIn(each, now.day)),
    isBeyondGuides: offer?.tried !== undefined
      && isBeyond(offer, guides.flatMap(guide => offersOf(guide, plant, journal))),
    division: seed && divisionFor(choice, seed, untreated),
    supplies: offer && suppliesFor(offer, journal, now),
  };
}

/** A comparison that nothing rests on, and the lot that it was made in. */
export interface SetAside {
  readonly lot: Lot;
  readonly contest: Contest;
  readonly because: 'more differs' | 'no untreated seed' | 'not judged yet' | 'several agents';
}

function setAsideIn(lot: Lot, today: Day): SetAside[] {
  const { contests, estimated } = trialOf(lot, today);
  const hasErrors = leftOutByError(lot, today).length > 0;
  return [...contests, ...estimated].flatMap(contest => {
    const because = whyAside(contest);
    // Untreated seed that an error leaves out is told by that.
    const isTold = because === 'no untreated seed' && hasErrors;
    return because && !isTold ? [{ lot, contest, because }] : [];
  });
}

function whyAside({ treated, untreated, alsoDiffers, judging }: Contest): SetAside['because'] | undefined {
  if (!untreated) return 'no untreated seed';
  if (alsoDiffers.length > 0) return 'more differs';
  if (judging?.state === 'waiting') return 'not judged yet';
  return onlyDose(treated.treatment) ? undefined : 'several agents';
}

function uncomparedIn(lot: Lot, today: Day): LeftOut[] {
  const errors = new Set(leftOutByError(lot, today).map(({ batch }) => batch));
  return notCompared(trialOf(lot, today)).filter(({ batch }) => !errors.has(batch) && isTreated(batch));
}

function isTreated(batch: Batch): boolean {
  const life = [...batch.inherited, ...batch.events];
  return batch.soaks.some(isActiveSoak) || life.some(event => isDropsOnSeed(batch, event));
}

function isBeyond({ agent, ppm }: Offer, guided: readonly Offer[]): boolean {
  const known = guided.filter(each => each.ppm !== undefined && substanceOf(each.agent) === substanceOf(agent));
  if (ppm === undefined || known.length === 0) return false;
  const mine = comparedPpm(exact(ppm), agent);
  return known.every(each => (
    isStronger(mine, comparedPpm(exact(each.ppm!), each.agent), [undefined, each.unit])));
}

interface Kin {
  readonly species: Lot[];
  readonly forms: Lot[];
  readonly genus: Lot[];
}

/** The lots of a plant, of other forms of its species, and of other species of its genus, in the journal's order. */
function kinOf(plant: string, journal: Journal): Kin {
  const [key, genusKey] = [plantKey(plant), plantKey(genusIn(plant))];
  const kin = [...journal.lots()].filter(lot => lot.plant !== undefined && plantKey(genusIn(lot.plant)) === genusKey);
  const ordered = lotsInOrder(kin);
  const isSame = (lot: Lot) => plantKey(lot.plant!) === key;
  const isForm = (lot: Lot) => !isSame(lot) && plantKey(speciesIn(lot.plant!)) === plantKey(speciesIn(plant));
  return {
    species: ordered.filter(isSame), forms: ordered.filter(isForm),
    genus: ordered.filter(lot => !isSame(lot) && !isForm(lot)),
  };
}
