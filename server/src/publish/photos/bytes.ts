/** Small helps for reading the bytes of pictures. */

/** Thrown where a picture does not keep to its format; nobody can say then what else is in it. */
export class NotAPicture extends Error {}

export interface Bytes {
  readonly all: Uint8Array;
  readonly view: DataView;
}

export function bytesOf(all: Uint8Array): Bytes {
  return { all, view: new DataView(all.buffer, all.byteOffset, all.byteLength) };
}

/** The bytes from `start` on. Throws NotAPicture where there are fewer. */
export function taken({ all }: Bytes, start: number, length: number): Uint8Array {
  if (start + length > all.length) throw new NotAPicture();
  return all.subarray(start, start + length);
}

/** Whether a text of ASCII stands at a place. */
export function stands({ all }: Bytes, start: number, text: string): boolean {
  return Array.from(text).every((sign, i) => all[start + i] === sign.charCodeAt(0));
}

export function ascii(text: string): Uint8Array {
  return Uint8Array.from(text, sign => sign.charCodeAt(0));
}

export function joined(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
