/** Where something was put: what is there now, in all slots of the container, and what is due of it. */
import { counted } from '../../model/counted.ts';
import { placeKey, slotOf } from '../../calendar/place-text.ts';
import { placesNow, type Container } from '../../calendar/places.ts';
import { agoText } from '../../words/days.ts';
import { nextDue } from '../drawing/season.ts';
import { escapeMarkdown, markdownList } from '../markdown.ts';
import { placeDrawn } from './drawn.ts';
import { sectionsOf, type HoverContext, type Section } from './section.ts';

/** More than this is neither drawn nor told one by one. */
const MOST = 12;

const heading: Section<Container> = ({ name, places }) => {
  const all = places.flatMap(({ stays }) => stays).length;
  return `**${escapeMarkdown(name || 'slots')}** · ${counted(all, 'thing')} there now`;
};

const picture: Section<Container> = (container, context) =>
  (container.places.flatMap(({ stays }) => stays).length > MOST ? undefined : placeDrawn(container, context));

const list: Section<Container> = ({ places }, { journal, now }) => {
  const next = nextDue(journal, now);
  const rows = places.flatMap(({ slot, stays }) => stays.map(({ id, plant, what: amount }) => {
    const due = next.get(id);
    const what = [id, plant, amount && `(${amount})`].filter(text => text).join(' ');
    const words = [slot === undefined ? what : `slot ${slot}: ${what}`, due && `${due.what}, due ${agoText(due.day, now.day)}`];
    return escapeMarkdown(words.filter(text => text !== undefined).join(' · '));
  }));
  const more = rows.length - MOST;
  return markdownList(more > 0 ? [...rows.slice(0, MOST), `and ${more} more`] : rows);
};

export function hoverPlace(place: string, context: HoverContext): string {
  const key = placeKey(slotOf(place)?.container ?? place);
  const container = placesNow(context.journal, context.now).find(each => each.key === key);
  return (container && sectionsOf([heading, picture, list], container, context)) ?? 'Nothing is there now.';
}
