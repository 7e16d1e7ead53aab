/** What a report says of a plant over its lots and winters. */
import { treatmentText } from '../words/treatment.ts';
import { agentText, doseRangeText, groupLabel, groupNames } from '../words/trials.ts';
import { isUndefined, type Undefined } from '../measures/measured.ts';
import { differsInText } from '../measures/verdict-text.ts';
import { limitsText, probability, ratio, wholePercent } from '../measures/verdict-words.ts';
import type { AgentAcross, PlantTrial } from '../trials/plant-trial.ts';
import type { LotTrial } from '../trials/lot-trial.ts';
import { isActiveSoak } from '../trials/treatment.ts';
import type { UntreatedShare } from '../trials/untreated-shares.ts';
import type { Column } from './columns.ts';
import type { Passage } from './passages.ts';

export function plantPassages({ agents, untreated }: PlantTrial, details: boolean): Passage[] {
  const tried = agents.map((agent): Passage => (agent.across.lots > 1
    ? {
      heading: agentText(agent),
      columns: strataColumns(agent),
      items: [],
      texts: [agent.across.sentence, ...(details ? [testsText(agent)] : [])],
    }
    : onlyLot(agent)));
  return untreated.length === 0 ? tried : [...tried, untreatedPassage(untreated)];
}

/** One lot is its own evidence: its verdicts, and no numbers over lots that would say them again. */
function onlyLot(agent: AgentAcross): Passage {
  const items = agent.strata.flatMap(({ lot, pairs }) => pairs.map(({ treated, untreated, verdict }) => ({
    title: `${lot.id}: ${groupLabel(treated)} (${groupNames(treated)}) against ${groupLabel(untreated)} (${groupNames(untreated)})`,
    texts: [verdict.sentence],
  })));
  return { heading: agentText(agent), columns: [], items, texts: [] };
}

/** What was done to it all the same; seed that was treated later was untreated until then. */
export function untreatedText({ group: { batches } }: UntreatedShare): string {
  const plain = batches.find(({ batch }) => !batch.soaks.some(isActiveSoak));
  return plain ? treatmentText(plain.batch) : 'untreated until its soak';
}

/** What germinated of untreated seed: one row for each lot, or for each of the conditions that it had. */
export function untreatedColumns(shares: readonly UntreatedShare[]): Column[] {
  const column = (head: string, cell: (share: UntreatedShare) => string): Column => (
    { head, kind: 'number', cells: shares.map(cell) });
  const percent = (share: number) => (100 * share).toFixed(1);
  return [
    column('Germinated', ({ pooled: { x, n } }) => `${x} of ${n}`),
    column('%', ({ pooled: { x, n } }) => percent(x / n)),
    column('95 % interval', ({ pooled: { interval } }) => `${percent(interval.low)} to ${percent(interval.high)}`),
    column('By day', ({ byDay }) => String(byDay)),
  ];
}

function untreatedPassage(shares: readonly UntreatedShare[]): Passage {
  const column = (head: string, kind: Column['kind'], cell: (share: UntreatedShare) => string): Column => (
    { head, kind, cells: shares.map(cell) });
  return {
    heading: 'Untreated seed by winter',
    columns: [
      column('Winter', 'text', ({ winter }) => winter),
      column('Lot', 'text', ({ lot }) => lot.id),
      column('Seed', 'text', untreatedText),
      ...untreatedColumns(shares),
      column('Open', 'number', ({ open }) => (open === 0 ? '–' : String(open))),
    ],
    items: [],
    texts: [],
  };
}

