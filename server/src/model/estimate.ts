/** Numbers of seeds that nobody counted: what was written, and what it allows. */

/** Whole numbers of seeds, both ends included. */
export interface SeedRange {
  readonly least: number;
  readonly most: number;
}

/** Example: '17', '15 to 19' */
export function rangeText({ least, most }: SeedRange): string {
  return least === most ? String(least) : `${least} to ${most}`;
}

/** `about 40 seeds`, `30 to 40 seeds`, or a half divided by eye, which depends on what there was to divide. */
export type Estimate =
  | ({ readonly kind: 'about'; readonly n: number } & SeedRange)
  | ({ readonly kind: 'between' } & SeedRange)
  | { readonly kind: 'half' };

/**
 * What `about` allows: a tenth either way, rounded outwards, as halving by eye does with a powder. Common practice, no
 * source.
 *
 * Example: aboutRange(40) is 36 to 44, aboutRange(5) is 4 to 6
 */
export function aboutRange(n: number): SeedRange {
  return { least: Math.floor((n * 9) / 10), most: Math.ceil((n * 11) / 10) };
}

/**
 * A half by eye, a tenth either way as well.
 *
 * Example: of 40 seeds 18 to 22
 */
export function halfRange(n: number): SeedRange {
  return { least: Math.floor((n * 9) / 20), most: Math.ceil((n * 11) / 20) };
}

/** Everything that numbers within these ranges can come to together. */
export function sumOfRanges(ranges: readonly SeedRange[]): SeedRange {
  const none = { least: 0, most: 0 };
  return ranges.reduce((sum, { least, most }) => ({ least: sum.least + least, most: sum.most + most }), none);
}
