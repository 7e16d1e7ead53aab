/** Runs work at the next turn of the loop. */
export type Later = (work: () => void) => void;

/** Runs work after so many turns of the loop: what was sent before is on its way by then. */
export function afterTurns(later: Later, turns: number, work: () => void): void {
  later(() => (turns > 1 ? afterTurns(later, turns - 1, work) : work()));
}
