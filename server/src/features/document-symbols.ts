/** The outline of a file: headings as containers, lots with their batches below, stocks, regimes, agents, guides. */
import type { Journal } from '../journal/journal.ts';
import { fileName, type JournalLine } from '../journal/journal-file.ts';
import { rootOf } from '../journal/mentions.ts';
import { keywords } from '../model/keywords.ts';
import { factsOf, type Span } from '../model/record.ts';
import { headingsOf } from './headings.ts';
import type { Place } from './place.ts';
import { seedsText, symbolOf, type SymbolText } from './symbols.ts';

export interface OutlineSymbol extends SymbolText {
  /** Its name where it is defined, or first used in this file. */
  readonly place: Place;
  /** The lines that belong to it, from 0, both included. */
  readonly lines: { readonly start: number; readonly end: number };
  readonly children: readonly OutlineSymbol[];
}

type Node = Omit<OutlineSymbol, 'children'> & { readonly children: Node[] };

/** A lot that other files define stands where this file first speaks of it. One pass over the file's lines. */
export function documentSymbols(journal: Journal, file: string): OutlineSymbol[] {
  const text = journal.files.get(file)?.text;
  return text ? new Outline(journal, [...text]).build() : [];
}

class Outline {
  readonly #journal: Journal;
  readonly #lines: readonly JournalLine[];
  /** Lots and batches of this file by path. */
  readonly #batches = new Map<string, Node>();
  /** What stands below headings, or at the top. */
  readonly #items: Node[] = [];

  constructor(journal: Journal, lines: readonly JournalLine[]) {
    this.#journal = journal;
    this.#lines = lines;
  }

  build(): OutlineSymbol[] {
    this.#lines.forEach((_, number) => this.#define(number));
    this.#lines.forEach((line, number) => this.#use(line, number));
    for (const [path, node] of this.#batches) {
      if (path.includes('/')) this.#parentOf(path)?.children.push(node);
    }
    return this.#underHeadings();
  }

  #define(number: number): void {
    const line = this.#lines[number]!;
    const { record } = line.content;
    if (!record?.subject) return;
    const symbol = symbolOf(this.#journal, record);
    if (symbol) {
      const node = this.#node(symbol, line, record.subject, number);
      this.#items.push(node);
      if (symbol.kind === 'lot' && !this.#batches.has(record.subject.text)) this.#batches.set(record.subject.text, node);
    }
    if (record.keyword !== 'split') return;
    for (const { name, n } of factsOf(record, 'part')) {
      const path = `${record.subject.text}/${name.text}`;
      if (this.#batches.has(path)) continue;
      this.#batches.set(path, this.#node({ kind: 'batch', name: name.text, detail: seedsText(n.value) }, line, name, number));
    }
  }

  /** A record of a lot that another file defines. */
  #use(line: JournalLine, number: number): void {
    const { record } = line.content;
    if (!record?.subject) return;
    const kind = keywords[record.keyword].subject;
    const id = rootOf(record.subject.text);
    if ((kind !== 'batch' && kind !== 'any') || this.#batches.has(id)) return;
    const definition = this.#journal.definitionsOf(id).find(entry => entry.record.keyword === 'lot');
    const symbol = definition && symbolOf(this.#journal, definition.record);
    if (!symbol) return;
    const { start } = record.subject;
    const detail = `defined in ${fileName(definition.line.store.name)}`;
    const node = this.#node({ ...symbol, detail }, line, { start, end: start + id.length }, number);
    this.#batches.set(id, node);
    this.#items.push(node);
  }

  #node(symbol: SymbolText, line: JournalLine, span: Span, number: number): Node {
    const id = line.content.record?.keyword === 'lot' ? line.content.record.subject?.text : undefined;
    let end = number;
    while (this.#belongs(end + 1, id)) end++;
    const place = { file: line.store.name, line: number, start: span.start, end: span.end };
    return { ...symbol, place, lines: { start: number, end }, children: [] };
  }

  /** Remarks belong to the record above them, and to a lot the `split` records right below it. */
  #belongs(number: number, lot: string | undefined): boolean {
    const content = this.#lines[number]?.content;
    if (!content) return false;
    const { record } = content;
    return content.kind === 'remark' || (lot !== undefined && record?.keyword === 'split' && rootOf(record.subject?.text ?? '') === lot);
  }

  /** The nearest of the batches it was split from that this file knows. */
  #parentOf(path: string): Node | undefined {
    for (let up = path; up.includes('/');) {
      up = up.slice(0, up.lastIndexOf('/'));
      const parent = this.#batches.get(up);
      if (parent) return parent;
    }
    return undefined;
  }

  #underHeadings(): Node[] {
    const headings = headingsOf(this.#lines).map(({ line: number, end, title }): Node => {
      const line = this.#lines[number]!;
      const start = line.text.indexOf(title);
      const place = { file: line.store.name, line: number, start, end: start + title.length };
      return { kind: 'heading', name: title, detail: '', place, lines: { start: number, end }, children: [] };
    });
    const top: Node[] = [];
    const open: Node[] = [];
    for (const node of [...headings, ...this.#items].sort((a, b) => a.place.line - b.place.line)) {
      while (open.length > 0 && open.at(-1)!.lines.end < node.place.line) open.pop();
      (open.at(-1)?.children ?? top).push(node);
      if (node.kind === 'heading') open.push(node);
    }
    return top;
  }
}
