/** What to do with seed of a plant, by what is known of it. */
import type { Guide } from '../journal/guides.ts';
import type { Journal } from '../journal/journal.ts';
import type { Day } from '../model/day.ts';
import type { ReadyRecord } from '../trials/ready.ts';
import { THRESHOLDS } from '../measures/thresholds.ts';
import { substanceOf } from '../solutions/comparison.ts';
import { allOf, hadItsTime, type UntreatedShare } from '../trials/untreated-shares.ts';
import { isRefused, isScarified, offerOf, offersOf, type Offer } from './offer.ts';
import { mostPromising, mostSure } from './order.ts';
import { hasPaid, isStillOpen, type Tried, type TriedAgent } from './tried.ts';

/** What a choice is made from. */
export interface Known {
  readonly journal: Journal;
  readonly today: Day;
  readonly plant: string | undefined;
  readonly species: readonly TriedAgent[];
  /** Other forms of its species: subspecies, cultivars, or the species itself. */
  readonly forms: readonly TriedAgent[];
  /** The other species of its genus. */
  readonly genus: readonly TriedAgent[];
  /** Untreated seed of the plant that germinated well and soon. */
  readonly ready: ReadyRecord | undefined;
  readonly untreated: readonly UntreatedShare[];
  readonly guides: readonly Guide[];
}

/** What speaks for a trial. */
export type WhyTry = 'own records' | 'unmeasured' | 'guide' | 'form' | 'genus';

export type Choice =
  /** It paid before. */
  | { readonly kind: 'treat'; readonly offer: Offer; readonly tried: Tried }
  /** Nobody can tell yet. */
  | { readonly kind: 'try'; readonly offer: Offer; readonly because: WhyTry }
  | { readonly kind: 'leave'; readonly because: 'ready' | 'harmful' | 'no benefit'; readonly tried: Tried | undefined }
  /** The guides name no agent. */
  | { readonly kind: 'leave'; readonly because: 'guide'; readonly guide: Guide }
  | { readonly kind: 'unknown' };

/** What is to be given; undefined where nothing is. */
export function offerIn(choice: Choice): Offer | undefined {
  return 'offer' in choice ? choice.offer : undefined;
}

/**
 * The first of these that holds: a dose that paid, by itself and beside all else that was tried; untreated seed that
 * needs nothing; a dose that the records cannot judge yet; an agent of the guides that was not tried yet, unless most
 * seed germinates without; harm or no benefit of all that was tried; a dose that paid on another form of the species;
 * what the guides say; a dose that paid on another species of the genus. Common practice, no source.
 */
export function choose(known: Known): Choice {
  const { journal, today, plant, species, forms, genus, ready, untreated, guides } = known;
  const attempt = (tried: Tried, because: WhyTry): Choice => (
    { kind: 'try', offer: offerOf(tried, plant, journal), because });
  // A dose above the limit, or more than dissolves, is named where no other is left.
  const withinLimit = (all: readonly Tried[]): readonly Tried[] => {
    const within = all.filter(tried => !isRefused(offerOf(tried, plant, journal)));
    return within.length > 0 ? within : all;
  };
  const doses = species.flatMap(agent => agent.doses);
  const paid = species.flatMap(paidIn);
  const measured = mostSure(withinLimit(paid.filter(({ ppm }) => ppm !== undefined)));
  if (measured) return { kind: 'treat', offer: offerOf(measured, plant, journal), tried: measured };
  // Another pinch is another dose.
  const pinch = mostSure(paid);
  if (pinch) return attempt(pinch, 'unmeasured');
  const compared = doses.find(({ verdict }) => verdict === 'germinates well without it');
  const prepared = compared?.treated.every(isScarified) && !ready
    ? untreated.filter(({ group }) => isScarified(group)) : untreated;
  if ((compared || ready) && germinatesWell(prepared, today) !== false) return { kind: 'leave', because: 'ready', tried: compared };
  const open = mostPromising(withinLimit(species.flatMap(openIn)));
  if (open) return attempt(open, 'own records');
  const offers = guides.flatMap(guide => offersOf(guide, plant, journal));
  const other = germinatesWell(untreated, today) ? undefined
    : offers.find(offer => isGiveable(offer) && !doses.some(dose => isOneSubstance(dose, offer)));
  if (doses.length > 0) return other ? { kind: 'try', offer: other, because: 'guide' } : leaving(doses);
  const form = mostSure(forms.flatMap(paidIn));
  if (form) return attempt(form, 'form');
  const harmful = forms.flatMap(agent => agent.doses).filter(({ verdict }) => verdict === 'harmful');
  const harmless = offers.filter(offer => !harmful.some(dose => isOneSubstance(dose, offer)));
  const offer = harmless.find(isGiveable) ?? harmless.find(({ text }) => text !== undefined) ?? harmless[0];
  if (offer) return { kind: 'try', offer, because: 'guide' };
  if (harmful.length > 0) return leaving(harmful);
  const kin = mostSure(genus.flatMap(paidIn));
  if (kin) return attempt(kin, 'genus');
  const [guide] = guides;
  return guide ? { kind: 'leave', because: 'guide', guide } : { kind: 'unknown' };
}

/** Of several doses and agents none counts that is not shown beside the others: one would look good by chance. */
function paidIn({ doses, together, isSure }: TriedAgent): Tried[] {
  if (!isSure || (together && together.verdict !== 'worth repeating')) return [];
  return doses.filter(hasPaid);
}

/** Doses that may be tried again: those that look good by themselves, too, where all together show nothing yet. */
function openIn({ doses, together }: TriedAgent): Tried[] {
  if (together?.verdict === 'harmful') return [];
  return doses.filter(dose => (
    isStillOpen(dose) || dose.verdict === 'worth repeating' || dose.verdict === 'germinates well without it'));
}

/**
 * One lot that did well does not speak for a plant whose other lots do badly: all of them together have to do well.
 * Undefined where none of it was counted, or all that was had no time yet or waits in the cold.
 */
function germinatesWell(untreated: readonly UntreatedShare[], today: Day): boolean | undefined {
  const { x, n } = allOf(untreated.filter(share => hadItsTime(share, today)));
  return n === 0 ? undefined : x / n >= THRESHOLDS.readyShare.value;
}

/** A dose of known strength, not above the grower's limit, and not more than dissolves. */
function isGiveable(offer: Offer): boolean {
  return offer.ppm !== undefined && !isRefused(offer);
}

function isOneSubstance(a: Pick<Tried, 'agent'>, b: Pick<Offer, 'agent'>): boolean {
  return substanceOf(a.agent) === substanceOf(b.agent);
}

function leaving(doses: readonly Tried[]): Choice {
  const harmful = doses.find(({ verdict }) => verdict === 'harmful');
  return harmful
    ? { kind: 'leave', because: 'harmful', tried: harmful }
    : { kind: 'leave', because: 'no benefit', tried: doses.find(({ hasNoSign }) => hasNoSign) };
}
