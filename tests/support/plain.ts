/** What a journal says, as plain data to compare: lines by their places, agents and batches by their names. */
import type { ProblemBook } from '../../server/src/checks/problem-book.ts';
import type { Journal } from '../../server/src/journal/journal.ts';
import { Line } from '../../server/src/text/line-store.ts';

/** Lots, solutions and all that holds for the whole journal. */
export function plainJournal(journal: Journal): unknown {
  return {
    defined: journal.definedIds().map(id => `${id}: ${journal.kindOf(id) ?? ''}`),
    ids: [...journal.ids()].sort(),
    mentions: [...journal.ids()].sort().map(id => journal.mentionsOf(id).map(({ line }) => plain(line))),
    zone: journal.zone,
    agents: [...journal.agents.keys()].sort(),
    lots: [...journal.lots()].map(lot => ({
      lot: contentOf(lot), batches: [...lot.batches.values()].map(batch => contentOf(batch)),
    })),
    solutions: [...journal.solutions()].map(solution => plain(solution)),
  };
}

/** The problems of every file, with the places that they speak of. */
export function plainProblems(book: ProblemBook, files: Iterable<string>): Record<string, unknown> {
  return Object.fromEntries([...files].sort().map(name => [name, book.of(name).map(({ line, problem, related }) => ({
    at: `${line.number}:${problem.start}-${problem.end}`, code: problem.code, message: problem.message, fixes: problem.fixes,
    related: related.map(each => `${each.line.store.name}:${each.line.number}:${each.start}-${each.end} ${each.message}`),
  }))]));
}

/** Names that stand for a thing wherever another thing speaks of it. */
function nameOf(value: object): string | undefined {
  if (value instanceof Line) return `${value.store.name}:${value.number} ${value.text}`;
  if ('keywordSpan' in value) return 'record';
  if ('toFraction' in value && typeof value.toFraction === 'function') return (value.toFraction as () => string)();
  if ('word' in value && 'role' in value) return `agent ${String(value.word)}`;
  return 'path' in value && 'events' in value ? `batch ${String(value.path)}` : undefined;
}

function plain(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  const name = nameOf(value);
  if (name !== undefined) return name;
  if (Array.isArray(value)) return value.map((item: unknown) => plain(item));
  if (value instanceof Map) return [...value].map(([key, item]: [unknown, unknown]) => [key, plain(item)]);
  return contentOf(value);
}

function contentOf(value: object): unknown {
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, plain(item)]));
}
