/** What to do with seed of a plant, by what is known of it. */
import type { Guide } from '../journal/guides.ts';
import type { Journal } from '../journal/journal.ts';
import type { ReadyRecord } from '../trials/ready.ts';
import { offerOf, offersOf, type Offer } from './offer.ts';
import { isStillOpen, type Tried, type TriedAgent } from './tried.ts';

/** What a choice is made from. */
export interface Known {
  readonly journal: Journal;
  readonly plant: string | undefined;
  readonly species: readonly TriedAgent[];
  /** The other species of its genus. */
  readonly genus: readonly TriedAgent[];
  /** Untreated seed of the plant that germinated well and soon. */
  readonly ready: ReadyRecord | undefined;
  readonly guides: readonly Guide[];
}

export type Choice =
  /** It paid before. */
  | { readonly kind: 'treat'; readonly offer: Offer; readonly tried: Tried }
  /** Nobody can tell yet. `because`: what speaks for a trial. */
  | { readonly kind: 'try'; readonly offer: Offer; readonly because: 'own records' | 'guide' | 'genus' }
  | { readonly kind: 'leave'; readonly because: 'ready' | 'harmful' | 'no benefit'; readonly tried: Tried | undefined }
  /** The guides name no agent. */
  | { readonly kind: 'leave'; readonly because: 'guide'; readonly guide: Guide }
  | { readonly kind: 'unknown' };

/**
 * The first of these that holds: a dose that paid, by itself and with the other doses of its agent; untreated seed that
 * needs nothing; harm or no benefit of all that was tried; a dose that the records cannot judge yet; what the guides
 * say; a dose that paid on another species of the genus. Common practice, no source.
 */
export function choose({ journal, plant, species, genus, ready, guides }: Known): Choice {
  const doses = species.flatMap(agent => agent.doses);
  const paid = mostSure(species.flatMap(paidIn));
  if (paid) return { kind: 'treat', offer: offerOf(paid, plant, journal), tried: paid };
  const compared = doses.find(({ verdict }) => verdict === 'germinates well without it');
  if (compared || ready) return { kind: 'leave', because: 'ready', tried: compared };
  const open = mostPromising(species.flatMap(openIn));
  if (open) return { kind: 'try', offer: offerOf(open, plant, journal), because: 'own records' };
  if (doses.length > 0) return leaving(doses);
  const offers = guides.flatMap(guide => offersOf(guide, plant, journal));
  const [first] = offers;
  if (first) return { kind: 'try', offer: first, because: 'guide' };
  const kin = mostSure(genus.flatMap(paidIn));
  if (kin) return { kind: 'try', offer: offerOf(kin, plant, journal), because: 'genus' };
  const [guide] = guides;
  return guide ? { kind: 'leave', because: 'guide', guide } : { kind: 'unknown' };
}

/** Of several doses over several lots none counts that they do not show together: one would look good by chance. */
function paidIn({ doses, together }: TriedAgent): Tried[] {
  if (together && together.verdict !== 'worth repeating') return [];
  return doses.filter(({ verdict }) => verdict === 'worth repeating');
}

/** Doses that may be tried again: those that look good by themselves, too, where all together show nothing yet. */
function openIn({ doses, together }: TriedAgent): Tried[] {
  if (together?.verdict === 'harmful') return [];
  return doses.filter(dose => isStillOpen(dose) || dose.verdict === 'worth repeating');
}

function leaving(doses: readonly Tried[]): Choice {
  const harmful = doses.find(({ verdict }) => verdict === 'harmful');
  return harmful
    ? { kind: 'leave', because: 'harmful', tried: harmful }
    : { kind: 'leave', because: 'no benefit', tried: doses.find(({ hasNoSign }) => hasNoSign) };
}

/** The one that most lots show; of several the one whose interval is farthest from no difference, then the weakest. */
function mostSure(all: readonly Tried[]): Tried | undefined {
  return all.toSorted((a, b) => b.lots.length - a.lots.length
    || (b.difference?.low ?? -1) - (a.difference?.low ?? -1) || weakness(a) - weakness(b))[0];
}

/** The one with the greatest difference so far, then the weakest. */
function mostPromising(all: readonly Tried[]): Tried | undefined {
  const gain = ({ difference }: Tried) => difference?.value ?? -1;
  return all.toSorted((a, b) => gain(b) - gain(a) || weakness(a) - weakness(b))[0];
}

function weakness({ ppm }: Tried): number {
  return ppm ?? Infinity;
}
