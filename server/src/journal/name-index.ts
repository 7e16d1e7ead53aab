/** Which lines name which things. */
import { factOf, type JournalRecord } from '../model/record.ts';
import { inJournalOrder, type JournalLine } from './journal-file.ts';
import { forEachMention, rootOf } from './mentions.ts';
import { namesInUnread } from './unread-names.ts';

const none: ReadonlySet<JournalLine> = new Set();
const noIds: readonly string[] = [];

export class NameIndex {
  readonly #mentions = new Map<string, Set<JournalLine>>();
  readonly #definitions = new Map<string, Set<JournalLine>>();
  /** By packet the lines that make a stock of a part of what was left in it. */
  readonly #halvings = new Map<string, Set<JournalLine>>();
  /** By lot the lines that could not be read and name it or a batch of it; other words stand among them. */
  readonly #unread = new Map<string, Set<JournalLine>>();
  /** By an id in small letters all that are named and differ in no more than that. */
  readonly #spellings = new Map<string, string[]>();
  /** How many ids differ in no more than that from one before. */
  #alike = 0;
  #inOrder: readonly string[] | undefined;

  add(line: JournalLine): void {
    const { record } = line.content;
    for (const name of namesInUnread(line)) put(this.#unread, rootOf(name), line);
    if (!record) return;
    forEachMention(record, (id, role) => {
      if (!this.#mentions.has(id)) this.#spell(id);
      put(this.#mentions, id, line);
      if (role === 'definition') {
        put(this.#definitions, id, line);
        this.#inOrder = undefined;
      }
    });
    const packet = packetHalvedBy(record);
    if (packet !== undefined) put(this.#halvings, packet, line);
  }

  delete(line: JournalLine): void {
    const { record } = line.content;
    for (const name of namesInUnread(line)) take(this.#unread, rootOf(name), line);
    if (!record) return;
    forEachMention(record, (id, role) => {
      take(this.#mentions, id, line);
      if (!this.#mentions.has(id)) this.#unspell(id);
      if (role === 'definition') {
        take(this.#definitions, id, line);
        this.#inOrder = undefined;
      }
    });
    const packet = packetHalvedBy(record);
    if (packet !== undefined) take(this.#halvings, packet, line);
  }

  mentions(id: string): ReadonlySet<JournalLine> {
    return this.#mentions.get(id) ?? none;
  }

  definitions(id: string): ReadonlySet<JournalLine> {
    return this.#definitions.get(id) ?? none;
  }

  unread(id: string): ReadonlySet<JournalLine> {
    return this.#unread.get(id) ?? none;
  }

  /** Whether any two ids differ in capitals only: most journals have none, and it is asked of every record. */
  get hasAlike(): boolean {
    return this.#alike > 0;
  }

  /** Other ids that differ from one in capitals only. */
  likeInLetters(id: string): readonly string[] {
    if (!this.hasAlike) return noIds;
    return this.#spellings.get(id.toLowerCase())?.filter(other => other !== id) ?? noIds;
  }

  #spell(id: string): void {
    const key = id.toLowerCase();
    const same = this.#spellings.get(key);
    if (same) {
      this.#alike++;
      same.push(id);
    } else this.#spellings.set(key, [id]);
  }

  #unspell(id: string): void {
    const key = id.toLowerCase();
    const others = this.#spellings.get(key)?.filter(other => other !== id) ?? [];
    if (others.length > 0) {
      this.#alike--;
      this.#spellings.set(key, others);
    } else this.#spellings.delete(key);
  }

  /** Whether some stock was made of a part of what was left in a packet. */
  isHalved(packet: string): boolean {
    return this.#halvings.has(packet);
  }

  /** Every id that some record names, in no order. */
  ids(): Iterable<string> {
    return this.#mentions.keys();
  }

  /** The ids that some record defines, in the order of their first definitions. */
  definedIds(): readonly string[] {
    if (this.#inOrder) return this.#inOrder;
    const ids = new Map<JournalLine, string>();
    for (const [id, lines] of this.#definitions) ids.set(inJournalOrder(lines)[0]!, id);
    this.#inOrder = inJournalOrder(ids.keys()).map(line => ids.get(line)!);
    return this.#inOrder;
  }
}

function packetHalvedBy(record: JournalRecord): string | undefined {
  const draw = factOf(record, 'draw');
  return draw?.halved && draw.stock.text;
}

function put(index: Map<string, Set<JournalLine>>, id: string, line: JournalLine): void {
  const lines = index.get(id);
  if (lines) lines.add(line);
  else index.set(id, new Set([line]));
}

function take(index: Map<string, Set<JournalLine>>, id: string, line: JournalLine): void {
  const lines = index.get(id);
  lines?.delete(line);
  if (lines?.size === 0) index.delete(id);
}
