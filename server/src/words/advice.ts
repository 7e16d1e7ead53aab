/** What to do with a packet of seed, in words. */
import { counted } from '../model/counted.ts';
import { limitText } from '../measures/verdict-words.ts';
import type { Advice } from '../advice/advice.ts';
import type { Choice } from '../advice/choice.ts';
import type { Division } from '../advice/division.ts';
import type { Offer } from '../advice/offer.ts';
import { agesBeside, type Age, type Untouched } from '../advice/seed.ts';
import { hasPaid, type Tried, type TriedAgent } from '../advice/tried.ts';
import { weakTreatedText } from '../advice/weak.ts';
import { stageName } from '../calendar/ask.ts';
import { rangeOf } from '../journal/estimates.ts';
import { fileName, type JournalLine } from '../journal/journal-file.ts';
import type { Lot } from '../journal/life.ts';
import { printQuantity } from '../model/quantity.ts';
import { plantKey } from '../model/plant.ts';
import { substanceOf } from '../solutions/comparison.ts';
import { preparationText } from './ready.ts';
import { rangedSeedsText, seedsText } from './seeds.ts';
import { guideStepsText } from './guides.ts';
import { dissolvedText } from './strengths.ts';
import { listed } from '../syntax/nearest.ts';
import type { ReadyRecord } from '../trials/ready.ts';
import { deathsIn } from '../trials/untreated-shares.ts';

/** Example: 'GA3 500 ppm', 'GA3 about 250 ppm', 'KNO3 0.2 %', 'GA3 of unknown strength' */
export function doseName({ agent, text, isAbout }: Pick<Tried, 'agent' | 'text'> & { readonly isAbout?: boolean }): string {
  if (text === undefined) return `${agent.word} of unknown strength`;
  return isAbout ? text.replace(`${agent.word} `, `${agent.word} about `) : text;
}

/** Example: 'GEN-24 (winter.germ:12)' */
export function recordName(id: string, { store, number }: JournalLine): string {
  return `${id} (${fileName(store.name)}:${number + 1})`;
}

/** Example: 'From GEN-24 (winter.germ:12) and GEN-25 (winter.germ:80).' */
export function lotsText(lots: readonly Pick<Lot, 'id' | 'definition'>[]): string {
  return `From ${listed(lots.map(({ id, definition }) => recordName(id, definition.line)), 'and')}.`;
}

/** Whole years. Example: '2 years old', 'less than 1 year old', '1 to 2 years old' */
export function ageText({ least, most }: Age): string {
  if (most === 0) return 'less than 1 year old';
  if (least === most) return `${counted(most, 'year')} old`;
  return least === 0 ? `up to ${counted(most, 'year')} old` : `${least} to ${most} years old`;
}

/** What there is to decide about, in one sentence. */
export function seedText({ seed, age, lot }: Advice): string {
  const broken = [...lot.batches.values()].filter(({ unread }) => unread).map(({ path }) => path);
  if (!seed && broken.length > 0) return `A record of ${listed(broken, 'and')} has an error, so what is left is unknown. Fix it first.`;
  if (!seed) return `No untouched seed of ${lot.id} is left, so there is nothing to decide.${notSownText(lot)}`;
  const { isRest, batches } = seed;
  const parts = batches.length > 1 ? `, in ${listed(batches.map(({ path }) => path), 'and')}` : '';
  const rest = isRest ? `${numberOf(seed)} still untouched${parts}` : `${numberOf(seed)}${parts}, untouched so far`;
  return `${rest.charAt(0).toUpperCase()}${rest.slice(1)}. ${age ? `The seed is ${ageText(age)}.` : 'The journal does not say how old the seed is.'}`;
}

/** A sowing is of the whole batch, so what was not sown is told apart only where it was split off before. */
function notSownText({ batches }: Lot): string {
  const paths = [...batches.values()].filter(batch => {
    const [kept, sown] = [rangeOf(batch, 'kept'), rangeOf(batch, 'sown')];
    return batch.sowing !== undefined && kept !== undefined && sown !== undefined && sown.most < kept.least;
  }).map(({ path }) => path);
  return paths.length === 0 ? '' : ` Not all of ${listed(paths, 'and')} was sown. To decide about the rest, make it a part of its own with a “split” dated before the sowing.`;
}

function numberOf({ seeds }: Untouched): string {
  if (!seeds) return 'seeds of unknown number';
  return rangedSeedsText(seeds);
}

