/** Which lines name which things. */
import { factOf, type JournalRecord } from '../model/record.ts';
import { inJournalOrder, type JournalLine } from './journal-file.ts';
import { forEachMention } from './mentions.ts';

const none: ReadonlySet<JournalLine> = new Set();

export class NameIndex {
  readonly #mentions = new Map<string, Set<JournalLine>>();
  readonly #definitions = new Map<string, Set<JournalLine>>();
  /** By packet the lines that make a stock of a part of what was left in it. */
  readonly #halvings = new Map<string, Set<JournalLine>>();
  #inOrder: readonly string[] | undefined;

  add(line: JournalLine): void {
    const { record } = line.content;
    if (!record) return;
    forEachMention(record, (id, role) => {
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
    if (!record) return;
    forEachMention(record, (id, role) => {
      take(this.#mentions, id, line);
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
