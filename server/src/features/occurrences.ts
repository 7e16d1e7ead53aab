/** Every place where a thing of the journal is named: what references, highlight and rename go by. */
import type { Journal } from '../journal/journal.ts';
import type { Entry } from '../journal/life.ts';
import { mentionsOf, rootOf } from '../journal/mentions.ts';
import { factsOf, type Span } from '../model/record.ts';
import { placeOf, type Place } from './place.ts';
import type { Named, Thing } from './thing.ts';

export interface Occurrence {
  readonly place: Place;
  /** Whether the record makes the thing known or speaks of it. */
  readonly role: 'definition' | 'mention';
}

export function isNamed(thing: Thing): thing is Thing & Named {
  return ['lot', 'batch', 'stock', 'regime', 'agent'].includes(thing.kind);
}

/**
 * The places where a thing is named, in the order of the journal. Records of a batch name its lot and the batches that
 * it was split from, too; of a path only the part that means the thing is its place.
 *
 * The uses of a built-in agent are not kept in any index: of these only the `agent` and `limit` records are found.
 */
export function occurrencesOf(journal: Journal, thing: Named): Occurrence[] {
  if (thing.kind === 'batch') return journal.mentionsOf(rootOf(thing.path)).flatMap(entry => ofBatch(entry, thing.path));
  const occurrences = journal.mentionsOf(thing.id).flatMap(entry => ofId(entry, thing.id));
  return thing.kind === 'agent' ? [...occurrences, ...limitsOf(journal, thing.id)] : occurrences;
}

/** The `limit` records for an agent, whatever plants they are for. */
function limitsOf(journal: Journal, word: string): Occurrence[] {
  return journal.globalEntries('limit').flatMap(({ line, record: { subject } }) =>
    subject?.text.toLowerCase() === word.toLowerCase() ? [{ place: placeOf(line, subject), role: 'mention' as const }] : []);
}

function ofId({ line, record }: Entry, id: string): Occurrence[] {
  return mentionsOf(record)
    .filter(mention => mention.id === id)
    .map(({ written: { start }, role }) => ({
      place: placeOf(line, { start, end: start + id.length }), role: role === 'definition' ? role : 'mention',
    }));
}

function ofBatch({ line, record }: Entry, path: string): Occurrence[] {
  const { subject } = record;
  if (!subject) return [];
  const at = (span: Span, role: Occurrence['role']) => ({ place: placeOf(line, span), role });
  if (subject.text === path || subject.text.startsWith(`${path}/`)) {
    return [at({ start: subject.start, end: subject.start + path.length }, 'mention')];
  }
  const parts = record.keyword === 'split' ? factsOf(record, 'part') : [];
  return parts.filter(({ name }) => `${subject.text}/${name.text}` === path).map(({ name }) => at(name, 'definition'));
}