/** The answer, in a sentence or two. */
export function answerText(advice: Advice): string {
  const { choice, division, lot, seed } = advice;
  const isSingle = seed?.seeds?.most === 1;
  switch (choice.kind) {
    case 'treat':
      return [
        `Treat ${isSingle ? 'it' : 'most of it'}: ${offerText(choice.offer)}.`,
        `It ${paidText(choice.tried)}${stagesText(choice.offer)}${againstText(choice.tried)}.`,
        ...warnings(advice, choice.offer), sidesText(division, 'treat'),
      ].join(' ').trim();
    case 'try': {
      const offer = `${offerText(choice.offer)}: ${becauseText(choice, advice)}.`;
      const end = warnings(advice, choice.offer);
      if (isSingle) return [`One seed is too few for a trial. The treatment would be ${offer}`, ...end].join(' ');
      if (division?.isTooFew) return [`Too few for a trial: treat half, keep half. The treatment would be ${offer}`, ...end].join(' ');
      return [`Try ${offer}`, ...end, sidesText(division, 'try')].join(' ').trim();
    }
    case 'leave': return `Leave it untreated: ${leaveText(choice, advice)}.${deathsText(advice)}`;
    case 'unknown': return advice.leftOut.length + advice.aside.length + advice.uncompared.length > 0
      ? `No trial of one agent on ${lot.plant ?? lot.id} in your records can be judged (see below), and your guides say nothing, so there is no advice.`
      : `Neither your records nor your guides say anything of a treatment for ${lot.plant ?? lot.id}, so there is no advice.`;
  }
}

/**
 * What lots show by themselves and what they show together are two things.
 *
 * Example: 'paid in 2 lots so far' where seed may still germinate and change it, 'was tried in 3 lots and paid in one
 * of them, and together they show that it pays'
 */
function paidText({ lots, paidIn, isOpen, isEstimated }: Tried): string {
  const soFar = isOpen ? ' so far' : '';
  if (lots.length === 1) return `paid in one lot${soFar}`;
  if (paidIn.length === lots.length) return `paid in ${lots.length} lots${soFar}`;
  const some = paidIn.length === 1 ? 'one' : paidIn.length;
  if (isEstimated) return `was tried in ${lots.length} lots and paid in ${some} of them${soFar}`;
  return paidIn.length === 0
    ? `was tried in ${lots.length} lots, and together they show that it pays${soFar}, though none does alone`
    : `was tried in ${lots.length} lots and paid in ${some} of them, and together they show that it pays${soFar}`;
}

/** Example: ', but 42 of 69 treated seedlings are weak (leggy, abnormal or dead)' */
function againstText({ harmedIn, weak }: Tried): string {
  const against = [
    ...harmedIn.length > 0 ? [`by estimated numbers it harmed seed of ${listed(harmedIn.map(({ id }) => id), 'and')}`] : [],
    ...weak ? [weakTreatedText(weak)] : [],
  ];
  return against.length === 0 ? '' : `, but ${against.join(', and ')}`;
}

/** The dose of an offer; that of a record rests on powder halved by eye as the record does. */
export function offerName({ agent, text, tried }: Offer): string {
  return doseName({ agent, text, isAbout: tried?.isAbout ?? false });
}

function offerText(offer: Offer): string {
  const { soak, longer, tried } = offer;
  const instead = longer === undefined ? '' : ` (${tried ? 'your records have' : 'your guide says'} ${longer}, which is longer than your limit)`;
  return `${offerName(offer)}, ${soak}${instead}`;
}

/** When the soak comes. Example: ', after chill 4 C 12 weeks' */
function stagesText(offer: Offer): string {
  if (offer.isLate) return ', on seed that had been sown and watched before';
  const before = stepsBefore(offer);
  return before.length === 0 ? '' : `, after ${listed(before, 'and')}`;
}

/** What comes before the soak. Example: ['scarification', 'chill 4 C 12 weeks'] */
export function stepsBefore({ first, isScarified }: Offer): string[] {
  return [...isScarified ? ['scarification'] : [], ...first.map(stageName)];
}

/** What speaks against a treatment that is advised all the same. */
function warnings({ forms, genus, choice }: Advice, offer: Offer): string[] {
  const { agent, text, above, undissolved } = offer;
  const harmed = choice.kind !== 'try' || choice.because === 'own records' || choice.because === 'unmeasured' ? [] : harmedBy(agent, [...forms, ...genus]);
  return [
    ...above ? [`${text === undefined ? agent.word : offerName(offer)} is above your limit of ${printQuantity(above.value)}.`] : [],
    ...undissolved ? [`${offerName(offer)} is more than dissolves in water (${dissolvedText(undissolved)}).`] : [],
    ...harmed.map(tried => `${doseName(tried)} harmed ${plantsOf(tried)}.`),
  ];
}

