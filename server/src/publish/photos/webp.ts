/**
 * A WebP with nothing but the picture.
 * Source, from memory: RFC 9649, section 2: chunks in a RIFF container.
 */
import { ascii, bytesOf, joined, NotAPicture, stands, taken } from './bytes.ts';
import { onlyOrientation, orientationIn } from './orientation.ts';

const HEAD = 12;
const PICTURES = ['VP8 ', 'VP8L', 'ANMF'];
const KEPT = [...PICTURES, 'VP8X', 'ALPH', 'ANIM', 'ICCP'];
/** Bits of VP8X that say which kinds of metadata follow. */
const HAS_EXIF = 0x08;
const HAS_XMP = 0x04;

export function bareWebp(all: Uint8Array): Uint8Array {
  const bytes = bytesOf(all);
  taken(bytes, 0, HEAD);
  const end = taken(bytes, 0, bytes.view.getUint32(4, true) + 8).length;
  const kept: Uint8Array[] = [];
  let orientation: number | undefined;
  for (let at = HEAD; at < end;) {
    taken(bytes, at, 8);
    const size = bytes.view.getUint32(at + 4, true);
    // A chunk of an odd size is filled up.
    const chunk = taken(bytes, at, 8 + size + (size % 2));
    // Some programs begin it as in a JPEG.
    if (stands(bytes, at, 'EXIF')) orientation ??= orientationIn(chunk.subarray(stands(bytes, at + 8, 'Exif\0\0') ? 14 : 8));
    if (KEPT.some(type => stands(bytes, at, type))) kept.push(stands(bytes, at, 'VP8X') ? chunk.slice() : chunk);
    at += chunk.length;
  }
  if (!kept.some(chunk => PICTURES.some(type => stands(bytesOf(chunk), 0, type)))) throw new NotAPicture();
  const head = kept.find(chunk => stands(bytesOf(chunk), 0, 'VP8X'));
  if (head) head[8] = (head[8]! & ~(HAS_EXIF | HAS_XMP)) | (orientation === undefined ? 0 : HAS_EXIF);
  if (head && orientation !== undefined) kept.push(chunkOf('EXIF', onlyOrientation(orientation)));
  return chunkOf('RIFF', joined([ascii('WEBP'), ...kept]));
}

function chunkOf(type: string, content: Uint8Array): Uint8Array {
  const size = new Uint8Array(4);
  new DataView(size.buffer).setUint32(0, content.length, true);
  return joined([ascii(type), size, content]);
}
