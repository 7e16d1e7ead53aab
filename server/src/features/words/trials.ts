/** Treated against untreated seed in plain words. */
import type { Comparison } from '../../measures/comparison.ts';
import type { Contrast } from '../../measures/contrast.ts';
import { isUndefined, type Measured, type Undefined } from '../../measures/measured.ts';
import { probability } from '../../measures/verdict-words.ts';
import { exact } from '../../solutions/amounts.ts';
import { numberText } from '../../solutions/display.ts';
import { listed } from '../../syntax/nearest.ts';
import type { Group } from '../../trials/groups.ts';
import type { AgentAcross, Stratum } from '../../trials/plant-trial.ts';
import { isActive, onlyDose } from '../../trials/treatment.ts';
import { doseText, dosesText, joinerOf, soakLengthText } from './soaks.ts';

/** More batches than this are told by their number. */
const MOST_NAMES = 4;

/**
 * What makes a group differ from the other groups of its lot.
 *
 * Example: 'GA3 500 ppm 24 h'; of untreated seed 'water 24 h', or 'no soak'
 */
export function groupLabel({ treatment, batches }: Group): string {
  if (treatment.length > 0) {
    return treatment.map(({ soak }) => {
      const doses = soak.doses.filter(isActive);
      return [doses.map(dose => doseText(dose)).join(' + '), soakLengthText(soak)]
        .filter(text => text !== undefined).join(joinerOf(doses));
    }).join(', then ');
  }
  const soaks = batches[0]!.batch.soaks.filter(({ doses }) => !doses.some(isActive));
  if (soaks.length === 0) return 'no soak';
  return soaks.map(soak => `${dosesText(soak.doses)} ${soakLengthText(soak) ?? ''}`.trim()).join(', then ');
}

/**
 * The batches of a group by the names that they have within their lot.
 *
 * Example: 'A', 'A/1, A/2 and A/3', '8 batches'; the lot itself is 'the rest' where it was divided
 */
export function groupNames({ batches }: Group): string {
  if (batches.length > MOST_NAMES) return `${batches.length} batches`;
  return listed(batches.map(({ batch: { path, parent, children } }) => {
    if (!parent) return children.length > 0 ? 'the rest' : path;
    return path.slice(path.indexOf('/') + 1);
  }), 'and');
}

/**
 * An agent that was tried in several lots, with the doses that are taken together.
 *
 * Example: 'GA3 (250 to 1000 ppm)', 'GA3 (500 ppm, unmeasured)'
 */
export function agentText({ agent, strata }: AgentAcross): string {
  return `${agent.word} (${doseRangeText(strata)})`;
}

/** Example: '250 to 1000 ppm', '500 ppm, unmeasured' */
export function doseRangeText(strata: readonly Stratum[]): string {
  const doses = strata.flatMap(({ pairs }) => pairs.flatMap(({ treated }) => onlyDose(treated.treatment)?.dose ?? []));
  const known = doses.flatMap(({ ppm }) => ppm ?? []);
  const most = doses.flatMap(({ atMost }) => atMost ?? []);
  const unmeasured = known.length + most.length < doses.length ? 'unmeasured' : undefined;
  const stale = most.length === 0 ? undefined : `at most ${rangeText([Math.max(...most)])!}`;
  return [rangeText(known), stale, unmeasured].filter(text => text !== undefined).join(', ');
}

function rangeText(ppm: readonly number[]): string | undefined {
  if (ppm.length === 0) return undefined;
  const [least, most] = [Math.min(...ppm), Math.max(...ppm)].map(dose => numberText(exact(dose)).text);
  return `${least === most ? least! : `${least!} to ${most!}`} ppm`;
}

/**
 * What stands behind a verdict, in short: tests, days gained, and seedlings that suffered.
 *
 * Example: ["Fisher's exact test p 0.00077", 'log-rank tests p below 0.001', 'T50 6.5 days earlier', 'leggy 4 of 18
 * against 0 of 7']
 */
export function evidenceTexts({ germinated, speed, t50, seedlings }: Comparison): string[] {
  const { combined } = speed;
  return [
    `Fisher’s exact test p ${probability(germinated.fisher.twoSided)}`,
    isUndefined(combined) ? undefined : `log-rank tests p ${probability(combined.p)}`,
    daysText(t50),
    ...(['leggy', 'abnormal', 'died'] as const).map(what => seedlingsText(what, seedlings[what])),
  ].filter(text => text !== undefined);
}

function daysText(t50: Measured): string | undefined {
  if (isUndefined(t50)) return undefined;
  const days = Math.abs(t50.value).toFixed(1);
  if (days === '0.0') return 'T50 the same';
  return `T50 ${days} days ${t50.value < 0 ? 'earlier' : 'later'}`;
}

function seedlingsText(what: string, contrast: Contrast | Undefined): string | undefined {
  if (isUndefined(contrast)) return undefined;
  const { treated, untreated } = contrast;
  if (treated.x === 0 && untreated.x === 0) return undefined;
  return `${what} ${treated.x} of ${treated.n} against ${untreated.x} of ${untreated.n}`;
}
