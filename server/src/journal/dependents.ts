/** What changes with what: the things that are made from others, laid out by them, or judged by them. */
import { factsOf } from '../model/record.ts';
import { genusOf } from './guides.ts';
import type { JournalLine } from './journal-file.ts';
import { forEachMention, isDefining, subjectIdOf } from './mentions.ts';
import type { NameIndex } from './name-index.ts';

export interface Dependents {
  /** The thing itself, and what is defined by way of it: dilutions of dilutions of a stock. */
  readonly defined: ReadonlySet<string>;
  /** What uses one of these. */
  readonly users: ReadonlySet<string>;
}

/** Everything that is made from a stock or an agent, or laid out by a regime, changes with it. */
export function dependentsOf(id: string, names: NameIndex): Dependents {
  const defined = new Set([id]);
  const users = new Set<string>();
  // A set is gone through in the order in which it grows.
  for (const each of defined) {
    for (const line of names.mentions(each)) {
      const record = line.content.record!;
      const subject = subjectIdOf(record);
      if (record.keyword === 'guide') for (const lot of lotsJudgedBy([line], names)) users.add(lot);
      if (subject === undefined || subject === each) continue;
      users.add(subject);
      if (isDefining(record.keyword)) defined.add(subject);
    }
  }
  return { defined, users };
}

/** The lots that some lines define, with all that they replace and are replaced by, these with theirs too. */
export function replacedWith(lines: readonly JournalLine[], names: NameIndex): ReadonlySet<string> {
  const ids = new Set(lines.flatMap(({ content: { record } }) => (
    record?.keyword === 'lot' && record.subject ? [record.subject.text] : [])));
  for (const id of ids) {
    for (const { content: { record } } of names.mentions(id)) {
      if (record?.keyword !== 'lot') continue;
      const replaced = factsOf(record, 'replaces');
      if (replaced.length > 0 && record.subject) ids.add(record.subject.text);
      for (const { value } of replaced) ids.add(value.text);
    }
  }
  return ids;
}

/** The packets that some lines take from, or say what is left of, where what was halved out of them hangs on it. */
export function halvedIn(lines: readonly JournalLine[], names: NameIndex): string[] {
  const taken = new Set<string>();
  for (const { content: { record } } of lines) {
    if (!record) continue;
    forEachMention(record, (id, role) => {
      if (role === 'reference' || record.keyword === 'left') taken.add(id);
    });
  }
  return [...taken].filter(id => names.isHalved(id));
}

/** Guides judge the soaks of their plants. */
export function* lotsJudgedBy(guides: readonly JournalLine[], names: NameIndex): Iterable<string> {
  const genera = new Set(guides.map(({ content }) => genusOf(content.record?.subject?.text ?? '')));
  for (const id of names.ids()) {
    for (const { content: { record } } of names.definitions(id)) {
      if (record?.plant && genera.has(genusOf(record.plant.text))) yield id;
    }
  }
}
