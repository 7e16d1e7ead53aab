import type { Picture } from './picture.ts';

/** A picture as an address that holds all of it, as editors take it within a text. */
export function addressOf({ svg }: Picture): string {
  let bytes = '';
  for (const byte of new TextEncoder().encode(svg.markup)) bytes += String.fromCharCode(byte);
  return `data:image/svg+xml;base64,${btoa(bytes)}`;
}
