/** Lines that may tell more of a lot than was read: a count that is lost makes a verdict wrong. */
import { meaningOfKeyword } from '../model/events.ts';
import type { JournalLine } from './journal-file.ts';
import { forEachMention, isAbout, rootOf } from './mentions.ts';
import type { NameIndex } from './name-index.ts';
import { namesInUnread } from './unread-names.ts';

/** That it is unknown what was seen of a lot, of a batch of it, or of which. */
export interface Doubt {
  /** Of the lot or the batch. */
  readonly path: string;
  /** In words. */
  readonly why: string;
}

const none: readonly Doubt[] = [];

/** From lines that could not be read, from records of an id in other capitals, and from a second lot of the id. */
export function doubtsAbout(id: string, names: NameIndex): readonly Doubt[] {
  const [definitions, unread, alike] = [names.definitions(id), names.unread(id), names.likeInLetters(id)];
  if (definitions.size < 2 && unread.size === 0 && alike.length === 0) return none;
  const lots = [...definitions].filter(({ content }) => content.record?.keyword === 'lot');
  return [
    ...lots.length > 1 ? [{ path: id, why: `two lots are called ${id}` }] : [],
    ...[...unread].flatMap(line => namesInUnread(line).filter(name => rootOf(name) === id)
      .map(path => ({ path, why: `a line that cannot be read names ${path}` }))),
    ...alike.filter(other => names.definitions(other).size === 0)
      .flatMap(other => [...names.mentions(other)].flatMap(line => inOtherLetters(line, id, other))),
  ];
}

function inOtherLetters({ content: { record } }: JournalLine, id: string, other: string): Doubt[] {
  if (!record?.subject || !isAbout(record, other) || meaningOfKeyword(record.keyword)?.isRemark === true) return [];
  const path = id + record.subject.text.slice(other.length);
  return [{ path, why: `a record names ${record.subject.text}, which may mean ${path}` }];
}

/** Goes through the things that a line may raise a doubt about, apart from those that it names. */
export function forEachDoubted(line: JournalLine, names: NameIndex, visit: (id: string) => void): void {
  const { content: { record } } = line;
  for (const name of namesInUnread(line)) if (names.definitions(rootOf(name)).size > 0) visit(rootOf(name));
  if (record && names.hasAlike) forEachMention(record, id => names.likeInLetters(id).forEach(visit));
}
