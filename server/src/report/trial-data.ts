/** The trials of a lot as plain data. */
import { pooledOf } from '../words/replicates.ts';
import { dosesText } from '../words/soaks.ts';
import { groupLabel } from '../words/trials.ts';
import type { Claim } from '../measures/claim.ts';
import type { Comparison } from '../measures/comparison.ts';
import type { DayLimits } from '../measures/half-up.ts';
import { isUndefined, type Undefined } from '../measures/measured.ts';
import type { Pooled } from '../measures/replicates.ts';
import type { Finding, ShareTest } from '../measures/share-test.ts';
import type { Verdict } from '../measures/verdict.ts';
import { isoOf } from '../model/day.ts';
import type { SeedRange } from '../model/estimate.ts';
import type { Group } from '../trials/groups.ts';
import type { DropsContest, DropsSide } from '../trials/drops.ts';
import type { DoseLadder } from '../trials/ladders.ts';
import { notCompared, type Contest, type LotTrial } from '../trials/lot-trial.ts';
import { oddIn } from '../trials/odd.ts';
import { isByEye, type ActiveDose } from '../trials/treatment.ts';
import { contrastData, logRankData, numberData } from './numbers-data.ts';

export function trialData(trial: LotTrial): object {
  const { groups, contests, ladders, estimated, drops } = trial;
  return {
    groups: groups.map(groupData),
    leftOut: notCompared(trial).map(({ batch, why }) => ({ batch: batch.path, reason: why.undefined })),
    contests: contests.map(contestData),
    ladders: ladders.map(ladderData),
    drops: drops.contests.map(dropsData),
    ...(estimated.length > 0 && { estimated: estimated.map(contestData) }),
  };
}

function dropsData({ given, without, watch, alsoDiffers, freed, alive, verdict }: DropsContest): object {
  const known = ({ least, most }: SeedRange) => (least === most ? most : null);
  const sideData = ({ batches, freed: out, alive: living }: DropsSide) => ({
    batches: batches.map(({ path }) => path),
    stuck: known(out.n), freed: known(out.x), seedlings: known(living.n), alive: known(living.x),
  });
  return {
    drops: dosesText(given.drops!.doses), given: sideData(given), without: without ? sideData(without) : null,
    until: watch && !isUndefined(watch) ? isoOf(watch.until) : null,
    alsoDiffers, verdict, freed: freed ?? null, alive: alive ?? null,
  };
}

function groupData(group: Group): object {
  const odd = oddIn(group);
  return {
    batches: pathsOf(group),
    label: groupLabel(group),
    soaks: group.treatment.map(({ doses, length }) => ({
      doses: doses.map(doseData),
      hours: length ? { least: length.least / 60, most: length.most / 60 } : null,
    })),
    endedBy: group.batches.flatMap(({ batch, endedBy }) => (
      endedBy ? [{ batch: batch.path, by: endedBy.type, on: isoOf(endedBy.entry.moment.day) }] : [])),
    pooled: pooledData(pooledOf(group)),
    odd: odd ? { batch: odd.batch.path, count: odd.dish.x, of: odd.dish.n, p: odd.p } : null,
  };
}

function doseData({ agent, ppm, byEye }: ActiveDose): object {
  return { agent: agent.word, ppm: ppm ?? null, about: byEye };
}

function pooledData({ x, n, heterogeneity, overdispersion, effective, interval, range }: Pooled): object {
  return {
    count: x, of: n, share: x / n, interval, heterogeneity, overdispersion,
    effective: { count: effective.x, of: effective.n }, range,
  };
}

function contestData({ treated, untreated, alsoDiffers, remarks, judging, comparison, verdict }: Contest): object {
  return {
    treated: pathsOf(treated), untreated: untreated ? pathsOf(untreated) : null, alsoDiffers, remarks,
    since: treated.since === undefined ? null : isoOf(treated.since),
    judging: judging ? { on: judging.on, written: isoOf(judging.written), state: judging.state } : null,
    verdict: verdictData(verdict), comparison: comparisonData(comparison),
  };
}

function verdictData({ verdict, rule, sentence, evidence }: Verdict): object {
  return { verdict, rule, sentence, evidence: evidence ?? null };
}

export function comparisonData(comparison: Comparison | Undefined): object {
  if (isUndefined(comparison)) return comparison;
  const { byDay, open, dishes, germinated, sound, weak, better, worse, logRank, halfUp, daysApart } = comparison;
  return {
    byDay, open, dishes,
    germinated: contrastData(germinated),
    sound: contrastData(sound),
    weak: { treated: weak.treated, untreated: weak.untreated, by: weak.by },
    better: claimData(better),
    worse: claimData(worse),
    halfUp: { treated: limitsData(halfUp.treated), untreated: limitsData(halfUp.untreated) },
    daysApart: daysApart ?? null,
    logRank: { sown: logRankData(logRank.sown), germinated: logRankData(logRank.germinated) },
  };
}

/**
 * The looks that a claim compares, and its one-sided p-values: of single seeds, of dishes, with room for the other
 * tests.
 */
function claimData({ ages, looks, inTheEnd, germinated, sound, ahead, sooner, p }: Claim): object {
  return {
    ages: ages.all, final: ages.final, looks, p,
    germinated: findingData(germinated), sound: findingData(sound),
    ahead: findingData(ahead), sooner: findingData(sooner),
    inTheEnd: inTheEnd ? { germinated: lastData(inTheEnd.germinated), sound: lastData(inTheEnd.sound) } : null,
  };
}

function lastData({ first, second, seeds, p, spread }: ShareTest): object {
  return { first, second, seeds, dishes: p, spread };
}

export function findingData(finding: Finding | Undefined): object {
  if (isUndefined(finding)) return finding;
  const { seeds, p, joint, spread } = finding;
  return { seeds, dishes: p, joint, spread };
}

function limitsData(limits: DayLimits | Undefined): object {
  return isUndefined(limits) ? limits : { after: limits.after ?? null, by: limits.by };
}

function ladderData({ agent, untreated, rungs, ladder: { doses, trend, trendBy, best } }: DoseLadder): object {
  return {
    agent: agent.word, untreated: pathsOf(untreated),
    doses: doses.map(({ dose, verdict }, i) => ({
      ppm: dose, about: isByEye(rungs[i]!.treated),
      batches: pathsOf(rungs[i]!.treated), verdict: verdict.verdict, rule: verdict.rule,
    })),
    trend, trendBy: trendBy ?? null,
    best: numberData(best),
  };
}

function pathsOf({ batches }: Group): string[] {
  return batches.map(({ batch }) => batch.path);
}
