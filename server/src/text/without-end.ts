/**
 * `text` without the characters at its end that stand in `signs`. Looks at each of these once: `/[signs]+$/` would
 * begin anew at every sign of a run that does not end the text, and a long run would hold the program up.
 *
 * Example: withoutEnd('potted?!', '?!') is 'potted'
 */
export function withoutEnd(text: string, signs: string): string {
  let end = text.length;
  while (end > 0 && signs.includes(text[end - 1]!)) end--;
  return text.slice(0, end);
}
