/** Markdown made of journal text, which nobody has vetted: it comes out as the characters written, and nothing else. */

/** Line ends, other blanks and controls, and the marks that turn the direction of what follows. */
const blanks = /[\s\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]+/gu;

/**
 * Journal text as inline Markdown of one line: no link, no HTML, no code, no table cell comes of it. Rows of blanks
 * become one.
 *
 * Example: escapeMarkdown('[x](command:y)') is '\\[x\\](command:y)'
 */
export function escapeMarkdown(text: string): string {
  return text
    .replace(blanks, ' ')
    .trim()
    .replace(/[\\`*_[\]<>&~|$@]/g, String.raw`\$&`)
    // Bare addresses would become links.
    .replace(/:(?=\/\/)/g, String.raw`\:`)
    .replace(/(www)\./gi, String.raw`$1\.`)
    // At the start of a line these make headings, lists and rules.
    .replace(/^(?:#|[-+](?=\s|$|-)|=+$)/, String.raw`\$&`)
    .replace(/^(\d+)([.)])(?=\s|$)/, String.raw`$1\$2`);
}

/** A table; head and cells are Markdown of one line each, both aligned on the left. */
export function markdownTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(head), `|${' :-- |'.repeat(head.length)}`, ...rows.map(line)].join('\n');
}

/** Blocks with an empty line between them; what is undefined is left out. */
export function markdownBlocks(blocks: readonly (string | undefined)[]): string {
  return blocks.filter(block => block !== undefined).join('\n\n');
}

export function markdownList(items: readonly string[]): string {
  return items.map(item => `- ${item}`).join('\n');
}
