/** What a suggestion writes: text, with blanks that the grower fills in. */

export interface Blank {
  /** What stands there until something else is written. */
  readonly blank: string;
  /** What it may be, the likeliest first. */
  readonly choices?: readonly string[];
  /** Blanks of one name are filled in together. */
  readonly name?: string;
}

export type Template = readonly (string | Blank)[];

/** The text with every blank as it stands first. */
export function plainText(template: Template): string {
  return template.map(part => (typeof part === 'string' ? part : part.blank)).join('');
}

/**
 * A text with its numbers as blanks; a number in a name is none.
 *
 * Example: withBlanks('GA3 20/10 C') is ['GA3 ', { blank: '20/10' }, ' C']
 */
export function withBlanks(text: string): Template {
  return text.split(/((?<![\p{L}\p{N}.-])\d+(?:[./]\d+)*)/u).filter(part => part !== '')
    .map(part => (/^\d/.test(part) ? { blank: part } : part));
}

/** A blank that can be one of several; the first of them stands there. `otherwise` where there is none. */
export function choice(choices: readonly string[], otherwise: string): Blank {
  return choices.length > 1 ? { blank: choices[0]!, choices } : { blank: choices[0] ?? otherwise };
}
