/** How wide a text will be, without a browser to ask: on the safe side for the usual sans serif fonts. */

/** Shares of the size of the type. Measured in Chromium with DejaVu Sans, which is wider than most. */
const NARROW = /[\s.,:;'’|!iljft()[\]/·-]/u;
const WIDE = /[mwMW%@—…]/u;
const CAPITAL = /[A-Z]/u;
/** How much wider bold type is. */
const BOLD = 1.14;

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
  if (NARROW.test(character)) return 0.42;
  if (WIDE.test(character)) return 1.02;
  if (CAPITAL.test(character)) return 0.72;
  return character.codePointAt(0)! < 0x2000 ? 0.65 : 1.35;
}

/** The text, or its beginning with an ellipsis where it would be wider than so many pixels. */
export function fitText(text: string, size: number, width: number, weight?: 'bold'): string {
  if (textWidth(text, size, weight) <= width) return text;
  const characters = Array.from(text);
  while (characters.length > 0 && textWidth(`${characters.join('')}…`, size, weight) > width) characters.pop();
  return characters.length === 0 ? '' : `${characters.join('').trimEnd()}…`;
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
