/** What to do with a packet of seed, in words. */
import type { Advice } from '../../advice/advice.ts';
import type { Choice } from '../../advice/choice.ts';
import type { Division } from '../../advice/division.ts';
import type { Offer } from '../../advice/offer.ts';
import type { Age, Untouched } from '../../advice/seed.ts';
import type { Tried } from '../../advice/tried.ts';
import type { JournalLine } from '../../journal/journal-file.ts';
import type { Lot } from '../../journal/life.ts';
import { seedsText } from '../symbols.ts';
import { guideStepsText } from './guides.ts';
import { listed } from '../../syntax/nearest.ts';

/** Example: 'GA3 500 ppm', 'KNO3 0.2 %', 'GA3 of unknown strength' */
export function doseName({ agent, text }: Pick<Tried, 'agent' | 'text'>): string {
  return text ?? `${agent.word} of unknown strength`;
}

/** Example: 'GEN-24 (winter.germ:12)' */
export function recordName(id: string, { store, number }: JournalLine): string {
  return `${id} (${store.name}:${number + 1})`;
}

/** Example: 'From GEN-24 (winter.germ:12) and GEN-25 (winter.germ:80).' */
export function lotsText(lots: readonly Pick<Lot, 'id' | 'definition'>[]): string {
  return `From ${listed(lots.map(({ id, definition }) => recordName(id, definition.line)), 'and')}.`;
}

/** Whole years. Example: '2 years old', 'less than 1 year old', '1 to 2 years old' */
export function ageText({ least, most }: Age): string {
  if (most === 0) return 'less than 1 year old';
  if (least === most) return `${most === 1 ? '1 year' : `${most} years`} old`;
  return least === 0 ? `up to ${most === 1 ? '1 year' : `${most} years`} old` : `${least} to ${most} years old`;
}

/** What there is to decide about, in one sentence. */
export function seedText({ seed, age, lot }: Advice): string {
  const broken = [...lot.batches.values()].filter(({ unread }) => unread).map(({ path }) => path);
  if (!seed && broken.length > 0) return `A record of ${listed(broken, 'and')} has an error, so what is left is unknown. Fix it first.`;
  if (!seed) return `All the seed of ${lot.id} was begun with or is gone, so there is nothing to decide.`;
  const { isRest, batches } = seed;
  const parts = batches.length > 1 ? `, in ${listed(batches.map(({ path }) => path), 'and')}` : '';
  const rest = isRest ? `${numberOf(seed)} that nothing was done to${parts}` : `${numberOf(seed)}${parts}; nothing was done to them yet`;
  return `${rest.charAt(0).toUpperCase()}${rest.slice(1)}. ${age ? `The seed is ${ageText(age)}.` : 'The journal does not say how old the seed is.'}`;
}

function numberOf({ seeds }: Untouched): string {
  if (!seeds) return 'seeds of unknown number';
  const { least, most } = seeds;
  return least === most ? seedsText(most) : `${least} to ${most} seeds`;
}

/** The answer, in a sentence or two. */
export function answerText({ choice, division, lot }: Advice): string {
  switch (choice.kind) {
    case 'treat':
      return `Treat most of it: ${offerText(choice.offer)}. It paid in ${lotsNumber(choice.tried)}. ${sidesText(division, 'treat')}`.trim();
    case 'try': {
      const offer = `${offerText(choice.offer)}: ${becauseText(choice, lot.plant)}.`;
      if (division?.isTooFew) return `Too few for a trial: treat half, keep half. The treatment would be ${offer}`;
      return `Try ${offer} ${sidesText(division, 'try')}`.trim();
    }
    case 'leave': return `Leave it untreated: ${leaveText(choice, lot.plant)}.`;
    case 'unknown': return `Neither your records nor your guides say anything of a treatment for ${lot.plant ?? lot.id}, so there is no advice.`;
  }
}

/** Example: '2 lots so far' where seed may still germinate and change it */
function lotsNumber({ lots, isOpen }: Tried): string {
  return `${lots.length === 1 ? 'one lot' : `${lots.length} lots`}${isOpen ? ' so far' : ''}`;
}

function offerText({ text, agent, soak }: Offer): string {
  return `${text ?? `${agent.word} of unknown strength`}, ${soak}`;
}

function becauseText({ because }: Choice & { readonly kind: 'try' }, plant: string | undefined): string {
  switch (because) {
    case 'own records': return 'your records cannot tell yet whether it pays';
    case 'guide': return `your guide gives it, and you have no comparison of your own for ${plant ?? 'this plant'}`;
    case 'genus': return `it paid on another species of the genus, and you have no comparison of your own for ${plant ?? 'this plant'}`;
  }
}

function leaveText(choice: Choice & { readonly kind: 'leave' }, plant: string | undefined): string {
  const name = plant ?? 'this plant';
  switch (choice.because) {
    case 'ready': return `untreated seed of ${name} germinated well and soon in your own records`;
    case 'harmful': return `${doseName(choice.tried!)} harmed seed of ${name} in your own records`;
    case 'no benefit': return `${choice.tried ? doseName(choice.tried) : 'what you tried'} showed no sign of a benefit on ${name} in your own records`;
    case 'guide': return `your guides name no soak (${guideStepsText(choice.guide.record)}), and you have no comparison of your own`;
  }
}

/** Example: 'Treat 30 seeds and leave 10 untreated.' */
function sidesText(division: Division | undefined, kind: 'treat' | 'try'): string {
  if (!division) return '';
  const { sides, parts, isEstimated } = division;
  if (parts) {
    const names = (side: readonly { readonly path: string }[]) => listed(side.map(({ path }) => path), 'and');
    return `Treat ${names(parts.treated)} and leave ${names(parts.untreated)} untreated.`;
  }
  if (!sides || isEstimated) {
    return kind === 'treat' ? 'Treat about three quarters of the seed and leave the rest untreated.' : 'Treat half, keep half.';
  }
  return `Treat ${seedsText(sides.treated)} and leave ${sides.untreated} untreated.`;
}
