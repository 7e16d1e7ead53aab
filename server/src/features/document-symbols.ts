/** The outline of a file: headings as containers, lots with their batches below, stocks, regimes, agents, guides. */
import type { Journal } from '../journal/journal.ts';
import { fileName, type JournalLine } from '../journal/journal-file.ts';
import { rootOf } from '../journal/mentions.ts';
import type { Moment } from '../journal/moment.ts';
import { keywords } from '../model/keywords.ts';
import { factsOf, type JournalRecord, type Span } from '../model/record.ts';
import { headingsOf } from './headings.ts';
import type { Place } from './place.ts';
import { howManyText } from '../words/seeds.ts';
import { symbolNow, symbolOf, type SymbolText } from './symbols.ts';

export interface OutlineSymbol extends SymbolText {
  /** Its name where it is defined, or first used in this file. */
  readonly place: Place;
  /** The lines that belong to it, from 0, both included. */
  readonly lines: { readonly start: number; readonly end: number };
  readonly children: readonly OutlineSymbol[];
}

type Node = Omit<OutlineSymbol, 'children'> & { readonly children: Node[] };

/** An editor asks for the outline at every edit: in a file of more lots than this, none is judged for it. */
const MOST_JUDGED = 20;

/** A lot that other files define stands where this file first speaks of it. One pass over the file's lines. */
export function documentSymbols(journal: Journal, file: string, now: Moment): OutlineSymbol[] {
  const text = journal.files.get(file)?.text;
  if (!text) return [];
  const lines = text.lines();
  const isJudged = lines.filter(({ content: { record } }) => record?.keyword === 'lot').length <= MOST_JUDGED;
  const items: Node[] = [];
  /** Lots and batches of this file by path. */
  const batches = new Map<string, Node>();
  /** The first record about each lot, by the number of its line. */
  const uses = new Map<string, number>();
  /** Paths seen so far, most of which stand on many lines. */
  const seen = new Set<string>();
  for (let number = 0; number < lines.length; number++) {
    const { record } = lines[number]!.content;
    if (!record?.subject) continue;
    const { text: id } = record.subject;
    const symbol = symbolNow(journal, lines[number]!, now, isJudged);
    if (symbol) {
      const node = nodeOf(symbol, lines, number, record.subject);
      items.push(node);
      if (symbol.kind === 'lot' && !batches.has(id)) batches.set(id, node);
    } else if (isAboutLot(record)) {
      if (!seen.has(id)) {
        seen.add(id);
        const root = rootOf(id);
        if (!uses.has(root)) uses.set(root, number);
      }
      if (record.keyword === 'split') addParts(batches, lines, number, record);
    }
  }
  for (const [id, number] of uses) {
    const node = batches.has(id) ? undefined : usedHere(journal, lines, id, number);
    if (!node) continue;
    batches.set(id, node);
    items.push(node);
  }
  for (const [path, node] of batches) if (path.includes('/')) parentOf(path, batches)?.children.push(node);
  return underHeadings(lines, items);
}

function isAboutLot({ keyword }: JournalRecord): boolean {
  const kind = keywords[keyword].subject;
  return kind === 'batch' || kind === 'any';
}

function addParts(
  batches: Map<string, Node>, lines: readonly JournalLine[], number: number, record: JournalRecord,
): void {
  for (const part of factsOf(record, 'part')) {
    const { name } = part;
    const path = `${record.subject!.text}/${name.text}`;
    const symbol: SymbolText = { kind: 'batch', name: name.text, detail: howManyText(part) };
    if (!batches.has(path)) batches.set(path, nodeOf(symbol, lines, number, name));
  }
}

/** A lot that another file defines; undefined where none does. */
function usedHere(journal: Journal, lines: readonly JournalLine[], id: string, number: number): Node | undefined {
  const definition = journal.definitionsOf(id).find(entry => entry.record.keyword === 'lot');
  const symbol = definition && symbolOf(journal, definition.record);
  if (!symbol) return undefined;
  const { start } = lines[number]!.content.record!.subject!;
  const detail = `defined in ${fileName(definition.line.store.name)}`;
  return nodeOf({ ...symbol, detail }, lines, number, { start, end: start + id.length });
}

function nodeOf(
  { kind, name, detail }: SymbolText, lines: readonly JournalLine[], number: number, { start, end }: Span,
): Node {
  const line = lines[number]!;
  const { record } = line.content;
  const lot = record?.keyword === 'lot' ? record.subject?.text : undefined;
  let last = number;
  while (belongs(lines[last + 1], lot)) last++;
  const place = { file: line.store.name, line: number, start, end };
  return { kind, name, detail, place, lines: { start: number, end: last }, children: [] };
}

/** Remarks belong to the record above them, and to a lot the `split` records right below it. */
function belongs(line: JournalLine | undefined, lot: string | undefined): boolean {
  if (!line) return false;
  const { kind, record } = line.content;
  return kind === 'remark' || (lot !== undefined && record?.keyword === 'split' && rootOf(record.subject?.text ?? '') === lot);
}

/** The nearest of the batches it was split from that this file knows. */
function parentOf(path: string, batches: ReadonlyMap<string, Node>): Node | undefined {
  for (let up = path; up.includes('/');) {
    up = up.slice(0, up.lastIndexOf('/'));
    const parent = batches.get(up);
    if (parent) return parent;
  }
  return undefined;
}

function underHeadings(lines: readonly JournalLine[], items: readonly Node[]): Node[] {
  const headings = headingsOf(lines).map(({ line: number, end, title }): Node => {
    const line = lines[number]!;
    const start = line.text.indexOf(title);
    const place = { file: line.store.name, line: number, start, end: start + title.length };
    return { kind: 'heading', name: title, detail: '', place, lines: { start: number, end }, children: [] };
  });
  const top: Node[] = [];
  const open: Node[] = [];
  for (const node of [...headings, ...items].sort((a, b) => a.place.line - b.place.line)) {
    while (open.length > 0 && open.at(-1)!.lines.end < node.place.line) open.pop();
    (open.at(-1)?.children ?? top).push(node);
    if (node.kind === 'heading') open.push(node);
  }
  return top;
}
