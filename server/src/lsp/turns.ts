/** Runs work at the next turn of the loop. */
export type Later = (work: () => void) => void;

/** Turns of the loop after which what was sent is on its way. */
export const UNTIL_SENT = 5;

/** Runs work after so many turns of the loop. */
export function afterTurns(later: Later, turns: number, work: () => void): void {
  later(() => (turns > 1 ? afterTurns(later, turns - 1, work) : work()));
}
