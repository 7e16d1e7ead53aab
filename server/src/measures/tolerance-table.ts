/**
 * The widest range between replicates of 100 seeds that is still put down to chance, in percentage points, by
 * the average germination in percent. 7 CFR 201.55 (United States, Federal Seed Act regulations), its rows
 * for averages from 99 to 71 and their mirrors 2 to 30. The rows from 70 to 31 could not be read in the
 * source and are left out.
 *
 * Stored, not derived: no simple formula gives all of its rows.
 */
const ROWS: readonly (readonly [average: number, four: number, two?: number])[] = [
  [99, 5], [98, 6], [97, 7, 6], [96, 8, 6], [95, 9, 7], [94, 10, 8],
  [93, 10, 8], [92, 11, 9], [91, 11, 9], [90, 12, 9], [89, 12, 10], [88, 13, 10],
  [87, 13, 11], [86, 14, 11], [85, 14, 11], [84, 14, 11], [83, 15, 12], [82, 15, 12],
  [81, 15, 12], [80, 16, 13], [79, 16, 13], [78, 16, 13], [77, 17, 13], [76, 17, 13],
  [75, 17, 14], [74, 17, 14], [73, 17, 14], [72, 18, 14], [71, 18, 14],
];

/**
 * The published range for 4 or 2 replicates of 100 seeds, or nothing where the regulation's table has no row.
 *
 * @example
 * publishedRange(4, 86) // 14
 * publishedRange(4, 15) // 14, the same row: 101 - 86
 * publishedRange(2, 99) // undefined
 */
export function publishedRange(replicates: number, averagePercent: number): number | undefined {
  const average = Math.round(averagePercent);
  const row = ROWS.find(([percent]) => percent === average || 101 - percent === average);
  if (replicates === 4) return row?.[1];
  return replicates === 2 ? row?.[2] : undefined;
}
