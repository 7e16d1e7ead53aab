/** The germination of a lot, and of one batch beside the untreated seed of its lot, as values of a picture. */
import type { JournalLine } from '../../journal/journal-file.ts';
import type { Batch, Lot } from '../../journal/life.ts';
import { saysWhatWasSeen } from '../../journal/seen.ts';
import { isUndefined } from '../../measures/measured.ts';
import type { Shade } from '../../pictures/germination/curve.ts';
import type { CurveValues, GerminationValues } from '../../pictures/germination/values.ts';
import { courseOf } from '../../trials/course.ts';
import { coursesOf, type Group } from '../../trials/groups.ts';
import type { Contest, LotTrial } from '../../trials/lot-trial.ts';
import { originText } from '../../words/germination.ts';
import { treatmentText } from '../../words/treatment.ts';
import { groupLabel, groupNames } from '../../words/trials.ts';
import { lanesOf } from './lanes.ts';
import { missingText } from './missing.ts';

/** Undefined where no batch of the lot was counted. */
export function lotGermination(trial: LotTrial): GerminationValues | undefined {
  const { lot, groups, contests, estimated, leftOut } = trial;
  const shades = shadesOf(groups);
  const curves = groups.map((group, i) => curveOf(group, shades[i]!));
  if (curves.length === 0) return undefined;
  return {
    title: titleOf(lot, lot.id),
    caption: joined(captionOf([...contests, ...estimated]), missingText(leftOut)),
    zero: zeroOf(groups),
    curves,
    lanes: lanesOf(groups.flatMap(({ batches }) => batches)),
    compared: comparedOn(contests),
  };
}

/** The batch, and untreated seed of its lot that it was compared with; undefined where it was not counted. */
export function batchGermination(batch: Batch, trial: LotTrial): GerminationValues | undefined {
  const { lot } = trial;
  const own = trial.groups.find(({ batches }) => batches.some(each => each.batch === batch));
  if (!own) return loneBatch(batch, lot);
  const contest = trial.contests.find(({ treated }) => treated === own)
    ?? trial.estimated.find(({ treated }) => treated.batches.some(each => each.batch === batch));
  const untreated = trial.groups.find(group => group === contest?.untreated);
  const groups = untreated ? [untreated, own] : [own];
  const all = shadesOf(trial.groups);
  const contests = contest ? [contest] : [];
  const beside = new Set(contest?.untreated?.batches.map(each => each.batch));
  return {
    title: titleOf(lot, batch.path),
    caption: joined(captionOf(contests), missingText(trial.leftOut.filter(each => beside.has(each.batch)))),
    zero: zeroOf(groups),
    curves: groups.map(group => curveOf(group, all[trial.groups.indexOf(group)]!)),
    lanes: lanesOf(groups.flatMap(({ batches }) => batches)),
    compared: comparedOn(contests),
  };
}

/** Counted, but no part of a trial. */
function loneBatch(batch: Batch, lot: Lot): GerminationValues | undefined {
  const course = courseOf(batch);
  if (isUndefined(course) || !batch.origin) return undefined;
  const curve: CurveValues = {
    label: treatmentText(batch),
    names: batch.path,
    shade: { kind: 'treated', agent: 0, rung: 0.67, number: 0 },
    courses: [course],
  };
  return {
    title: titleOf(lot, batch.path),
    caption: '',
    zero: originText(batch.origin),
    curves: [curve],
    lanes: [],
    compared: [],
  };
}

function titleOf({ plant }: Lot, path: string): string {
  return plant === undefined ? path : `${path} ${plant}`;
}

/** What was done to a group, under the names that its batches have within their lot. */
export function curveOf(group: Group, shade: Shade): CurveValues {
  return {
    label: groupLabel(group),
    names: groupNames(group),
    shade,
    courses: coursesOf(group),
    lookOn: day => lookOn(group, day),
  };
}

/** The first count or cut test that the group had on a day. */
function lookOn({ batches }: Group, day: number): JournalLine | undefined {
  for (const {
    batch: { events },
    conditions: { dayZero },
  } of batches) {
    const event = events.find(each => saysWhatWasSeen(each) && each.entry.moment.day === dayZero + day);
    if (event) return event.entry.line;
  }
  return undefined;
}

/** Untreated seed grey; of each agent the doses in their order, from light to dark. */
export function shadesOf(groups: readonly Group[]): Shade[] {
  const agents = [...new Set(groups.flatMap(({ treatment }) => (treatment.length > 0 ? [agentOf(treatment)] : [])))];
  const dosesOf = (agent: string) =>
    [
      ...new Set(
        groups
          .filter(({ treatment }) => treatment.length > 0 && agentOf(treatment) === agent)
          .map(({ treatment }) => doseOf(treatment)),
      ),
    ].sort((a, b) => a - b);
  let [treated, untreated] = [0, 0];
  return groups.map(({ treatment }): Shade => {
    if (treatment.length === 0) return { kind: 'untreated', number: untreated++ };
    const doses = dosesOf(agentOf(treatment));
    const rung = doses.length === 1 ? 0.67 : doses.indexOf(doseOf(treatment)) / (doses.length - 1);
    return { kind: 'treated', agent: agents.indexOf(agentOf(treatment)), rung, number: treated++ };
  });
}

function agentOf(treatment: Group['treatment']): string {
  return treatment[0]!.doses.map(({ agent }) => agent.word).join(' + ');
}

/** Doses that nobody measured come first: nothing says that they are strong. */
function doseOf(treatment: Group['treatment']): number {
  return treatment[0]!.doses[0]?.ppm ?? 0;
}

/** Example: 'the sowing on 2026-01-11'; without the date where the batches have different ones */
export function zeroOf(groups: readonly Group[]): string {
  const origins = groups.flatMap(({ batches }) => batches.flatMap(({ batch }) => batch.origin ?? []));
  const texts = new Set(origins.map(originText));
  if (texts.size === 1) return [...texts][0]!;
  const kinds = new Set(origins.map(({ by }) => by));
  return kinds.size === 1 ? `the ${[...kinds][0]!} of each batch` : 'day 0 of each batch';
}

function captionOf(contests: readonly Contest[]): string {
  const [only] = contests;
  if (only && contests.length === 1) return only.verdict.sentence;
  return contests.map(({ treated, verdict }) => `${groupLabel(treated)}: ${verdict.verdict}.`).join(' ');
}

function joined(...texts: readonly string[]): string {
  return texts.filter(text => text !== '').join(' ');
}

/** In days of the picture, which count from the sowing also where a comparison counts from a later soak. */
function comparedOn(contests: LotTrial['contests']): number[] {
  const days = contests.flatMap(({ comparison, treated: { since, batches } }) => {
    const later = since === undefined ? 0 : since - (batches[0]!.batch.origin?.moment.day ?? since);
    return isUndefined(comparison) ? [] : [comparison.byDay + later];
  });
  return [...new Set(days)].sort((a, b) => a - b);
}
