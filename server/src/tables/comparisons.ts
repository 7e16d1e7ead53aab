import { groupLabel } from '../words/trials.ts';
import type { Comparison } from '../measures/comparison.ts';
import type { Contrast } from '../measures/contrast.ts';
import { isUndefined } from '../measures/measured.ts';
import { RULES } from '../measures/verdict-rules.ts';
import type { Group } from '../trials/groups.ts';
import { trialOf, type Contest } from '../trials/lot-trial.ts';
import { isByEye, onlyDose } from '../trials/treatment.ts';
import type { Lot } from '../journal/life.ts';
import { plantColumns } from './lots.ts';
import { lotsOf } from './source.ts';
import { date, map, number, table, text, whole, word, yes, type Column } from './table.ts';

interface Compared {
  readonly lot: Lot;
  /** From 1, in the order of the report. */
  readonly number: number;
  readonly contest: Contest;
  readonly isEstimated: boolean;
}

/** The batches of a side, one behind the other: no path holds a blank. */
export function pathsOf({ batches }: Group): string {
  return batches.map(({ batch }) => batch.path).join(' ');
}

/** How much germinated on both sides, by the day that they are compared on. */
export function sideColumns<Of>(
  comparisonOf: (of: Of) => Comparison | undefined, treatedOf: (of: Of) => Group,
): Column<Of>[] {
  const of = (each: Of): Contrast | undefined => comparisonOf(each)?.germinated;
  return [
    date('later_soak', 'The day of the soak, if the seed was sown and watched before it; both sides are then only the seed that had not germinated or rotted by then.', each => treatedOf(each).since),
    whole('by_day', 'Days from day 0, or from the later soak, to the looks that are compared.', each => comparisonOf(each)?.byDay),
    whole('treated_germinated', 'Treated seeds that had germinated by then.', each => of(each)?.treated.x),
    whole('treated_seeds', 'Treated seeds, less those lost.', each => of(each)?.treated.n),
    whole('untreated_germinated', 'Untreated seeds that had germinated by then.', each => of(each)?.untreated.x),
    whole('untreated_seeds', 'Untreated seeds, less those lost.', each => of(each)?.untreated.n),
    whole('treated_open', 'Treated seeds that may still germinate.', each => comparisonOf(each)?.open.treated),
    whole('untreated_open', 'Untreated seeds that may still germinate.', each => comparisonOf(each)?.open.untreated),
    number('difference', 'The share of the treated seed less that of the untreated, from -1 to 1.', each => of(each)?.difference.value),
    number('difference_low_95', 'Its lower limit, 95 %.', each => of(each)?.difference.low),
    number('difference_high_95', 'Its upper limit, 95 %.', each => of(each)?.difference.high),
  ];
}

const verdicts: readonly string[] = [...new Set([...RULES.map(({ verdict }) => verdict), 'cannot tell'])];

/** Treated against untreated seed of one lot. */
export const comparisons = table<Compared>(
  {
    name: 'comparisons', says: 'A row for each treatment of a lot against its untreated seed, with the verdict of the report.',
    key: ['lot', 'comparison'], references: [{ columns: ['journal', 'lot'], table: 'lots' }],
  },
  [
    text('lot', 'The id of the lot.', ({ lot }) => lot.id),
    whole('comparison', 'Its number in the lot, from 1.', each => each.number),
    ...plantColumns<Compared>(({ lot }) => lot.plant),
    text('treatment', 'What the treated seed was soaked in, in words.', ({ contest: { treated } }) => groupLabel(treated)),
    text('agent', 'The agent, if there was one soak in one agent.', ({ contest: { treated } }) => (
      onlyDose(treated.treatment)?.dose.agent.word)),
    number('strength_ppm', 'Its strength in ppm, if that is known: not where powder was halved by eye for it.', ({ contest: { treated } }) => (
      isByEye(treated) ? undefined : onlyDose(treated.treatment)?.dose.ppm)),
    text('treated_batches', 'The treated batches, with a blank between them.', ({ contest: { treated } }) => pathsOf(treated)),
    text('untreated_batches', 'The untreated batches.', ({ contest: { untreated } }) => map(untreated, pathsOf)),
    yes('is_fair', 'Whether nothing else differed, so that the difference can come from the treatment.', ({ contest: { alsoDiffers } }) => (
      alsoDiffers.length === 0)),
    text('also_differs', 'What else differed, each on a line.', ({ contest: { alsoDiffers } }) => (
      alsoDiffers.length === 0 ? undefined : alsoDiffers.join('\n'))),
    yes('is_estimated', 'Whether seeds were estimated; the numbers are then missing, and the verdict is that of both ends of each estimate.', ({ isEstimated }) => isEstimated),
    ...sideColumns<Compared>(
      ({ contest: { comparison } }) => (isUndefined(comparison) ? undefined : comparison),
      ({ contest: { treated } }) => treated,
    ),
    number('fisher_p', 'Fisher’s exact test of these counts, two-sided.', ({ contest: { comparison } }) => (
      isUndefined(comparison) ? undefined : comparison.germinated.fisher.twoSided)),
    word('verdict', 'The verdict.', verdicts, ({ contest: { verdict } }) => verdict.verdict),
    text('rule', 'The rule that decided, as the format reference names it.', ({ contest: { verdict } }) => verdict.rule),
    text('sentence', 'The verdict in words.', ({ contest: { verdict } }) => verdict.sentence),
  ],
  source => lotsOf(source).flatMap(lot => {
    const { contests, estimated } = trialOf(lot, source.now.day);
    return [
      ...contests.map(contest => ({ contest, isEstimated: false })),
      ...estimated.map(contest => ({ contest, isEstimated: true })),
    ].map((each, i) => ({ ...each, lot, number: i + 1 }));
  }),
);
