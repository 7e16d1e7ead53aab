/** Controls, and the marks that turn the direction of what follows: a journal must not steer the terminal. */
const UNPRINTABLE = /[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu;

/** Text from a journal, or a file's name, as one line for a terminal. */
export function printable(text: string): string {
  return text.replace(UNPRINTABLE, '\uFFFD');
}
