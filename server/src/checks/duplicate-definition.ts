import { fileName } from '../journal/limits.ts';
import { found, relatedTo, subjectOf, type Context, type Found, type IdCheck } from './check.ts';
import type { Entry } from '../journal/life.ts';
import { builtInAgents } from '../solutions/agents.ts';

/** An id that is defined twice, in one file or in two; the first one in the order of the journal counts. */
export const duplicateDefinitions: IdCheck = function* (id, _mentions, { journal }) {
  const [first, ...others] = journal.definitionsOf(id);
  if (!first) return;
  for (const entry of others) yield twice(entry, first, capital(entry.record.keyword), id);
  if ((first.record.keyword === 'stock' || first.record.keyword === 'dilute') && builtInAgents.has(id)) {
    yield found(first.line, 'duplicate-definition', subjectOf(first), { what: 'Agent', id, place: 'Plumule itself' });
  }
};

/** Parts whose name was given out before, in this record or in another. */
export function* duplicateBatches(id: string, { journal }: Context): Iterable<Found> {
  for (const { entry, path, first } of journal.lot(id)?.twice ?? []) yield twice(entry, first, 'Batch', path);
}

/** More than one `zone`. */
export function* duplicateZones({ journal }: Context): Iterable<Found> {
  const [first, ...others] = journal.globalEntries('zone');
  if (!first) return;
  for (const entry of others) yield twice(entry, first, 'Zone', entry.record.subject?.text ?? '');
}

function twice(entry: Entry, first: Entry, what: string, id: string): Found {
  const place = `line ${first.line.number + 1} of ${fileName(first.line.store.name)}`;
  return found(entry.line, 'duplicate-definition', subjectOf(entry), { what, id, place }, [], [relatedTo(first, 'The first one')]);
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}
