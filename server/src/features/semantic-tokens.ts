/**
 * Names coloured by what they mean in the whole journal, which a grammar of single lines cannot know. The types are
 * those that the grammar's scopes stand for in editors' themes, so that nothing changes its colour but what is closed
 * or not defined.
 */
import type { Journal } from '../journal/journal.ts';
import type { Lot } from '../journal/life.ts';
import { rootOf } from '../journal/mentions.ts';
import { keywords } from '../model/keywords.ts';
import type { Fact, JournalRecord, Span, Written } from '../model/record.ts';
import { builtInAgents } from '../solutions/agents.ts';
import { isLasting } from '../syntax/limits.ts';
import { closedPaths } from './closed-paths.ts';

/** `name`: a lot, a stock or a regime; `part`: a batch within its lot. */
export type TokenType = 'name' | 'part' | 'agent' | 'plant';

/**
 * `definition`: made known here; `builtIn`: needs no declaration; `closed`: nothing can come of it any more;
 * `unresolved`: nothing in the journal defines it.
 */
export type Mark = 'definition' | 'builtIn' | 'closed' | 'unresolved';

/** A token in its line. The marks are one of a few lists that all tokens share. */
export type SeeToken = (line: number, start: number, end: number, type: TokenType, marks: readonly Mark[]) => void;

/**
 * Shows the tokens of the lines from one to another, by default all, in the order in which they stand. None is an
 * object of its own: a large file has hundreds of thousands.
 */
export function forEachToken(journal: Journal, file: string, see: SeeToken, from = 0, to = Infinity): void {
  const text = journal.files.get(file)?.text;
  if (!text) return;
  const reader = new TokenReader(journal, see);
  text.forEach((line, number) => {
    const { record } = line.content;
    if (record) reader.read(record, number);
  }, from, to);
}

const plain: readonly Mark[] = [];
const definition: readonly Mark[] = ['definition'];
const builtIn: readonly Mark[] = ['builtIn'];
const closed: readonly Mark[] = ['closed'];
const closedDefinition: readonly Mark[] = ['definition', 'closed'];
const unresolved: readonly Mark[] = ['unresolved'];

/** One part of a path, with its slash. */
interface Part {
  readonly length: number;
  readonly marks: readonly Mark[];
}

class TokenReader {
  readonly #journal: Journal;
  readonly #see: SeeToken;
  readonly #paths = new Map<string, readonly Part[]>();
  #line = 0;
  /** Where the last token of the line ends. */
  #end = 0;

  constructor(journal: Journal, see: SeeToken) {
    this.#journal = journal;
    this.#see = see;
  }

  /** Shows the tokens of one line. */
  read(record: JournalRecord, line: number): void {
    this.#line = line;
    this.#end = 0;
    if (record.subject) this.#subject(record, record.subject);
    for (const fact of record.facts) this.#fact(record, fact);
  }

  #add(start: number, end: number, type: TokenType, marks: readonly Mark[]): void {
    if (end <= start || start < this.#end) return;
    this.#end = end;
    this.#see(this.#line, start, end, type, marks);
  }

  #name({ start, end }: Span, isKnown: boolean): void {
    this.#add(start, end, 'name', isKnown ? plain : unresolved);
  }

  #subject({ keyword, plant }: JournalRecord, subject: Written): void {
    const { start, end, text } = subject;
    switch (keywords[keyword].subject) {
      case 'batch': this.#path(subject); break;
      case 'new lot': {
        const lot = this.#journal.lot(text);
        const isClosed = lot !== undefined && closedPaths(lot).has(text);
        this.#add(start, end, 'name', isClosed ? closedDefinition : definition);
        if (plant) this.#add(plant.start, plant.end, 'plant', isClosed ? closed : plain);
        break;
      }
      case 'any': {
        if (text.includes('/') || this.#journal.lot(text)) this.#path(subject);
        else if (this.#journal.agents.has(text)) this.#agent(subject);
        else this.#name(subject, this.#journal.kindOf(text) !== undefined);
        break;
      }
      case 'new stock': case 'new packet': case 'new regime': this.#add(start, end, 'name', definition); break;
      case 'stock': this.#name(subject, this.#journal.solution(text) !== undefined); break;
      case 'new agent': this.#add(start, end, 'agent', definition); break;
      case 'limited': if (!isLasting(text)) this.#agent(subject); break;
      case 'plant': this.#add(start, end, 'plant', plain); break;
      default:
    }
  }

  #fact({ keyword }: JournalRecord, fact: Fact): void {
    switch (fact.type) {
      case 'part': this.#add(fact.name.start, fact.name.end, 'part', definition); break;
      case 'substance': {
        const { name } = fact;
        const isStock = keyword !== 'stock' && keyword !== 'powder' && !this.#journal.agents.has(name.text) && this.#journal.solution(name.text);
        if (isStock) this.#name(name, true);
        else this.#agent(name);
        break;
      }
      case 'draw': this.#name(fact.stock, this.#journal.solution(fact.stock.text) !== undefined); break;
      case 'regime': this.#name(fact.value, this.#journal.kindOf(fact.value.text) === 'regime'); break;
      case 'replaces': this.#path(fact.value); break;
      case 'for': this.#add(fact.value.start, fact.value.end, 'plant', plain); break;
      default:
    }
  }

  #agent({ text, start, end }: Written): void {
    const known = this.#journal.agents.has(text) ? plain : unresolved;
    this.#add(start, end, 'agent', builtInAgents.has(text) ? builtIn : known);
  }

  /** The lot, and each batch on the way to the one that is meant. */
  #path({ text, start }: Written): void {
    let parts = this.#paths.get(text);
    if (!parts) this.#paths.set(text, parts = partsOf(text, this.#journal.lot(rootOf(text))));
    let at = start;
    for (const { length, marks } of parts) {
      this.#add(at, at + length, at === start ? 'name' : 'part', marks);
      at += length + 1;
    }
  }
}

function partsOf(text: string, lot: Lot | undefined): Part[] {
  let path = '';
  return text.split('/').map(part => {
    path = path === '' ? part : `${path}/${part}`;
    const isClosed = lot !== undefined && closedPaths(lot).has(path);
    return { length: part.length, marks: lot?.batches.has(path) ? (isClosed ? closed : plain) : unresolved };
  });
}
