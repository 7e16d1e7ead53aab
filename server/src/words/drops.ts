/** What drops on stuck seedlings came to, in words. */
import { limitsText, percent, pointsText, probability } from '../measures/verdict-words.ts';
import { listed } from '../syntax/nearest.ts';
import { isUndefined } from '../measures/measured.ts';
import { isoOf } from '../model/day.ts';
import { rangeText } from '../model/estimate.ts';
import { isSure, type RangedShare } from '../trials/drops-watch.ts';
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

/** Example: 'The drops helped: 9 of 10 (90 %) stuck seedlings were freed, and 2 of 10 (20 %) without drops: ...' */
export function dropsTexts(contest: DropsContest): string[] {
  const { given, without, watch, alsoDiffers, isPartly, freed, alive, verdict } = contest;
  const head = verdicts[verdict];
  const seen = `${shareText(given.freed)} stuck seedlings were freed`;
  if (!without || !watch) return [`Cannot tell: ${seen}, and no stuck seedling of this lot was left without drops.`];
  const why = alsoDiffers.length > 0 ? ` The sides also differ in ${listed(alsoDiffers, 'and')}.` : '';
  if (isUndefined(watch)) return [`${head}: ${watch.undefined}.${why}`];
  const until = watch.isCut
    ? [`This is what the looks up to ${isoOf(watch.until)} found: on no later day were both sides looked at.`] : [];
  return [
    `${head}: ${seen}, and ${shareText(without.freed)} without drops${differenceText(freed)}.${why}`,
    isPartly ? 'How many stayed alive is not compared, because some seedlings of the side with drops were given none.'
      : aliveText(given.alive, without.alive, alive),
    ...until,
  ];
}

function aliveText(given: RangedShare, without: RangedShare, outcome: DropsOutcome | undefined): string {
  if (given.n.most === 0 || without.n.most === 0) return 'How many stayed alive is unknown, because no living seedling had been counted before the drops.';
  return `Still alive: ${shareText(given)} seedlings, and ${shareText(without)} without drops${differenceText(outcome)}.`;
}

/** Example: '9 of 10 (90 %)'; where the counts give only limits '9 of 10 to 12' */
function shareText(share: RangedShare): string {
  const { x, n } = share;
  const text = `${rangeText(x)} of ${rangeText(n)}`;
  return isSure(share) && n.most > 0 ? `${text} (${percent(x.most / n.most)})` : text;
}

function differenceText(outcome: DropsOutcome | undefined): string {
  if (!outcome?.difference) return '';
  const { difference, more, fewer } = outcome;
  const p = probability(difference.value < 0 ? fewer : more);
  const apart = difference.value === 0 ? 'no difference'
    : `${pointsText(Math.abs(difference.value))} ${difference.value < 0 ? 'fewer' : 'more'}`;
  return `: ${apart} (95 % interval ${limitsText(difference)}; one-sided p ${p} by Boschloo’s exact test)`;
}
