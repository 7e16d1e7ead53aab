/** When V8, the engine of Node, turns code that runs often into fast machine code. */
import { setFlagsFromString } from 'node:v8';

/**
 * The flag that has a version of V8 compile later; undefined where none was tried, as in every Electron: a V8 that does
 * not let its flags change any more would end the program. The budget counts bytes of code that ran (67,584 as it
 * comes), the other counts calls (3,000 as it comes).
 */
export function lateCompiling(v8: string): string | undefined {
  const major = Number(/^(\d+)\..*-node\./.exec(v8)?.[1]);
  if (major === 11) return '--interrupt-budget=500000';
  return major >= 12 && major <= 14 ? '--invocation-count-for-turbofan=10000' : undefined;
}

/**
 * Has V8 compile later: to open a journal is to run much code a few times, and half of the processor's time went into
 * machine code that was hardly used. Measured in DEVELOPERS.md. V8 prints a line about a flag that it does not know,
 * and goes on.
 */
export function compileLate(): void {
  const flag = lateCompiling(process.versions.v8);
  if (flag !== undefined) setFlagsFromString(flag);
}
