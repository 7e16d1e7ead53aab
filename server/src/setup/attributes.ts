/** The line of `.gitattributes` that hands journals over to Plumule. */

export const ATTRIBUTES = '*.germ merge=plumule diff=plumule';

/** The text with the line, once. */
export function withAttributes(text: string | undefined): string {
  if (text === undefined || text === '') return `${ATTRIBUTES}\n`;
  if (linesOf(text).includes(ATTRIBUTES)) return text;
  const end = text.includes('\r\n') ? '\r\n' : '\n';
  return `${text}${/[\r\n]$/.test(text) ? '' : end}${ATTRIBUTES}${end}`;
}

/** The text without the line; undefined where nothing else is in it. */
export function withoutAttributes(text: string | undefined): string | undefined {
  if (text === undefined || !linesOf(text).includes(ATTRIBUTES)) return text;
  const rest = text.split(/(?<=\n)/).filter(line => line.trim() !== ATTRIBUTES).join('');
  return rest === '' ? undefined : rest;
}

function linesOf(text: string): string[] {
  return text.split('\n').map(line => line.trim());
}
