import { DiskFault } from './fault.ts';

/** UTF-8 bytes as text, without a byte order mark. Throws a DiskFault that names the first byte that is no UTF-8. */
export function decode(path: string, bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (cause) {
    throw new DiskFault(path, faultIn(bytes), false, { cause });
  }
}

function faultIn(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
    return 'it is UTF-16, not UTF-8; save it as UTF-8';
  }
  const offset = firstFault(bytes);
  const line = bytes.subarray(0, offset).filter(byte => byte === 10).length + 1;
  const byte = bytes[offset]?.toString(16).toUpperCase().padStart(2, '0') ?? '';
  return `it is not UTF-8: byte 0x${byte} at offset ${offset}, in line ${line}; save it as UTF-8`;
}

const REPLACEMENT = '\uFFFD';
const REPLACEMENT_BYTES = 3;

/** Offset of the first byte that a decoder must replace; U+FFFD itself may stand in a text and is none. */
function firstFault(bytes: Uint8Array): number {
  const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
  let offset = 0;
  let from = 0;
  for (let at = text.indexOf(REPLACEMENT); at >= 0; at = text.indexOf(REPLACEMENT, from)) {
    offset += Buffer.byteLength(text.slice(from, at));
    const written = Buffer.from(bytes.subarray(offset, offset + REPLACEMENT_BYTES)).toString('hex') === 'efbfbd';
    if (!written) break;
    offset += REPLACEMENT_BYTES;
    from = at + 1;
  }
  return offset;
}
