import type { Entry } from '../journal/life.ts';
import { builtInAgents } from '../solutions/agents.ts';
import { found, relatedTo, type Found, type IdCheck, type JournalCheck, type LotCheck } from './check.ts';
import { placeOf, subjectOf } from './spans.ts';

/** An id that is defined twice, in one file or in two; the first one in the order of the journal counts. */
export const duplicateDefinitions: IdCheck = function* (id, _mentions, { journal }) {
  const [first, ...others] = journal.definitionsOf(id);
  if (!first) return;
  for (const entry of others) yield twice(entry, first, capital(entry.record.keyword), id);
  if ((first.record.keyword === 'stock' || first.record.keyword === 'dilute' || first.record.keyword === 'powder') && builtInAgents.has(id)) {
    yield found(first.line, 'duplicate-definition', subjectOf(first), { what: 'Agent', id, place: 'by Plumule itself' });
  }
};

/** Parts whose name was given out before, by another record. */
export const duplicateBatches: LotCheck = function* ({ twice: parts }) {
  for (const { entry, path, first } of parts) yield twice(entry, first, 'Batch', path);
};

/** More than one `zone`; the same one again, as in each of several files, does no harm. */
export const duplicateZones: JournalCheck = function* ({ journal }) {
  const [first, ...others] = journal.globalEntries('zone').filter(({ record }) => record.subject !== undefined);
  for (const entry of others) {
    const zone = entry.record.subject!.text;
    if (first && zone !== first.record.subject!.text) yield twice(entry, first, 'A zone other than', zone);
  }
};

function twice(entry: Entry, first: Entry, what: string, id: string): Found {
  return found(entry.line, 'duplicate-definition', subjectOf(entry), { what, id, place: placeOf(first, entry) },
    { related: [relatedTo(first, 'The first one')] });
}

function capital(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}
