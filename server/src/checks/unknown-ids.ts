/** Names that nothing in the journal defines. */
import type { Journal } from '../journal/journal.ts';
import type { Entry } from '../journal/life.ts';
import { hasReference, isDefining, mentionsOf, rootOf, subjectIdOf, type Mention } from '../journal/mentions.ts';
import { isEventKeyword } from '../model/events.ts';
import { keywords, type Keyword } from '../model/keywords.ts';
import type { JournalRecord } from '../model/record.ts';
import type { ProblemCode } from '../model/problems.ts';
import { wordFor } from '../solutions/agent-names.ts';
import { builtInAgents } from '../solutions/agents.ts';
import { nearest } from '../syntax/nearest.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type Found, type IdCheck } from './check.ts';
import { namesNear } from './near-names.ts';
import { onceAFile, usedBy, type Use } from './once-a-file.ts';

interface Wanted {
  readonly code: ProblemCode;
  readonly kinds: readonly Keyword[];
}

const lot: Wanted = { code: 'unknown-lot', kinds: ['lot'] };
const anything: Wanted = { code: 'unknown-id', kinds: ['lot', 'stock', 'powder', 'dilute', 'regime', 'agent'] };
const regime: Wanted = { code: 'unknown-regime', kinds: ['regime'] };
const stock: Wanted = { code: 'unknown-stock', kinds: ['stock', 'dilute'] };
const bottleOrPacket: Wanted = { code: 'unknown-stock', kinds: ['stock', 'powder', 'dilute'] };
const agent: Wanted = { code: 'unknown-agent', kinds: ['agent'] };
const packet: Wanted = { code: 'unknown-packet', kinds: ['powder'] };
const agentOrStock: Wanted = { code: 'unknown-agent', kinds: ['agent', 'stock', 'powder', 'dilute'] };

export const unknownIds: IdCheck = function* (id, mentions, { journal }) {
  const defined = new Set(journal.definitionsOf(id).map(({ record }) => record.keyword));
  const isLot = defined.has('lot');
  const missing = new Map<Wanted, (readonly [Entry, Mention])[]>();
  for (const entry of mentions) {
    // Most records name nothing but a lot that is there.
    if (isLot && isEventKeyword(entry.record.keyword) && !hasReference(entry.record)) continue;
    for (const mention of mentionsOf(entry.record)) {
      if (mention.id !== id || mention.role === 'definition' || entry.record.unread.includes(mention.written)) continue;
      const wanted = wantedBy(entry.record, mention);
      if (wanted.kinds.some(kind => defined.has(kind))) continue;
      const uses = missing.get(wanted) ?? [];
      missing.set(wanted, uses);
      uses.push([entry, mention]);
    }
  }
  for (const [wanted, uses] of missing) {
    for (const use of onceAFile(uses)) {
      const { record } = use.entry;
      const own = isDefining(record.keyword) ? subjectIdOf(record) : undefined;
      yield unknown(use, wanted, meantBy(id, wanted, own, journal), otherKind(id, wanted, journal));
    }
  }
};

function wantedBy({ keyword, facts }: JournalRecord, { role, written }: Mention): Wanted {
  if (keyword === 'left') return bottleOrPacket;
  if (role === 'subject') return keywords[keyword].subject === 'any' && !written.text.includes('/') ? anything : lot;
  switch (keyword) {
    case 'lot': return lot;
    case 'sow': return regime;
    case 'dilute': return stock;
    // A stock is made from powder of an agent, not from another stock.
    case 'stock': return facts.some(fact => fact.type === 'draw' && fact.stock === written) ? packet : agent;
    case 'powder': case 'guide': return agent;
    default: return agentOrStock;
  }
}

/** What was probably meant. A record does not mean what it defines itself. */
function meantBy(id: string, { code, kinds }: Wanted, own: string | undefined, journal: Journal): string | undefined {
  const known = namesNear(id, journal.definedIds())
    .filter(other => other !== own && isLike(other, id) && kinds.includes(journal.kindOf(other)!));
  if (code !== 'unknown-agent') return nearest(id, known);
  return wordFor(id, journal.agents) ?? nearest(id, [...known, ...builtInAgents.keys()]);
}

function unknown(
  { entry: { line, record }, named: { id, written }, more }: Use<Mention>, { code }: Wanted, near: string | undefined,
  other: string | undefined,
): Found {
  const word = code === 'unknown-agent' ? written.text : rootOf(written.text);
  const span = { start: written.start, end: written.start + word.length };
  const suggestion = near ? `Did you mean “${near}”?` : other ?? definition(code, id, record.keyword);
  return found(line, code, span, { id, word: id, more: usedBy(more), suggestion },
    { fixes: near ? [replacement(span, near)] : [] });
}

/**
 * A word that is much longer or shorter is no slip, and there can be thousands of them. Of names as short as `G1` and
 * `G2`, one is not a slip of the other: only another case is.
 */
function isLike(known: string, id: string): boolean {
  if (id.length < 3) return known.toLowerCase() === id.toLowerCase();
  return Math.abs(known.length - id.length) <= Math.max(2, id.length / 3);
}

/** A packet where a liquid is wanted, or a liquid where powder is. */
function otherKind(id: string, { code }: Wanted, journal: Journal): string | undefined {
  const kind = journal.kindOf(id);
  if (code === 'unknown-stock' && kind === 'powder') return `${id} is a packet of powder: write the “stock” that you made from it, and dilute that.`;
  const isLiquid = kind === 'stock' || kind === 'dilute';
  return code === 'unknown-packet' && isLiquid ? `${id} is a solution: for a weaker one, write “dilute”.` : undefined;
}

function definition(code: ProblemCode, id: string, keyword: Keyword): string {
  switch (code) {
    case 'unknown-regime': return `Define it, such as: regime ${id}, warm 20 C 60 days, chill 4 C 90 days.`;
    case 'unknown-packet': return `Define it, such as: powder ${id} 2025-11-02, GA3 1 g, purity 90 %.`;
    case 'unknown-stock': return `Define it, such as: stock ${id} 2026-01-09, GA3 20 mg, 20 mL.`;
    case 'unknown-agent': {
      const declare = `Declare it with “agent ${id}”`;
      return keyword === 'stock' || keyword === 'powder' || keyword === 'guide' ? `${declare}.` : `${declare}, or define a stock of that name.`;
    }
    default: return `Define it, such as: lot ${id} Primula vialii, 60 seeds.`;
  }
}