/** Lots whose day of judging has not come, those whose seeds were estimated, and those with nothing to compare. */
export function untriedText({ trials, agents, toBeJudged }: PlantTrial): string | undefined {
  const strata = agents.flatMap(agent => agent.strata);
  const tried = new Set([...strata, ...toBeJudged].map(({ lot }) => lot));
  const estimated = trials.filter(trial => trial.estimated.length > 0).map(({ lot }) => lot);
  const others = trials.filter(({ lot }) => !tried.has(lot) && !estimated.includes(lot));
  const leftOut = others.flatMap(leftOutText);
  const untried = others.filter(trial => leftOutText(trial).length === 0).map(({ lot }) => lot.id);
  const texts = [
    toBeJudged.length === 0 ? undefined : `Left out here, because their day of judging has not come: ${toBeJudged.map(({ lot, on }) => `${lot.id} on ${on}`).join(', ')}.`,
    estimated.length === 0 ? undefined : `Left out here, because seeds were estimated, not counted: ${estimated.map(({ id }) => id).join(', ')}.`,
    leftOut.length === 0 ? undefined : `Left out here: ${leftOut.join('; ')}.`,
    untried.length === 0 ? undefined : `No trial to compare: ${untried.join(', ')}.`,
  ].filter(text => text !== undefined);
  return texts.length === 0 ? undefined : texts.join(' ');
}

/** Why a lot with treated seed has no comparison of one agent with untreated seed; nothing where none was treated. */
function leftOutText({ lot, contests, leftOut }: LotTrial): string[] {
  const [contest] = contests.filter(({ untreated }) => untreated !== undefined);
  if (contest) return [`${lot.id} (${contest.alsoDiffers.length > 0 ? differsInText(contest.alsoDiffers) : 'no agent was tried alone'})`];
  const batch = leftOut.find(each => each.batch.soaks.some(isActiveSoak));
  return batch ? [`${batch.batch.path} (${batch.why.undefined})`] : [];
}

/** One row for each lot, or for each of the conditions that it was tried under. */
function strataColumns({ strata, across: { comparisons } }: AgentAcross): Column[] {
  const column = (head: string, kind: Column['kind'], cell: (i: number) => string): Column => (
    { head, kind, cells: strata.map((_, i) => cell(i)) });
  const contrast = (i: number) => {
    const comparison = comparisons[i]!;
    return isUndefined(comparison) ? undefined : comparison.germinated;
  };
  const share = (i: number, side: 'treated' | 'untreated') => {
    const found = contrast(i)?.[side];
    return found ? `${found.x} of ${found.n}` : '–';
  };
  return [
    column('Lot', 'text', i => strata[i]!.lot.id),
    column('Dose', 'text', i => doseRangeText([strata[i]!])),
    column('Treated', 'number', i => share(i, 'treated')),
    column('Untreated', 'number', i => share(i, 'untreated')),
    column('Points', 'number', i => {
      const difference = contrast(i)?.difference;
      return difference ? `${wholePercent(difference.value)} (${limitsText(difference)})` : '–';
    }),
    column('By day', 'number', i => {
      const comparison = comparisons[i]!;
      return isUndefined(comparison) ? '–' : String(comparison.byDay);
    }),
  ];
}

/** The tests, for somebody who asks for details. */
function testsText({ across: { mantelHaenszel, homogeneity } }: AgentAcross): string {
  return [
    `Of germinated seed, stratified by lot: ${isUndefined(mantelHaenszel) ? `Mantel-Haenszel – (${mantelHaenszel.undefined})`
      : `${oddsText(mantelHaenszel.oddsRatio)}, chi-square ${mantelHaenszel.corrected.chiSquare.toFixed(2)}, `
        + `p ${probability(mantelHaenszel.corrected.p)} (with continuity correction)`}`,
    testText('homogeneity (Breslow-Day)', homogeneity),
  ].join('; ').concat('.');
}

function oddsText(odds: { value: number; low: number; high: number } | Undefined): string {
  return isUndefined(odds)
    ? `odds ratio – (${odds.undefined})`
    : `odds ratio ${ratio(odds.value)} (95 % interval ${ratio(odds.low)} to ${ratio(odds.high)})`;
}

function testText(name: string, test: { readonly chiSquare: number; readonly p: number } | Undefined): string {
  return isUndefined(test)
    ? `${name} – (${test.undefined})`
    : `${name} chi-square ${test.chiSquare.toFixed(2)}, p ${probability(test.p)}`;
}
