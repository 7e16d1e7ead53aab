/**
 * A JPEG with nothing but the picture.
 * Source, from memory: ITU-T T.81 (JPEG), annex B: segments that begin with a marker; JFIF 1.02 for the segment APP0;
 * ICC.1, annex B.4, for colours in APP2.
 */
import { ascii, bytesOf, joined, NotAPicture, stands, taken } from './bytes.ts';
import { onlyOrientation, orientationIn } from './orientation.ts';

const START = Uint8Array.of(0xff, 0xd8);
const END = 0xd9;
const SCAN = 0xda;

/** Frames, Huffman and quantization tables, restarts, number of lines: what it takes to decode. */
const KEPT = [...range(0xc0, 0xcf), 0xdb, 0xdc, 0xdd];
const EXIF = 'Exif\0\0';

export function bareJpeg(all: Uint8Array): Uint8Array {
  const bytes = bytesOf(all);
  const kept: Uint8Array[] = [];
  let orientation: number | undefined;
  for (let at = START.length; ;) {
    const [mark, marker] = taken(bytes, at, 2);
    if (mark !== 0xff) throw new NotAPicture();
    // Any number of fill bytes may stand before a marker.
    if (marker === 0xff) {
      at++;
      continue;
    }
    // What stands behind the end, such as a second picture, is left out.
    if (marker === END) return joined([START, ...orientationSegment(orientation), ...kept, Uint8Array.of(0xff, END)]);
    const [high, low] = taken(bytes, at + 2, 2);
    const length = 256 * high! + low! + 2;
    const segment = taken(bytes, at, length);
    if (marker === SCAN) {
      const stop = scanEnd(all, at + length);
      kept.push(all.subarray(at, stop));
      at = stop;
      continue;
    }
    if (marker === 0xe1 && stands(bytes, at + 4, EXIF)) orientation ??= orientationIn(segment.subarray(10));
    kept.push(...keptOf(marker!, segment));
    at += length;
  }
}

function keptOf(marker: number, segment: Uint8Array): Uint8Array[] {
  const bytes = bytesOf(segment);
  if (KEPT.includes(marker)) return [segment];
  if (marker === 0xe0 && stands(bytes, 4, 'JFIF\0') && segment.length >= 18) return [withoutThumbnail(segment)];
  const isColour = (marker === 0xe2 && stands(bytes, 4, 'ICC_PROFILE\0')) || (marker === 0xee && stands(bytes, 4, 'Adobe'));
  return isColour ? [segment] : [];
}

/** A small picture in the head may show what was cut off the large one. */
function withoutThumbnail(segment: Uint8Array): Uint8Array {
  const head = segment.slice(0, 18);
  head.set([0, 16], 2);
  head.set([0, 0], 16);
  return head;
}

/** Where the next marker is that ends a scan: a byte 0xff in it is followed by 0, restarts stand within it. */
function scanEnd(all: Uint8Array, start: number): number {
  for (let at = start; at + 1 < all.length; at++) {
    const next = all[at + 1]!;
    if (all[at] === 0xff && next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  throw new NotAPicture();
}

function orientationSegment(value: number | undefined): Uint8Array[] {
  if (value === undefined) return [];
  const content = joined([ascii(EXIF), onlyOrientation(value)]);
  return [Uint8Array.of(0xff, 0xe1, 0, content.length + 2), content];
}

function range(first: number, last: number): number[] {
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}
