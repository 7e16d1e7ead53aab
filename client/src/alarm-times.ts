/** When a soak's alarm is to ring: plain arithmetic, apart from the editor. All times in ms since 1970-01-01T00:00Z. */

export interface Soak {
  readonly key: string;
  readonly end: number | undefined;
}

interface Past {
  readonly before?: boolean;
  readonly end?: boolean;
  /** When it is to ring again: asked for, or because nobody has answered yet. */
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
/** A clock is set right by this much without anybody's noticing. */
const CORRECTED = 60_000;

/**
 * The alarms to ring now: once a chosen time before the end, at the end, and again when that was asked for or nobody
 * answered. A soak whose end is not known to the minute has none.
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

/** Those that ring alike for one end in one journal are one alarm. */
export function together<S extends Soak & { readonly folder: string }>(rings: readonly Ring<S>[]): Ring<S>[][] {
  const alarms = new Map<string, Ring<S>[]>();
  for (const ring of rings) {
    const { soak: { folder, end }, kind, over, missed } = ring;
    const key = JSON.stringify([folder, end, kind, over, missed]);
    const alike = alarms.get(key);
    if (alike) alike.push(ring);
    else alarms.set(key, [ring]);
  }
  return [...alarms.values()];
}

/**
 * What still counts of what is remembered: what rang before its time, because the clock of the machine was ahead, rings
 * again when its time comes.
 */
export function stillRung(now: number, rung: Rung, soaks: readonly Soak[], lead: number): Rung {
  const next: Record<string, Past | undefined> = { ...rung };
  for (const { key, end: at } of soaks) {
    const past = rung[key];
    if (!past || at === undefined) continue;
    const { before, end, again } = past;
    const isEarly = now < at - CORRECTED;
    next[key] = {
      ...(before && now >= at - lead - CORRECTED && { before }), ...(end && !isEarly && { end }),
      ...(again !== undefined && !(end && isEarly) && { again }),
    };
  }
  return next;
}

/**
 * What is remembered after some rings: those at or after the end ring again after a time (ms) until somebody answers.
 * Soaks that run no longer are forgotten.
 */
export function afterRings<S extends Soak>(
  now: number, rung: Rung, rings: readonly Ring<S>[], soaks: readonly S[], time: number,
): Rung {
  const next: Record<string, Past> = {};
  for (const { key } of soaks) if (rung[key]) next[key] = rung[key];
  for (const { soak: { key }, over } of rings) {
    const end = over || next[key]?.end === true;
    next[key] = { before: true, ...(end && { end }), ...(over && { again: now + time }) };
  }
  return next;
}

/** What is remembered of a soak whose alarm was answered; `again`: when it is to ring again, if that was asked for. */
export function afterAnswer(rung: Rung, key: string, again?: number): Rung {
  const { before, end } = rung[key] ?? {};
  return {
    ...rung, [key]: { ...(before && { before }), ...(end && { end }), ...(again !== undefined && { again }) },
  };
}