function harmedBy(agent: Offer['agent'], kin: readonly TriedAgent[]): Tried[] {
  return kin.filter(each => substanceOf(each.agent) === substanceOf(agent))
    .flatMap(({ doses }) => doses.filter(({ verdict }) => verdict === 'harmful'));
}

/** Example: 'Gentiana acaulis and Gentiana verna' */
function plantsOf({ lots }: Tried): string {
  const byKey = new Map(lots.flatMap(({ plant }) => (plant === undefined ? [] : [[plantKey(plant), plant] as const])));
  return listed([...byKey.values()], 'and');
}

function becauseText({ because, offer }: Choice & { readonly kind: 'try' }, { lot, species }: Advice): string {
  const untried = `you have no comparison of your own for ${lot.plant ?? 'this plant'}`;
  const against = offer.tried ? againstText(offer.tried) : '';
  switch (because) {
    case 'own records': {
      if (offer.tried?.verdict !== 'worth repeating') {
        return offer.tried?.verdict === 'germinates well without it'
          ? `untreated seed beside it germinated well${stagesText(offer)}, but not all of your untreated seed did`
          : `your records cannot tell${offer.tried?.isOpen ? ' yet' : ''} whether it pays${stagesText(offer)}${against}`;
      }
      return hasPaid(offer.tried)
        ? `it looks good by itself${against}, but you tried several treatments, and one of several may look good by chance`
        : `it looks good where you counted the seed${stagesText(offer)}${against}`;
    }
    case 'unmeasured':
      return `it ${paidText(offer.tried!)}${stagesText(offer)}${against}, ${against === '' ? 'but' : 'and'} how strong it was is unknown, so this may be another dose`;
    case 'guide': return `your guide gives it${stagesText(offer)}, and ${species.length > 0 ? 'what you tried before has not paid' : untried}`;
    case 'form': case 'genus': return `it paid on ${plantsOf(offer.tried!)}${stagesText(offer)}${against}, and ${untried}`;
  }
}

/** Untreated seed that germinates is worth little where its seedlings die. */
function deathsText({ choice, untreated }: Advice): string {
  const { x, n } = deathsIn(untreated);
  if (x === 0 || (choice.kind === 'leave' && choice.because === 'guide')) return '';
  return ` Of ${counted(n, 'untreated seedling')} in your records, ${x} died.`;
}

function leaveText(
  choice: Choice & { readonly kind: 'leave' }, advice: Advice,
): string {
  const { lot: { plant }, ready, readyPrepared } = advice;
  const name = plant ?? 'this plant';
  switch (choice.because) {
    case 'ready': return `untreated seed of ${name} germinated well and soon in your own records${ready ? '' : conditionText(choice.tried, readyPrepared[0])}${otherAgeText(advice)}`;
    case 'harmful': return `${doseName(choice.tried!)} harmed seed of ${plantsOf(choice.tried!) || name} in your own records`;
    case 'no benefit': return `${choice.tried ? doseName(choice.tried) : 'what you tried'} showed no sign of a benefit on ${name} in your own records${atMostText(choice.tried)}`;
    case 'guide': return `your guides name no soak (${guideStepsText(choice.guide.record)}), and you have no comparison of your own`;
  }
}

/** What has to be known of untreated seed that germinated well and soon, but not by itself from its sowing on. */
function conditionText(tried: Tried | undefined, record: ReadyRecord | undefined): string {
  const text = record && preparationText(record);
  if (text !== undefined) return `, after ${text}`;
  const isLate = !record && tried?.treated.every(({ since }) => since !== undefined);
  return isLate ? ', counted from the day on which the treated part was soaked' : '';
}

/** Seed of another age may do otherwise. */
function otherAgeText({ lot, now, age, untreated }: Advice): string {
  const ages = agesBeside(untreated, lot, now.day);
  const isOther = ages.length === untreated.length && ages.every(({ asOld }) => asOld === 'no');
  return age && untreated.length > 0 && isOther ? ', though none of it was as old as this seed' : '';
}

/** What a smaller trial cannot rule out: seed that was given up too early is lost to the treatment for good. */
function atMostText(tried: Tried | undefined): string {
  const most = tried?.difference?.high ?? 0;
  return most <= 0 ? '' : ` (a gain of up to ${limitText(most)} is not ruled out)`;
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
