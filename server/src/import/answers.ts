/** What a grower may be asked about a sheet, or say at once. */

export const dateOrders = ['day-month', 'month-day'] as const;
export type DateOrder = (typeof dateOrders)[number];

export const countings = ['new', 'total'] as const;
export type Counting = (typeof countings)[number];

export const delimiters = [',', ';', '\t'] as const;
export type Delimiter = (typeof delimiters)[number];

export interface Answers {
  readonly dates?: DateOrder;
  /** For dates without a year. */
  readonly year?: number;
  /** Whether a number is what was new, or the total so far. */
  readonly counts?: Counting;
  /** The day of the week on which was counted, 1 to 7. */
  readonly weekDay?: number;
  /** Days from soak to sowing, where the sheet gives no day for the soak. */
  readonly soakedBefore?: number;
  /** An empty cell for lot, plant or date says the same as the one above. */
  readonly sameAsAbove?: boolean;
}
