/** What is shown over a word of the journal. One file for each kind of thing; this one finds the right one. */
import type { Journal } from '../../journal/journal.ts';
import type { Moment } from '../../journal/moment.ts';
import { rootOf } from '../../journal/mentions.ts';
import type { ThemeName } from '../../pictures/theme.ts';
import type { Position } from '../../text/line-store.ts';
import { lifeOf } from '../events.ts';
import { escapeMarkdown } from '../markdown.ts';
import type { Place } from '../place.ts';
import { thingAt, type Thing } from '../thing.ts';
import { hoverAgent } from './agent.ts';
import { hoverBatch } from './batch.ts';
import { hoverCount } from './count.ts';
import { hoverCollected, hoverDate } from './date.ts';
import { hoverFact } from './fact.ts';
import { hoverKeyword } from './keyword.ts';
import { hoverLimit } from './limit.ts';
import { hoverLot } from './lot.ts';
import { pictureAt, type Picture } from './photo.ts';
import { hoverRegime } from './regime.ts';
import type { HoverContext } from './section.ts';
import { hoverStock } from './stock.ts';
import { hoverStrength } from './strength.ts';

export interface Hover {
  readonly markdown: string;
  /** The words that it is about. */
  readonly place: Place;
  readonly picture: Picture | undefined;
}

/** Undefined where there is nothing to say. `now` is in the journal's zone; `theme` is for who shows pictures. */
export function hoverAt(
  journal: Journal, file: string, position: Position, now: Moment, theme?: ThemeName,
): Hover | undefined {
  const thing = thingAt(journal, file, position);
  if (!thing) return undefined;
  const picture = pictureAt(thing, { journal, now });
  const markdown = picture ? escapeMarkdown(picture.caption) : markdownOf(thing, { journal, now, theme });
  return markdown === undefined ? undefined : { markdown, place: thing.place, picture };
}

function markdownOf(thing: Thing, context: HoverContext): string | undefined {
  const { journal } = context;
  switch (thing.kind) {
    case 'lot': return hoverLot(journal.lot(thing.id), context);
    case 'batch': return hoverBatch(journal.lot(rootOf(thing.path)), thing.path, context);
    case 'plant': return thing.entry.record.keyword === 'lot' ? hoverLot(lifeOf(journal, thing.entry)?.lot, context) : undefined;
    case 'stock': return hoverStock(journal.solution(thing.id), context);
    case 'regime': return hoverRegime(thing.id, thing.entry, context);
    case 'agent': return hoverAgent(journal.agents.get(thing.id), context);
    case 'limited': return hoverLimit(thing.word, context);
    case 'date': return hoverDate(thing.day, thing.entry, context);
    case 'collected': return hoverCollected(thing.when, thing.entry, context);
    case 'strength': return hoverStrength(thing, context);
    case 'count': return hoverCount(thing.entry, thing.fact.what, context);
    case 'keyword': return hoverKeyword(thing.entry, context);
    case 'fact': return hoverFact(thing.fact, thing.entry, context);
  }
}
