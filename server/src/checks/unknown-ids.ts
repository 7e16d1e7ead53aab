/** Names that nothing in the journal defines. */
import type { Entry } from '../journal/life.ts';
import { mentionsOf, rootOf, type Mention } from '../journal/mentions.ts';
import { keywords, type Keyword } from '../model/keywords.ts';
import type { ProblemCode } from '../model/problems.ts';
import { builtInAgents } from '../solutions/agents.ts';
import { nearest } from '../syntax/nearest.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type Context, type Found, type IdCheck } from './check.ts';

export const unknownIds: IdCheck = function* (id, mentions, context) {
  const defined = new Set(context.journal.definitionsOf(id).map(({ record }) => record.keyword));
  for (const entry of mentions) {
    for (const mention of mentionsOf(entry.record)) {
      if (mention.id !== id || mention.role === 'definition') continue;
      const wanted = wantedBy(entry.record.keyword, mention);
      if (wanted.kinds.some(kind => defined.has(kind)) || (wanted.code === 'unknown-id' && defined.size > 0)) continue;
      yield unknown(entry, mention, wanted, context);
    }
  }
};

/** Batches that were never split off. */
export function* unknownBatches(id: string, { journal }: Context): Iterable<Found> {
  const lot = journal.lot(id);
  if (!lot) return;
  for (const { line, record } of lot.strays) {
    const { subject } = record;
    if (!subject) continue;
    const near = nearest(subject.text, lot.batches.keys());
    const names = [...lot.batches.keys()].slice(1);
    const suggestion = near
      ? `Did you mean “${near}”?`
      : names.length > 0 ? `${id} was split into ${names.slice(0, 8).join(', ')}.` : `Write a “split” record first: split ${id}, A 24 seeds.`;
    yield found(line, 'unknown-batch', subject, { id: subject.text, suggestion }, near ? [replacement(subject, near)] : []);
  }
}

interface Wanted {
  readonly code: ProblemCode;
  readonly kinds: readonly Keyword[];
}

function wantedBy(keyword: Keyword, { role }: Mention): Wanted {
  if (role === 'subject') {
    return keywords[keyword].subject === 'any' ? { code: 'unknown-id', kinds: [] } : { code: 'unknown-lot', kinds: ['lot'] };
  }
  switch (keyword) {
    case 'sow': return { code: 'unknown-regime', kinds: ['regime'] };
    case 'dilute': return { code: 'unknown-stock', kinds: ['stock', 'dilute'] };
    // A stock is made from powder of an agent, not from another stock.
    case 'stock': case 'guide': return { code: 'unknown-agent', kinds: ['agent'] };
    default: return { code: 'unknown-agent', kinds: ['agent', 'stock', 'dilute'] };
  }
}

function unknown({ line }: Entry, { id, written }: Mention, { code, kinds }: Wanted, { journal }: Context): Found {
  const known = [...journal.definedIds()].filter(other => {
    const kind = journal.kindOf(other);
    return code === 'unknown-id' || (kind !== undefined && kinds.includes(kind));
  });
  const near = nearest(id, code === 'unknown-agent' ? [...known, ...builtInAgents.keys()] : known);
  const span = { start: written.start, end: written.start + rootOf(written.text).length };
  const place = code === 'unknown-agent' ? written : span;
  return found(line, code, place, { id, word: id, suggestion: near ? `Did you mean “${near}”?` : definition(code, id) },
    near ? [replacement(place, near)] : []);
}

function definition(code: ProblemCode, id: string): string {
  switch (code) {
    case 'unknown-regime': return `Define it: regime ${id}, warm 20 C 60 days, chill 4 C 90 days.`;
    case 'unknown-stock': return `Define it: stock ${id} 2026-01-09, GA3 20 mg, 20 mL.`;
    case 'unknown-agent': return `Declare it: agent ${id}, what it is; or define a stock of that name.`;
    default: return `Define it: lot ${id} plant's name, 60 seeds.`;
  }
}
