/** How wide a text will be, without a browser to ask: on the safe side for the usual sans serif fonts. */

/** Shares of the size of the type. Measured in Chromium with DejaVu Sans, which is wider than most. */
const NARROW = /[\s.,:;'’|!iljft()[\]/·-]/u;
const WIDE = /[mwMW%@—…]/u;
const CAPITAL = /[A-Z]/u;
/** The least share that a character has. */
const LEAST = 0.42;
const ELLIPSIS = '…';
/** How much wider bold type is. */
export const BOLD = 1.14;

/**
 * An upper limit in pixels.
 *
 * @example
 * textWidth('GA3 500 ppm', 12) // 86.4
 */
export function textWidth(text: string, size: number, weight?: 'bold'): number {
  let width = 0;
  for (const character of text) width += size * shareOf(character);
  return weight === 'bold' ? BOLD * width : width;
}

function shareOf(character: string): number {
  if (NARROW.test(character)) return LEAST;
  if (WIDE.test(character)) return 1.02;
  if (CAPITAL.test(character)) return 0.72;
  return character.codePointAt(0)! < 0x2000 ? 0.65 : 1.35;
}

/**
 * The text, or its beginning with an ellipsis where it would be wider than so many pixels. Of a number all or nothing
 * is left: a part of it is another number.
 */
export function fitText(text: string, size: number, width: number, weight?: 'bold'): string {
  return fitted(text, (characters, kept) => {
    const cut = characters.slice(0, kept).join('');
    const isInNumber = /^[.,]?\d/u.test(characters.slice(kept, kept + 2).join(''));
    return (isInNumber ? cut.replace(/\d[\d.,]*$/u, '') : cut).trimEnd() + ELLIPSIS;
  }, { size, width, weight });
}

/** The text, or its beginning and its end with an ellipsis between them: names differ at their end. */
export function fitMiddle(text: string, size: number, width: number, weight?: 'bold'): string {
  return fitted(text, (characters, kept) => {
    const before = characters.slice(0, Math.ceil(kept / 2)).join('').trimEnd();
    return before + ELLIPSIS + characters.slice(characters.length - Math.floor(kept / 2)).join('').trimStart();
  }, { size, width, weight });
}

interface Room {
  readonly size: number;
  readonly width: number;
  readonly weight: 'bold' | undefined;
}

/** As many characters as there is room for; empty where there is none for one. */
function fitted(
  text: string, cutTo: (characters: readonly string[], kept: number) => string, { size, width, weight }: Room,
): string {
  if (textWidth(text, size, weight) <= width) return text;
  const characters = Array.from(text);
  // Not one by one from the end of a name of thousands of characters: none is narrower than this.
  for (let kept = Math.min(characters.length - 1, Math.floor(width / (LEAST * size))); kept > 0; kept--) {
    const cut = cutTo(characters, kept);
    if (textWidth(cut, size, weight) <= width) return cut;
  }
  return '';
}

/** Lines no wider than so many pixels, broken between words; the last of `most` lines ends with an ellipsis. */
export function wrapText(text: string, size: number, width: number, most: number): string[] {
  const lines: string[] = [];
  let rest = text.split(/\s+/u).filter(word => word !== '');
  while (rest.length > 0 && lines.length < most) {
    if (lines.length === most - 1) {
      lines.push(fitText(rest.join(' '), size, width));
      break;
    }
    let count = 1;
    while (count < rest.length && textWidth(rest.slice(0, count + 1).join(' '), size) <= width) count++;
    lines.push(fitText(rest.slice(0, count).join(' '), size, width));
    rest = rest.slice(count);
  }
  return lines;
}
