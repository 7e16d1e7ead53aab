/**
 * All records about a lot, about a batch and its children, and all uses of a stock, a regime or an agent: by file, then
 * from top to bottom, in whatever order the files were read.
 */
import type { Journal } from '../journal/journal.ts';
import { builtInAgents } from '../solutions/agents.ts';
import type { Position } from '../text/line-store.ts';
import { isNamed, occurrencesOf } from './occurrences.ts';
import { comparePlaces, placeOf, type Place } from './place.ts';
import { thingAt } from './thing.ts';

export function referencesAt(journal: Journal, file: string, position: Position, includeDeclaration: boolean): Place[] {
  const thing = thingAt(journal, file, position);
  if (!thing || !isNamed(thing)) return [];
  const places = occurrencesOf(journal, thing)
    .filter(({ role }) => includeDeclaration || role === 'mention')
    .map(({ place }) => place);
  const uses = thing.kind === 'agent' && builtInAgents.has(thing.id) ? usesOf(journal, thing.id) : [];
  return [...places, ...uses].sort(comparePlaces);
}

/** The uses of a built-in agent stand in no index: this alone goes through all lines. */
function usesOf(journal: Journal, word: string): Place[] {
  const places: Place[] = [];
  for (const { text } of journal.files.values()) {
    for (const line of text) {
      for (const fact of line.content.record?.facts ?? []) {
        if (fact.type === 'substance' && fact.name.text === word) places.push(placeOf(line, fact.name));
      }
    }
  }
  return places;
}
