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

export type TouchedDraft = { -readonly [Key in keyof Touched]: Touched[Key] extends boolean ? boolean : Set<string> };

export function nothingTouched(): TouchedDraft {
  return { ids: new Set(), all: false, common: false, definitions: false, files: new Set(), renumbered: new Set() };
}
