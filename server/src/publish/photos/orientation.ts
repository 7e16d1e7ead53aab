/**
 * Which way up a photo is. Without it a picture taken with an upright telephone lies on its side.
 * Source, from memory: Exif 2.32 (CIPA DC-008), section 4.6: a TIFF structure; tag 0x0112 of its first directory.
 */
import { ascii, bytesOf, stands } from './bytes.ts';

const TAG = 0x0112;
const SHORT = 3;
const UPRIGHT = 1;

/** 1 to 8; undefined where it is not said, or is what a viewer takes for granted. */
export function orientationIn(tiff: Uint8Array): number | undefined {
  const bytes = bytesOf(tiff);
  const { view } = bytes;
  const little = stands(bytes, 0, 'II');
  if (tiff.length < 8 || (!little && !stands(bytes, 0, 'MM'))) return undefined;
  const start = view.getUint32(4, little);
  if (start + 2 > tiff.length) return undefined;
  const entries = view.getUint16(start, little);
  for (let i = 0; i < entries; i++) {
    const at = start + 2 + 12 * i;
    if (at + 12 > tiff.length) return undefined;
    if (view.getUint16(at, little) !== TAG || view.getUint16(at + 2, little) !== SHORT) continue;
    const value = view.getUint16(at + 8, little);
    return value > UPRIGHT && value <= 8 ? value : undefined;
  }
  return undefined;
}

/** A TIFF structure that says which way up a photo is, and nothing else. */
export function onlyOrientation(value: number): Uint8Array {
  const header = [...ascii('MM'), 0, 42, 0, 0, 0, 8];
  const entry = [TAG >> 8, TAG & 255, 0, SHORT, 0, 0, 0, 1, 0, value, 0, 0];
  return Uint8Array.of(...header, 0, 1, ...entry, 0, 0, 0, 0);
}
