/** What drops on stuck seedlings came to, in words. */
import { limitsText, percent, pointsText, probability } from '../measures/verdict-words.ts';
import { listed } from '../syntax/nearest.ts';
import type { Share } from '../measures/difference.ts';
import type { DropsContest, DropsOutcome, DropsVerdict } from '../trials/drops.ts';
import { dosesText } from './soaks.ts';

const verdicts: Readonly<Record<DropsVerdict, string>> = {
  'helped': 'The drops helped',
  'harmed': 'The drops harmed',
  'no sign of a benefit': 'No sign that the drops helped',
  'too few to tell': 'Too few to tell',
  'cannot tell': 'Cannot tell',
};

/** Example: 'Drops of GA3 100 ppm (A) against no drops (B)' */
export function dropsTitle({ given, without }: DropsContest): string {
  const paths = (batches: DropsContest['given']['batches']) => listed(batches.map(({ path }) => path), 'and');
  const against = without ? ` against no drops (${paths(without.batches)})` : '';
  return `Drops of ${dosesText(given.drops!.doses)} (${paths(given.batches)})${against}`;
}

/** Example: 'The drops helped: 9 of 10 stuck seedlings were freed (90 %), and 2 of 10 without drops (20 %): ...' */
export function dropsTexts({ given, without, alsoDiffers, freed, alive, verdict }: DropsContest): string[] {
  const head = verdicts[verdict];
  const seen = `${shareText(given.freed)} stuck seedlings were freed`;
  if (!without) return [`Cannot tell: ${seen}, and no stuck seedling of this lot was left without drops.`];
  const why = alsoDiffers.length > 0 ? ` The sides also differ in: ${listed(alsoDiffers, 'and')}.` : '';
  return [
    `${head}: ${seen}, and ${shareText(without.freed)} without drops${differenceText(freed)}.${why}`,
    `Alive: ${shareText(given.alive)} seedlings, and ${shareText(without.alive)} without drops${differenceText(alive)}.`,
  ];
}

function shareText({ x, n }: Share): string {
  return n === 0 ? '0 of 0' : `${x} of ${n} (${percent(x / n)})`;
}

function differenceText(outcome: DropsOutcome | undefined): string {
  if (!outcome) return '';
  const { difference, more, fewer } = outcome;
  const side = difference.value < 0 ? `p ${probability(fewer)} that fewer` : `p ${probability(more)} that more`;
  const apart = difference.value === 0 ? 'no difference'
    : `${pointsText(Math.abs(difference.value))} ${difference.value < 0 ? 'fewer' : 'more'}`;
  return `: ${apart} (95 % interval ${limitsText(difference)}; Boschloo’s exact test, one-sided: ${side})`;
}
