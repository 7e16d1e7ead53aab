/**
 * Long lists whose JSON is there already: they are neither made into objects nor written out once more. Only the
 * protocol’s library handles them on the way out, and looks into none.
 */
import type { Message } from './protocol.ts';

class KnownJson {
  readonly json: string | Uint8Array;

  constructor(json: string | Uint8Array) {
    this.json = json;
  }

  /** For whoever makes JSON of it in the usual way. */
  toJSON(): unknown {
    return JSON.parse(typeof this.json === 'string' ? this.json : new TextDecoder().decode(this.json));
  }
}

/** Where such a list may stand in a message: the problems of a file, and what it is coloured with. */
const places = [['params', 'diagnostics'], ['result', 'data']] as const;

type Members = Readonly<Record<string, unknown>>;

/** A list for a message, from its JSON. */
export function knownList<Item>(json: string | Uint8Array): Item[] {
  return new KnownJson(json) as unknown as Item[];
}

/** The bytes of a message. */
export function encode(message: Message): Uint8Array {
  const found = findIn(message);
  if (!found) return utf8(JSON.stringify(message));
  const { member, holder, list, known: { json } } = found;
  const before = `${opened(message, member)}${opened(holder, list)}`;
  if (typeof json === 'string') return utf8(`${before}${json}}}`);
  const head = utf8(before);
  const bytes = new Uint8Array(head.length + json.length + 2);
  bytes.set(head);
  bytes.set(json, head.length);
  bytes.fill(CLOSE, -2);
  return bytes;
}

/** The same message with a list of plain values, for who takes no bytes. */
export function plain(message: Message): Message {
  const found = findIn(message);
  if (!found) return message;
  const { member, holder, list, known } = found;
  return { ...message, [member]: { ...holder, [list]: known.toJSON() } };
}

/** } */
const CLOSE = 0x7d;

function findIn(message: Message) {
  for (const [member, list] of places) {
    const holder = (message as unknown as Members)[member];
    if (typeof holder !== 'object' || holder === null) continue;
    const known = (holder as Members)[list];
    if (known instanceof KnownJson) return { member, holder: holder as Members, list, known };
  }
  return undefined;
}

/** The JSON of an object with one member last, up to the value of that. */
function opened(members: Members, last: string): string {
  const others = JSON.stringify({ ...members, [last]: undefined }).slice(0, -1);
  return `${others}${others === '{' ? '' : ','}${JSON.stringify(last)}:`;
}

const encoder = new TextEncoder();

function utf8(text: string): Uint8Array {
  return encoder.encode(text);
}
