/** Which things a record names. Batches count as their lot; agents that need no declaration are no things of a journal. */
import { keywords, type Keyword } from '../model/keywords.ts';
import type { JournalRecord, Written } from '../model/record.ts';
import { builtInAgents } from '../solutions/agents.ts';

export interface Mention {
  readonly id: string;
  /** The id where it stands, a batch with its path. */
  readonly written: Written;
  readonly role: 'definition' | 'subject' | 'reference';
}

const defining: ReadonlySet<Keyword> = new Set(['lot', 'stock', 'dilute', 'regime', 'agent']);
/** Records that mean something for the whole journal. */
const global: ReadonlySet<Keyword> = new Set(['limit', 'zone', 'agent', 'guide']);

/** The lot of a batch path: `VER-24` of `VER-24/A/1`. */
export function rootOf(path: string): string {
  const slash = path.indexOf('/');
  return slash < 0 ? path : path.slice(0, slash);
}

export function isDefining(keyword: Keyword): boolean {
  return defining.has(keyword);
}

export function isGlobal(keyword: Keyword): boolean {
  return global.has(keyword);
}

/** Everything that a record names, the subject first. */
export function mentionsOf(record: JournalRecord): Mention[] {
  const mentions: Mention[] = [];
  const { keyword, subject, facts } = record;
  const kind = keywords[keyword].subject;
  if (subject && kind !== 'plant' && kind !== 'zone' && kind !== 'date' && kind !== 'limited') {
    mentions.push({ id: rootOf(subject.text), written: subject, role: isDefining(keyword) ? 'definition' : 'subject' });
  }
  for (const fact of facts) {
    const written = fact.type === 'substance' && !builtInAgents.has(fact.name.text) ? fact.name
      : fact.type === 'draw' ? fact.stock
        : fact.type === 'regime' ? fact.value : undefined;
    if (written) mentions.push({ id: written.text, written, role: 'reference' });
  }
  return mentions;
}
