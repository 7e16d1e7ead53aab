import { builtInAgents } from '../solutions/agents.ts';
import { nearest } from '../syntax/nearest.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type JournalCheck } from './check.ts';

const things: readonly string[] = ['soak', 'stock', 'count'];

/** A `limit` for something that has none. */
export const unknownLimit: JournalCheck = function* ({ journal }) {
  const words = [...things, ...builtInAgents.keys(), ...journal.agents.keys()];
  const known = new Set(words.map(word => word.toLowerCase()));
  for (const { line, record: { subject } } of journal.globalEntries('limit')) {
    if (!subject || known.has(subject.text.toLowerCase())) continue;
    const near = nearest(subject.text, words);
    const suggestion = near ? `Did you mean “${near}”?` : 'Write soak, stock, count or an agent.';
    yield found(line, 'unknown-agent', subject, { word: subject.text, more: '', suggestion }, { fixes: near ? [replacement(subject, near)] : [] });
  }
};
