/** What changed since somebody asked last. */
export interface Touched {
  /** Things whose facts may have changed. */
  readonly ids: ReadonlySet<string>;
  /** Something changed that holds for every thing. */
  readonly all: boolean;
  /** A record that means something for the whole journal came, went or changed. */
  readonly common: boolean;
  /** A definition came, went or changed. */
  readonly definitions: boolean;
  /** Files that came, went or were edited. */
  readonly files: ReadonlySet<string>;
  /** Those in which lines have other numbers now. */
  readonly renumbered: ReadonlySet<string>;
}

type Draft = { -readonly [Key in keyof Touched]: Touched[Key] extends boolean ? boolean : Set<string> };

function nothing(): Draft {
  return { ids: new Set(), all: false, common: false, definitions: false, files: new Set(), renumbered: new Set() };
}

/** Notes what is touched for all who ask, each of whom asks when it needs to know. */
export class TouchLog {
  readonly #drafts: Draft[] = [];

  /** To who asks first everything is new; `files` are those that are there. */
  follow(files: Iterable<string>): () => Touched {
    const first = { ...nothing(), all: true, common: true, definitions: true, files: new Set(files) };
    const index = this.#drafts.push(first) - 1;
    return () => {
      const touched = this.#drafts[index]!;
      this.#drafts[index] = nothing();
      return touched;
    };
  }

  id(id: string): void {
    for (const { ids } of this.#drafts) ids.add(id);
  }

  file(name: string, isRenumbered: boolean): void {
    for (const { files, renumbered } of this.#drafts) {
      files.add(name);
      if (isRenumbered) renumbered.add(name);
    }
  }

  flag(flag: 'all' | 'common' | 'definitions'): void {
    for (const draft of this.#drafts) draft[flag] = true;
  }
}
