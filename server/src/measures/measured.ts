/**
 * A number that may be undefined, and then says why in plain words. An undefined number is never 0: reports
 * show a dash with the reason.
 *
 * @example
 * measured(7.15)                    // { value: 7.15 }
 * undefinedBecause('no counts yet') // { undefined: 'no counts yet' }
 */
export type Measured = Known | Undefined;

export interface Known {
  readonly value: number;
}

export interface Undefined {
  /** The reason, as the end of a sentence: 'nothing germinated'. */
  readonly undefined: string;
}

/** Two limits with everything between them; in the unit of the number they are about. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

export function measured(value: number): Known {
  return { value };
}

export function undefinedBecause(reason: string): Undefined {
  return { undefined: reason };
}

export function isUndefined(result: object): result is Undefined {
  return 'undefined' in result;
}

/**
 * A number made of another one; the reason is passed on when that is undefined.
 *
 * @example
 * derived(measured(8), mean => 1 / mean)                   // { value: 0.125 }
 * derived(undefinedBecause('no counts yet'), mean => mean) // { undefined: 'no counts yet' }
 */
export function derived(from: Measured, formula: (value: number) => number): Measured {
  return isUndefined(from) ? from : measured(formula(from.value));
}
