/** A text without the signs that a file system does not take. */
export function fileWord(text: string): string {
  return text.replace(/[^\p{L}\p{N}._-]/gu, '_');
}

/** Names of files that differ by more than capitals, as lots of several journals may have one id. */
export class FileNames {
  readonly #taken = new Set<string>();

  of(base: string): string {
    let [free, n] = [base, 2];
    while (this.#taken.has(free.toLowerCase())) free = `${base}-${n++}`;
    this.#taken.add(free.toLowerCase());
    return free;
  }
}
