/** Treated against untreated seed in plain words. */
import type { Batch } from '../journal/life.ts';
import type { Comparison } from '../measures/comparison.ts';
import type { Evidence } from '../measures/evidence.ts';
import type { DaysApart } from '../measures/half-up.ts';
import { isUndefined } from '../measures/measured.ts';
import { dayText, probability } from '../measures/verdict-words.ts';
import type { WeakSeedlings } from '../measures/weak.ts';
import { isoOf } from '../model/day.ts';
import { exact } from '../solutions/amounts.ts';
import { numberText } from '../solutions/display.ts';
import { usualUnit } from '../solutions/strength.ts';
import { listed } from '../syntax/nearest.ts';
import type { Group } from '../trials/groups.ts';
import type { Contest } from '../trials/lot-trial.ts';
import type { AgentAcross, Stratum } from '../trials/plant-trial.ts';
import { isActive, onlyDose } from '../trials/treatment.ts';
import { doseText, dosesText, joinerOf, soakLengthText } from './soaks.ts';

/** More batches than this are told by their number. */
const MOST_NAMES = 4;

/**
 * What makes a group differ from the other groups of its lot.
 *
 * Example: 'GA3 500 ppm 24 h'; of untreated seed 'water 24 h', or 'no soak'
 */
export function groupLabel({ treatment, batches, since }: Group): string {
  if (treatment.length > 0) {
    const label = treatment.map(({ soak }) => {
      const doses = soak.doses.filter(isActive);
      return [doses.map(dose => doseText(dose)).join(' + '), soakLengthText(soak)]
        .filter(text => text !== undefined).join(joinerOf(doses));
    }).join(', then ');
    return since === undefined ? label : `${label} on ${isoOf(since)}`;
  }
  if (since !== undefined && !batches[0]!.conditions.isWet) return 'no later soak';
  const soaks = batches[0]!.batch.soaks.filter(({ doses }) => !doses.some(isActive));
  if (soaks.length === 0) return 'no soak';
  return soaks.map(soak => `${dosesText(soak.doses)} ${soakLengthText(soak) ?? ''}`.trim()).join(', then ');
}

/**
 * The batches of a group by the names that they have within their lot.
 *
 * Example: 'A', 'A/1, A/2 and A/3', '8 batches'; the lot itself is 'the rest' where it was divided
 */
export function groupNames({ batches }: { readonly batches: readonly { readonly batch: Batch }[] }): string {
  if (batches.length > MOST_NAMES) return `${batches.length} batches`;
  return listed(batches.map(({ batch: { path, parent, children } }) => {
    if (!parent) return children.length > 0 ? 'the rest' : path;
    return path.slice(path.indexOf('/') + 1);
  }), 'and');
}

/**
 * An agent that was tried in several lots, with the doses that are taken together.
 *
 * Example: 'GA3 (250 to 1000 ppm)', 'GA3 (500 ppm, unmeasured)', of powder halved by eye 'GA3 (about 500 ppm)'
 */
export function agentText({ agent, strata }: AgentAcross): string {
  return `${agent.word} (${doseRangeText(strata)})`;
}

/** Example: '250 to 1000 ppm', '500 ppm, unmeasured' */
export function doseRangeText(strata: readonly Stratum[]): string {
  const doses = strata.flatMap(({ pairs }) => pairs.flatMap(({ treated }) => onlyDose(treated.treatment)?.dose ?? []));
  const known = doses.flatMap(({ ppm }) => ppm ?? []);
  const about = doses.some(({ ppm, byEye }) => ppm !== undefined && byEye) ? 'about ' : '';
  const most = doses.flatMap(({ atMost }) => atMost ?? []);
  const unit = doses[0] ? usualUnit(doses[0].agent, Math.max(...known, ...most)) : 'ppm';
  const unmeasured = known.length + most.length < doses.length ? 'unmeasured' : undefined;
  const stale = most.length === 0 ? undefined : `at most ${rangeText([Math.max(...most)], unit)!}`;
  return [known.length > 0 ? about + rangeText(known, unit)! : undefined, stale, unmeasured].filter(text => text !== undefined).join(', ');
}

