/** Numbers of seeds in words. */
import { counted } from '../model/counted.ts';
import type { SeedRange } from '../model/estimate.ts';
import type { HowMany } from '../model/record.ts';

/**
 * How many seeds, as it was written.
 *
 * Example: '24 seeds', 'about 40 seeds', '30 to 40 seeds', 'half'
 */
export function howManyText(howMany: HowMany | undefined): string {
  const estimate = howMany?.estimate?.value;
  switch (estimate?.kind) {
    case 'about': return `about ${seedsText(estimate.n)}`;
    case 'between': return `${estimate.least} to ${seedsText(estimate.most)}`;
    case 'half': return 'half';
    case undefined: return seedsText(howMany?.n?.value);
  }
}

export function seedsText(seeds: number | undefined): string {
  return seeds === undefined ? '' : counted(seeds, 'seed');
}

/** Example: '24 seeds', '32 to 49 seeds' */
export function rangedSeedsText({ least, most }: SeedRange): string {
  return least === most ? seedsText(most) : `${least} to ${seedsText(most)}`;
}
