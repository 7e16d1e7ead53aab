/** Which things a record names. Batches count as their lot; agents that need no declaration are not named. */
import type { JournalLine } from './journal-file.ts';
import { isEventKeyword } from '../model/events.ts';
import { keywords, type Keyword } from '../model/keywords.ts';
import type { Fact, JournalRecord, Written } from '../model/record.ts';
import { builtInAgents } from '../solutions/agents.ts';

export interface Mention {
  readonly id: string;
  /** The id where it stands, a batch with its path. */
  readonly written: Written;
  readonly role: 'definition' | 'subject' | 'reference';
}

const defining: ReadonlySet<Keyword> = new Set(['lot', 'stock', 'powder', 'dilute', 'regime', 'agent']);
/** Records that mean something for the whole journal. */
const global: ReadonlySet<Keyword> = new Set(['limit', 'zone', 'agent', 'guide']);
/** Records with facts that can name something. */
const referring: ReadonlySet<Keyword> = new Set(['lot', 'soak', 'apply', 'sow', 'stock', 'powder', 'dilute', 'guide']);

/** The lot of a batch path: `VER-24` of `VER-24/A/1`. */
export function rootOf(path: string): string {
  const slash = path.indexOf('/');
  return slash < 0 ? path : path.slice(0, slash);
}

export function isDefining(keyword: Keyword): boolean {
  return defining.has(keyword);
}

function isGlobal(keyword: Keyword): boolean {
  return global.has(keyword);
}

export function isGlobalLine({ content: { record } }: JournalLine): boolean {
  return record !== undefined && isGlobal(record.keyword);
}

/** The thing that a record is about or defines; undefined where it is about none that has an id. */
export function subjectIdOf({ keyword, subject }: JournalRecord): string | undefined {
  return subject && hasId(keyword) ? rootOf(subject.text) : undefined;
}

/** Whether a thing, or a batch of it, is what a record is about or defines. */
export function isAbout({ keyword, subject }: JournalRecord, id: string): boolean {
  if (!subject?.text.startsWith(id) || !hasId(keyword)) return false;
  return subject.text.length === id.length || subject.text.charAt(id.length) === '/';
}

/** Whether a record tells what happened to a lot, or to a batch of it. */
export function isEventOf(record: JournalRecord, id: string): boolean {
  return isEventKeyword(record.keyword) && isAbout(record, id);
}

function hasId(keyword: Keyword): boolean {
  switch (keywords[keyword].subject) {
    case 'plant': case 'zone': case 'date': case 'limited': return false;
    default: return true;
  }
}

/** Whether a record says something of a thing. A lot that replaces another says something of itself alone. */
export function tellsOf(record: JournalRecord, id: string): boolean {
  return record.keyword !== 'lot' || record.subject?.text === id;
}

/** Goes through everything that a record names, the subject first. */
export function forEachMention(
  record: JournalRecord, visit: (id: string, role: Mention['role'], written: Written) => void,
): void {
  const id = subjectIdOf(record);
  if (id !== undefined) visit(id, isDefining(record.keyword) ? 'definition' : 'subject', record.subject!);
  for (const fact of record.facts) {
    const written = referenceIn(fact);
    if (written) visit(written.text, 'reference', written);
  }
  for (const written of record.unread) if (!builtInAgents.has(written.text)) visit(written.text, 'reference', written);
}

/** Whether a record names anything beside what it is about. */
export function hasReference({ keyword, facts }: JournalRecord): boolean {
  return referring.has(keyword) && facts.some(fact => referenceIn(fact) !== undefined);
}

/** Everything that a record names, the subject first. */
export function mentionsOf(record: JournalRecord): Mention[] {
  const mentions: Mention[] = [];
  forEachMention(record, (id, role, written) => mentions.push({ id, role, written }));
  return mentions;
}

function referenceIn(fact: Fact): Written | undefined {
  switch (fact.type) {
    case 'substance': return builtInAgents.has(fact.name.text) ? undefined : fact.name;
    case 'draw': return fact.stock;
    case 'regime': case 'replaces': return fact.value;
    default: return undefined;
  }
}
