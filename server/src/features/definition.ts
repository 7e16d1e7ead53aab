/** From a name to its definition, and from a dose or the length of a soak to the `limit` that holds for it. */
import type { Journal } from '../journal/journal.ts';
import type { JournalLine } from '../journal/journal-file.ts';
import type { Entry } from '../journal/life.ts';
import type { Position } from '../text/line-store.ts';
import { plantOf } from './events.ts';
import { occurrencesOf } from './occurrences.ts';
import { placeOf, type Place } from './place.ts';
import { thingAt, type Named, type Thing } from './thing.ts';

export interface Link {
  /** The words that lead there. */
  readonly from: Place;
  readonly to: Place;
}

/** More than one where an id is defined twice. */
export function definitionsAt(journal: Journal, file: string, position: Position): Link[] {
  const thing = thingAt(journal, file, position);
  return thing ? targetsOf(journal, thing).map(to => ({ from: thing.place, to })) : [];
}

function targetsOf(journal: Journal, thing: Thing): Place[] {
  switch (thing.kind) {
    case 'lot': case 'batch': case 'stock': case 'regime': return definitions(journal, thing);
    case 'agent': {
      const declared = definitions(journal, thing);
      return declared.length > 0 ? declared : strengthLimit(journal, thing.id, thing.entry);
    }
    case 'strength': return strengthLimit(journal, thing.agent, thing.entry);
    case 'fact': return thing.fact.type === 'duration' ? soakLimit(journal, thing.entry) : [];
    default: return [];
  }
}

function definitions(journal: Journal, thing: Named): Place[] {
  return occurrencesOf(journal, thing).filter(({ role }) => role === 'definition').map(({ place }) => place);
}

/** The `limit` record that holds for an agent where it stands; none where a setting or the default does. */
function strengthLimit(journal: Journal, word: string, entry: Entry): Place[] {
  const agent = journal.agents.get(word);
  return limitPlace(agent && journal.limits.strength(agent, plantOf(journal, entry))?.line);
}

function soakLimit(journal: Journal, entry: Entry): Place[] {
  return entry.record.keyword === 'soak' ? limitPlace(journal.limits.soak(plantOf(journal, entry)).line) : [];
}

function limitPlace(line: JournalLine | undefined): Place[] {
  const record = line?.content.record;
  return line && record ? [placeOf(line, record.subject ?? record.keywordSpan)] : [];
}
