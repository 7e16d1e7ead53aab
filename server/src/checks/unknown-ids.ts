/** Names that nothing in the journal defines. */
import type { Entry } from '../journal/life.ts';
import { mentionsOf, rootOf, subjectIdOf, type Mention } from '../journal/mentions.ts';
import { keywords, type Keyword, type KeywordInfo } from '../model/keywords.ts';
import type { ProblemCode } from '../model/problems.ts';
import type { FactType } from '../model/record.ts';
import { wordFor } from '../solutions/agent-names.ts';
import { builtInAgents } from '../solutions/agents.ts';
import { nearest } from '../syntax/nearest.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type Context, type Found, type IdCheck } from './check.ts';

const referring: ReadonlySet<FactType> = new Set(['substance', 'draw', 'regime']);

/** Most records name nothing but a lot. */
const namesLotAlone: ReadonlySet<string> = new Set(Object.entries<KeywordInfo>(keywords)
  .filter(([, { subject, facts }]) => subject === 'batch' && !facts.some(({ type }) => referring.has(type)))
  .map(([keyword]) => keyword));

export const unknownIds: IdCheck = function* (id, mentions, context) {
  const defined = new Set(context.journal.definitionsOf(id).map(({ record }) => record.keyword));
  const isLot = defined.has('lot');
  for (const entry of mentions) {
    if (isLot && namesLotAlone.has(entry.record.keyword)) continue;
    for (const mention of mentionsOf(entry.record)) {
      if (mention.id !== id || mention.role === 'definition') continue;
      const wanted = wantedBy(entry.record.keyword, mention);
      if (!wanted.kinds.some(kind => defined.has(kind))) yield unknown(entry, mention, wanted, context);
    }
  }
};

interface Wanted {
  readonly code: ProblemCode;
  readonly kinds: readonly Keyword[];
}

function wantedBy(keyword: Keyword, { role, written }: Mention): Wanted {
  if (role === 'subject') {
    const any = keywords[keyword].subject === 'any' && !written.text.includes('/');
    return any ? { code: 'unknown-id', kinds: ['lot', 'stock', 'dilute', 'regime', 'agent'] } : { code: 'unknown-lot', kinds: ['lot'] };
  }
  switch (keyword) {
    case 'sow': return { code: 'unknown-regime', kinds: ['regime'] };
    case 'dilute': return { code: 'unknown-stock', kinds: ['stock', 'dilute'] };
    // A stock is made from powder of an agent, not from another stock.
    case 'stock': case 'guide': return { code: 'unknown-agent', kinds: ['agent'] };
    default: return { code: 'unknown-agent', kinds: ['agent', 'stock', 'dilute'] };
  }
}

function unknown(
  { line, record }: Entry, { id, written }: Mention, { code, kinds }: Wanted, { journal }: Context,
): Found {
  const own = subjectIdOf(record);
  const known = journal.definedIds()
    .filter(other => other !== own && isLike(other, id) && kinds.includes(journal.kindOf(other)!));
  const near = code === 'unknown-agent'
    ? wordFor(id, journal.agents) ?? nearest(id, [...known, ...builtInAgents.keys()])
    : nearest(id, known);
  const word = code === 'unknown-agent' ? written.text : rootOf(written.text);
  const span = { start: written.start, end: written.start + word.length };
  const suggestion = near ? `Did you mean “${near}”?` : definition(code, id, record.keyword);
  return found(line, code, span, { id, word: id, suggestion }, { fixes: near ? [replacement(span, near)] : [] });
}

/**
 * A word that is much longer or shorter is no slip, and there can be thousands of them. Of names as short as `G1` and
 * `G2`, one is not a slip of the other: only another case is.
 */
function isLike(known: string, id: string): boolean {
  if (id.length < 3) return known.toLowerCase() === id.toLowerCase();
  return Math.abs(known.length - id.length) <= Math.max(2, id.length / 3);
}

function definition(code: ProblemCode, id: string, keyword: Keyword): string {
  switch (code) {
    case 'unknown-regime': return `Define it: regime ${id}, warm 20 C 60 days, chill 4 C 90 days.`;
    case 'unknown-stock': return `Define it: stock ${id} 2026-01-09, GA3 20 mg, 20 mL.`;
    case 'unknown-agent': {
      const declare = `Declare it: agent ${id}, what it is`;
      return keyword === 'stock' || keyword === 'guide' ? `${declare}.` : `${declare}; or define a stock of that name.`;
    }
    default: return `Define it: lot ${id} plant's name, 60 seeds.`;
  }
}
