/**
 * A GIF with nothing but the picture.
 * Source, from memory: CompuServe, Graphics Interchange Format 89a, sections 17 to 27.
 */
import { bytesOf, joined, NotAPicture, stands, taken, type Bytes } from './bytes.ts';

const HEAD = 13;
const [IMAGE, EXTENSION, END] = [0x2c, 0x21, 0x3b];
const CONTROL = 0xf9;
const APPLICATION = 0xff;

export function bareGif(all: Uint8Array): Uint8Array {
  const bytes = bytesOf(all);
  let at = HEAD + coloursSize(taken(bytes, 0, HEAD)[10]!);
  const kept = [taken(bytes, 0, at)];
  for (;;) {
    const start = at;
    const [kind] = taken(bytes, at, 1);
    if (kind === END) return joined([...kept, Uint8Array.of(END)]);
    if (kind === IMAGE) {
      at = blocksEnd(bytes, at + 11 + coloursSize(taken(bytes, at, 10)[9]!));
      kept.push(all.subarray(start, at));
    } else if (kind === EXTENSION) {
      const [label] = taken(bytes, at + 1, 1);
      at = blocksEnd(bytes, at + 2);
      // How long each picture shows and how often all of them: no comments, no XMP.
      const isKept = label === CONTROL || (label === APPLICATION && stands(bytes, start + 3, 'NETSCAPE2.0'));
      if (isKept) kept.push(all.subarray(start, at));
    } else {
      throw new NotAPicture();
    }
  }
}

/** Bytes of the table of colours that the flags announce. */
function coloursSize(flags: number): number {
  return flags & 0x80 ? 3 * 2 ** ((flags & 7) + 1) : 0;
}

/** Blocks begin with their length; one of length 0 ends them. */
function blocksEnd(bytes: Bytes, start: number): number {
  for (let at = start; ;) {
    const [length] = taken(bytes, at, 1);
    at += 1 + length!;
    if (length === 0) return at;
  }
}
