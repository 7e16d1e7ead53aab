/** The trials of a lot as plain data. */
import { pooledOf } from '../features/words/replicates.ts';
import { groupLabel } from '../features/words/trials.ts';
import type { Comparison } from '../measures/comparison.ts';
import type { Evidence } from '../measures/evidence.ts';
import { isUndefined, type Undefined } from '../measures/measured.ts';
import type { Pooled } from '../measures/replicates.ts';
import type { Verdict } from '../measures/verdict.ts';
import { isoOf } from '../model/day.ts';
import type { Group } from '../trials/groups.ts';
import type { DoseLadder } from '../trials/ladders.ts';
import type { Contest, LotTrial } from '../trials/lot-trial.ts';
import type { ActiveDose } from '../trials/treatment.ts';
import { contrastData, logRankData, numberData } from './numbers-data.ts';

export function trialData({ groups, leftOut, contests, ladders }: LotTrial): object {
  return {
    groups: groups.map(groupData),
    leftOut: leftOut.map(({ batch, why }) => ({ batch: batch.path, reason: why.undefined })),
    contests: contests.map(contestData),
    ladders: ladders.map(ladderData),
  };
}

function groupData(group: Group): object {
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
  };
}

function doseData({ agent, ppm }: ActiveDose): object {
  return { agent: agent.word, ppm: ppm ?? null };
}

function pooledData({ x, n, heterogeneity, overdispersion, effective, interval, range }: Pooled): object {
  return {
    count: x, of: n, share: x / n, interval, heterogeneity, overdispersion,
    effective: { count: effective.x, of: effective.n }, range,
  };
}

function contestData({ treated, untreated, alsoDiffers, remarks, comparison, verdict }: Contest): object {
  return {
    treated: pathsOf(treated), untreated: untreated ? pathsOf(untreated) : null, alsoDiffers, remarks,
    verdict: verdictData(verdict), comparison: comparisonData(comparison),
  };
}

function verdictData({ verdict, rule, seedsASide, sentence, evidence }: Verdict): object {
  return {
    verdict, rule, sentence,
    seedsASide: seedsASide ? numberData(seedsASide) : null,
    evidence: evidence ? evidenceData(evidence) : null,
  };
}

function evidenceData(evidence: Evidence): object {
  return { ...evidence, contrast: contrastData(evidence.contrast), speedP: evidence.speedP ?? null };
}

export function comparisonData(comparison: Comparison | Undefined): object {
  if (isUndefined(comparison)) return comparison;
  const { byDay, open, overdispersion, germinated, sound, seedlings, speed, t50, t50OfSown } = comparison;
  return {
    byDay, open, overdispersion,
    germinated: contrastData(germinated),
    sound: contrastData(sound),
    seedlings: Object.fromEntries(Object.entries(seedlings).map(([what, contrast]) => [what, contrastData(contrast)])),
    logRank: { sown: logRankData(speed.sown), germinated: logRankData(speed.germinated), combined: speed.combined },
    t50: numberData(t50),
    t50OfSown: numberData(t50OfSown),
  };
}

function ladderData({ agent, untreated, rungs, ladder: { doses, trend, best } }: DoseLadder): object {
  return {
    agent: agent.word, untreated: pathsOf(untreated),
    doses: doses.map(({ dose, verdict }, i) => ({
      ppm: dose, batches: pathsOf(rungs[i]!.treated), verdict: verdict.verdict, rule: verdict.rule,
    })),
    trend,
    best: numberData(best),
  };
}

function pathsOf({ batches }: Group): string[] {
  return batches.map(({ batch }) => batch.path);
}