function rangeText(ppm: readonly number[], unit: 'ppm' | '%'): string | undefined {
  if (ppm.length === 0) return undefined;
  const [least, most] = [Math.min(...ppm), Math.max(...ppm)].map(dose => numberText(exact(dose).div(unit === '%' ? 10_000 : 1)).text);
  return `${least === most ? least! : `${least!} to ${most!}`} ${unit}`;
}

/**
 * What stands behind a verdict, in one line; undefined where that is nothing.
 *
 * Example: 'Leggy 4 of 18 against 0 of 7 · the temperature is recorded for one side only'
 */
export function behindText(contest: Judged & Pick<Contest, 'remarks'>): string | undefined {
  const text = [...evidenceTexts(contest), ...contest.remarks].join(' · ');
  return text === '' ? undefined : `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

/**
 * Days gained, where that was shown, and seedlings that suffered.
 *
 * Example: ['half of the seed that germinated was up: treated day 14 to 21, untreated day 28 to 35 (7 to 21 days
 * earlier)', 'leggy 4 of 18 against 0 of 7']
 */
export function evidenceTexts({ comparison, verdict: { rule, evidence } }: Judged): string[] {
  if (isUndefined(comparison)) return [];
  const { weak } = comparison;
  // Days that one side was earlier say nothing of a treatment where more than that differs.
  const isShown = evidence !== undefined && rule !== 'more-differs' && (evidence.ahead || evidence.behind);
  return [
    isShown ? daysText(comparison) : undefined,
    ...(['leggy', 'abnormal', 'died'] as const).map(what => seedlingsText(what, weak.treated, weak.untreated)),
    evidence && evidence.room.treatments > 1 ? roomText(evidence) : undefined,
  ].filter(text => text !== undefined);
}

/** A comparison with its verdict. */
type Judged = Pick<Contest, 'comparison' | 'verdict'>;

/** Undefined where the looks do not tell the two sides apart. */
function daysText({ halfUp: { treated, untreated }, daysApart, later }: Comparison): string | undefined {
  if (isUndefined(treated) || isUndefined(untreated)) return undefined;
  if (treated.after === untreated.after && treated.by === untreated.by) return undefined;
  // The table of the batches tells of all that germinated.
  const seed = later.treated + later.untreated > 0 ? 'found by the looks compared' : 'that germinated';
  const apart = daysApart && (daysApart.most <= 0 || daysApart.least >= 0) ? ` (${apartText(daysApart)})` : '';
  return `half of the seed ${seed} was up: treated ${dayText(treated)}, untreated ${dayText(untreated)}${apart}`;
}

function apartText({ least, most }: DaysApart): string {
  const [from, to] = most <= 0 ? [-most, -least] : [least, most];
  const days = from === to ? `${to}` : from === 0 ? `up to ${to}` : `${from} to ${to}`;
  return `${days} ${to === 1 ? 'day' : 'days'} ${most <= 0 ? 'earlier' : 'later'}`;
}

function roomText({ room: { treatments } }: Evidence): string {
  return `judged together with ${treatments - 1} other ${treatments === 2 ? 'comparison' : 'comparisons'} of this lot`;
}

function seedlingsText(
  what: 'leggy' | 'abnormal' | 'died', treated: WeakSeedlings, untreated: WeakSeedlings,
): string | undefined {
  if (treated[what] === 0 && untreated[what] === 0) return undefined;
  return `${what} ${treated[what]} of ${treated.of} against ${untreated[what]} of ${untreated.of}`;
}

/** Tests for somebody who wants them, behind `--details`. */
export function detailTexts({ comparison, verdict: { evidence } }: Judged): string[] {
  if (isUndefined(comparison)) return [];
  const { better, worse, germinated: { fisher }, logRank: { sown } } = comparison;
  const adjusted = evidence && evidence.room.treatments > 1 ? ` (adjusted for ${evidence.room.treatments} treatments: `
    + `${probability(evidence.betterP)} and ${probability(evidence.worseP)})` : '';
  return [
    `treated ahead p ${probability(better.p)}, untreated ahead p ${probability(worse.p)}, one-sided${adjusted}`,
    `Fisher’s exact test p ${probability(fisher.twoSided)}`,
    isUndefined(sown) ? undefined : `log-rank test p ${probability(sown.p)}`,
  ].filter(text => text !== undefined);
}
