/** The bytes of a table as text, in the encodings that spreadsheets write. */

export interface DecodedTable {
  readonly text: string;
  readonly encoding: 'UTF-8' | 'UTF-16' | 'Windows-1252';
}

/** What the bytes 0x80 to 0x9F are in Windows-1252; blanks where it has none. Not every TextDecoder knows them. */
const HIGH = '€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ';

/**
 * UTF-8 and UTF-16 with or without a byte order mark, else Windows-1252. Gives the reason, as the end of a sentence,
 * where the bytes are none of these.
 */
export function decodeTable(bytes: Uint8Array): DecodedTable | { readonly fault: string } {
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) {
    return { fault: 'it is a workbook or an archive, not a table as text; save the sheet as CSV (UTF-8) and import that' };
  }
  const wide = wideEncodingOf(bytes);
  const text = decoded(bytes, wide ?? 'utf-8');
  if (text !== undefined && !text.includes('\0')) return { text, encoding: wide ? 'UTF-16' : 'UTF-8' };
  const narrow = wide ? undefined : windowsText(bytes);
  return narrow !== undefined ? { text: narrow, encoding: 'Windows-1252' }
    : { fault: 'it is not text in UTF-8, UTF-16 or Windows-1252; save the sheet as CSV (UTF-8)' };
}

/** By its mark, else by the zeros that every common letter has in UTF-16. */
function wideEncodingOf(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  if (first === 0 && second !== 0) return 'utf-16be';
  return first !== 0 && second === 0 ? 'utf-16le' : undefined;
}

function decoded(bytes: Uint8Array, encoding: string): string | undefined {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function windowsText(bytes: Uint8Array): string | undefined {
  let text = '';
  for (const byte of bytes) {
    const letter = byte >= 0x80 && byte < 0xa0 ? HIGH.charAt(byte - 0x80) : String.fromCharCode(byte);
    const isText = byte >= 0x80 ? letter !== ' ' : byte >= 0x20 || byte === 9 || byte === 10 || byte === 13;
    if (!isText) return undefined;
    text += letter;
  }
  return text;
}
