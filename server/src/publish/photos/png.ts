/**
 * A PNG with nothing but the picture.
 * Source, from memory: W3C Portable Network Graphics (third edition), 5.3: a row of chunks.
 */
import { bytesOf, joined, stands, taken } from './bytes.ts';

const SIGNATURE = 8;
/** Length, type and checksum around the content. */
const AROUND = 12;

/** The picture, its frames if it moves, its colours and the shape of its dots: no texts, no times, no Exif. */
const KEPT = [
  'IHDR', 'PLTE', 'IDAT', 'IEND', 'acTL', 'fcTL', 'fdAT', 'tRNS', 'cHRM', 'gAMA', 'iCCP', 'sBIT', 'sRGB', 'cICP', 'mDCV', 'cLLI',
  'bKGD', 'hIST', 'pHYs',
];

export function barePng(all: Uint8Array): Uint8Array {
  const bytes = bytesOf(all);
  const kept = [taken(bytes, 0, SIGNATURE)];
  for (let at = SIGNATURE; ;) {
    taken(bytes, at, AROUND);
    const chunk = taken(bytes, at, bytes.view.getUint32(at) + AROUND);
    if (KEPT.some(type => stands(bytes, at + 4, type))) kept.push(chunk);
    if (stands(bytes, at + 4, 'IEND')) return joined(kept);
    at += chunk.length;
  }
}
