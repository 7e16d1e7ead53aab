/** What the editor's settings say of limits; undefined where they say nothing. */
export interface LimitSettings {
  readonly soakHours?: number | undefined;
  /** Agent to strength as written: `1000 ppm`. */
  readonly strengths?: Readonly<Record<string, string>> | undefined;
  readonly stockYears?: number | undefined;
  readonly countDays?: number | undefined;
}
