/** Runs work at the next turn of the loop. */
export type Later = (work: () => void) => void;

/**
 * Turns of the loop in which a message that waits is read, understood and answered, and what was sent is on its way.
 * Where nothing waits they take next to no time.
 */
export const ROUND_TRIP = 5;

/** Runs work after so many turns of the loop. */
export function afterTurns(later: Later, turns: number, work: () => void): void {
  later(() => (turns > 1 ? afterTurns(later, turns - 1, work) : work()));
}
