/** When a soak's alarm is to ring: plain arithmetic, apart from the editor. All times in ms since 1970-01-01T00:00Z. */

export interface Soak {
  readonly key: string;
  readonly end: number | undefined;
}

interface Past {
  readonly before?: boolean;
  readonly end?: boolean;
  /** When it was asked to ring again. */
  readonly again?: number;
}

/** What has rung or been put off, by soak; kept over a restart. */
export type Rung = Readonly<Partial<Record<string, Past>>>;

export interface Ring<S extends Soak> {
  readonly soak: S;
  readonly kind: 'before' | 'end' | 'again';
  /** The end has come: the seed is to be out. */
  readonly over: boolean;
  /** The end passed while nobody was there to hear it. */
  readonly missed: boolean;
}

/** An end longer ago than this when it is first seen was missed. */
const MISSED = 2 * 60_000;

/**
 * The alarms to ring now: once a chosen time before the end, once at the end, and again when that was asked for. A soak
 * whose end is not known to the minute has none.
 */
export function ringsAt<S extends Soak>(now: number, soaks: readonly S[], rung: Rung, lead: number): Ring<S>[] {
  return soaks.flatMap((soak): Ring<S>[] => {
    const { end } = soak;
    if (end === undefined) return [];
    const past = rung[soak.key] ?? {};
    const over = now >= end;
    const missed = now - end > MISSED && past.end !== true;
    if (past.again !== undefined && now >= past.again) return [{ soak, kind: 'again', over, missed }];
    if (over && !past.end) return [{ soak, kind: 'end', over, missed }];
    if (now >= end - lead && !over && !past.before) return [{ soak, kind: 'before', over, missed }];
    return [];
  });
}

/** What is remembered after some rings; soaks that run no longer are forgotten. */
export function afterRings<S extends Soak>(rung: Rung, rings: readonly Ring<S>[], soaks: readonly S[]): Rung {
  const next: Record<string, Past> = {};
  for (const { key } of soaks) if (rung[key]) next[key] = rung[key];
  for (const { soak: { key }, over } of rings) {
    const end = over || next[key]?.end === true;
    next[key] = { before: true, ...(end && { end }) };
  }
  return next;
}
