/** What a treatment needs, in words: what stands on the shelf, or what to make up. */
import type { Advice } from '../../advice/advice.ts';
import { offerIn } from '../../advice/choice.ts';
import { isRefused, type Offer } from '../../advice/offer.ts';
import type { Bottle } from '../../advice/supplies.ts';
import { recordName } from '../../words/advice.ts';
import { originOfLimit } from '../../words/limits.ts';
import { dissolvedText } from '../../words/strengths.ts';
import { counted } from '../../model/counted.ts';
import { isoOf } from '../../model/day.ts';
import { printQuantity } from '../../model/quantity.ts';
import { exact } from '../../solutions/amounts.ts';
import { numberText } from '../../solutions/display.ts';
import { leftText } from '../../solutions/left-text.ts';
import { usualStrengthText } from '../../solutions/strength.ts';
import type { Passage } from '../passages.ts';

/** As many bottles as anybody wants to choose from. */
const MOST_BOTTLES = 3;

export function needsPassage({ supplies, choice }: Advice): Passage {
  const heading = 'What it needs';
  const offer = offerIn(choice);
  if (!offer) return { heading, columns: [], items: [], texts: [] };
  const dose = offer.text ?? offer.agent.word;
  const limits = [
    offer.above ? `${dose} is above your limit of ${printQuantity(offer.above.value)} (${originOfLimit(offer.above)}), so no record of it is offered.` : undefined,
    offer.undissolved ? `${dose} is more than dissolves in water (${dissolvedText(offer.undissolved)}; ${offer.undissolved.source.text}), so no record of it is offered. Check both numbers and their units.` : undefined,
    offer.longer === undefined ? undefined : `${offer.longer} is longer than your limit, so the advice is ${offer.soak}.`,
    offer.text === undefined && offer.guide ? 'The guide says no strength. Take it from the product’s label or another book.' : undefined,
    offer.text === undefined && offer.tried ? 'How strong it was is unknown, so it cannot be repeated.' : undefined,
    offer.text !== undefined && offer.ppm === undefined ? 'The dose was not measured, so its strength is unknown. Measure it this time, and you can repeat it.' : undefined,
  ].filter(text => text !== undefined);
  if (!supplies || isRefused(offer)) return { heading, columns: [], items: [], texts: limits };
  const { bottles, packets, past } = supplies;
  const powder = packets.map(({ stock: { solution: { id, form, entry }, left }, isPast }) => (
    `The packet ${recordName(id, entry.line)}${left ? ` has ${leftText(form, left)} left` : ' is there'}${isPast ? ', but is past its date, so a dose from it would be uncertain' : ''}.`));
  const make = bottles.length > 0 ? [] : [
    `No bottle in your records has ${dose} or more left${past.length > 0 ? ' and is in date' : ''}. ${makeText(offer)}`,
    ...past.map(({ solution: { id, entry } }) => `The bottle ${recordName(id, entry.line)} is past its date.`),
    ...powder,
  ];
  const more = bottles.length > MOST_BOTTLES ? [`${counted(bottles.length - MOST_BOTTLES, 'more bottle')} would do.`] : [];
  const inHand = bottles.slice(0, MOST_BOTTLES).map(bottle => bottleText(bottle, dose));
  return { heading, columns: [], items: [], texts: [...limits, ...inHand, ...more, ...make] };
}

function makeText({ agent, text, ppm }: Offer): string {
  const strength = text?.slice(agent.word.length).replaceAll(' ', '') ?? usualStrengthText(exact(ppm!), agent).replace(' ', '');
  const command = `plumule mix ${agent.word} ${strength} 20mL`;
  return agent.form === 'liquid'
    ? `It is sold as a liquid: “${command} --from” with the strength on its label says how to dilute it.`
    : `Make it up by the day of the soak: “${command}” says how.`;
}

function bottleText({ stock: { solution, left }, share, isNear }: Bottle, dose: string): string {
  const { id, form, keeps, entry } = solution;
  const much = left ? `${leftText(form, left)} left` : 'an unknown volume left';
  const until = keeps ? `, good until ${isoOf(keeps.until)}${isNear ? ' (use it up soon)' : ''}` : '';
  const water = exact(1).div(share).sub(exact(1));
  const use = share.equals(exact(1)) ? 'Use it as it is' : `For ${dose} add ${numberText(water).text} mL of water to each mL of it`;
  return `In hand: ${recordName(id, entry.line)}, ${much}${until}. ${use}.`;
}
