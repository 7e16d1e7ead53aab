/** What a report says in words around its tables, the same in text and in Markdown. */
import { originText } from '../words/germination.ts';
import { collectedText } from '../words/days.ts';
import { partlyWentText } from '../words/leaving.ts';
import { howManyText } from '../words/seeds.ts';
import { replacingTexts } from '../words/replacing.ts';
import { countsOf, isUsed, type Batch } from '../journal/life.ts';
import { printMoment } from '../journal/moment.ts';
import { isUndefined } from '../measures/measured.ts';
import type { Proportion } from '../measures/proportion.ts';
import { counted, isOrAre } from '../model/counted.ts';
import { wholePercent } from '../measures/verdict-words.ts';
import { isoOf } from '../model/day.ts';
import { listed } from '../syntax/nearest.ts';
import { factOf } from '../model/record.ts';
import type { BatchReport } from './batch-report.ts';
import type { PlantTrial } from '../trials/plant-trial.ts';
import type { LotReport, Report } from './report.ts';

export function titleOf({ name, now }: Report): string {
  return `Report${name === undefined ? '' : ` of ${name}`} as of ${printMoment(now)}`;
}

/** What the `lot` record says of the seed, what of it left before the rest was split up, and what was kept back. */
export function seedFacts({ lot: { definition, root }, leavings, replacing }: LotReport): string[] {
  const { record } = definition;
  const collected = factOf(record, 'collected');
  const seeds = howManyText(factOf(record, 'seeds'));
  const facts = [
    seeds === '' ? undefined : seeds,
    collected && `collected ${collectedText(collected)}`,
    ...(['from', 'stored', 'dormancy'] as const).map(type => {
      const fact = factOf(record, type);
      return fact && `${type} ${fact.value.text}`;
    }),
    ...[...new Set(leavings.map(({ batch }) => batch))].map(batch => {
      const events = leavings.filter(event => event.batch === batch);
      return `${batch === root ? '' : `of ${batch.path} `}${partlyWentText(events, batch.totals.germinated)}`;
    }),
    root.children.length > 0 && root.kept !== undefined && root.kept > 0 && !isUsed(root)
      ? `${counted(root.kept, 'seed')} kept back` : undefined,
    ...replacingTexts(replacing),
  ];
  return facts.filter(fact => fact !== undefined);
}

/** The rows of a lot's table: a remainder to which nothing was done is told by the facts of the seed. */
export function rowsOf({ batches }: LotReport): BatchReport[] {
  return batches.filter(({ batch }) => batch.children.length === 0 || isUsed(batch));
}

/** What has to be known to read a lot's table: errors, why a number is missing, days not counted from a sowing. */
export function notesOf({ lot, batches, errors }: LotReport): string[] {
  const notes: string[] = [];
  if (errors > 0) {
    notes.push(errors === 1
      ? `The records of ${lot.id} have an error: its numbers may be wrong until you fix it.`
      : `The records of ${lot.id} have ${errors} errors: its numbers may be wrong until you fix them.`);
  }
  for (const { batch, totals, germination, germinationRange, days, origin, measures } of batches) {
    if (!totals) continue;
    if (batch.cut && batch.tested !== undefined && batch.worlds.some(({ tested }) => tested !== batch.tested)) {
      notes.push(`The seeds of ${batch.path} were estimated; its cut test shows that there were ${batch.tested}.`);
    }
    if (germinationRange) {
      const { of } = germinationRange;
      const same = batches.filter(other => other.totals && other.germinationRange?.of === of);
      if (same[0]!.batch === batch) notes.push(estimatedText(same.map(other => other.batch.path), of));
    } else if (isUndefined(germination)) notes.push(`No percentage for ${batch.path}: ${germination.undefined}.`);
    else if (germination.n + totals.lost !== batch.tested) {
      notes.push(`The percentage of ${batch.path} is of ${germination.of}. Some of its seed was split off later.`);
    }
    const late = isUndefined(germination) ? 0 : lostLate(batch);
    if (late > 0 && !isUndefined(germination)) notes.push(lateText(batch.path, germination, late));
    if (!isUndefined(measures) && isUndefined(measures.t50Coolbear) && totals.germinated > 0) {
      notes.push(`No T50 for ${batch.path}: ${measures.t50Coolbear.undefined}.`);
    }
    if (isUndefined(days)) {
      if (totals.germinated > 0) notes.push(`No days for ${batch.path}: ${days.undefined}.`);
    } else if (origin && origin.by !== 'sowing') notes.push(`Days of ${batch.path} count from ${originText(origin)}.`);
  }
  return notes;
}

/** Batches with one and the same estimate. */
function estimatedText(paths: readonly string[], of: string): string {
  return paths.length === 1
    ? `The percentage of ${paths[0]!} is of ${of}. It covers every number in that range.`
    : `The percentages of ${listed(paths, 'and')} are each of ${of}. They cover every number in that range.`;
}

/** Seeds lost after some had germinated: those that are left are not like all that were sown. */
function lostLate(batch: Batch): number {
  const counts = countsOf(batch);
  const first = counts.findIndex(({ after }) => after.germinated > 0);
  return first < 0 ? 0 : batch.totals.lost - counts[first]!.after.lost;
}

function lateText(path: string, { x, n }: Proportion, late: number): string {
  const [least, most] = [x / (n + late), (x + late) / (n + late)].map(wholePercent);
  return `${counted(late, 'seed')} of ${path} ${late === 1 ? 'was' : 'were'} lost after some had germinated. Of all ${n + late}, `
    + `${least!} to ${most!} % would have germinated, whatever became of the lost.`;
}

/** The lots of a plant. */
export function plantFacts({ lots }: PlantTrial): string {
  return `${counted(lots.length, 'lot')}: ${lots.map(({ id }) => id).join(', ')}`;
}

const ofLots: readonly string[] = [
  '% is the share of the seed sown, less lost, that germinated (of the seed in the batch if none was sown), with Wilson’s 95 % interval.',
  'First: the counts between which the first seed germinated. Last: the count that found the last one. Days count from sowing (or '
  + 'the end of the soak, or the first stage).',
  'A seed that emerged or has a leaf counts as germinated. So does a seedling that died; rotted seed does not.',
  '– means unknown. Empty columns are left out.',
];

const ofMeasures: readonly string[] = [
  'T50: the counts between which half of the seed that germinated came up: seed (G + 1) / 2 of G, after Coolbear. Mean time: in days. Both are '
  + 'ranges, because seed germinates between two counts.',
];

const ofCutTests: readonly string[] = [
  '% of full leaves out seed that the cut test found empty; % of viable also leaves out seed that it found dead.',
];

const ofPlans: readonly string[] = [
  '“Planned”: a stage of the regime with no record of its own. “Passed”: its time is over.',
];

const ofVerdicts: readonly string[] = [
  'Verdicts follow the rules in the format reference. “So far”, “yet”: seed may still germinate. Points are percentage points, worked out before percentages are rounded.',
];

/** How the tables are to be read. */
export function legendOf(reports: readonly Report[]): string[] {
  const lots = reports.flatMap(report => (report.plants ? [] : report.lots));
  const batches = lots.flatMap(lot => lot.batches);
  const isMeasured = batches.some(({ measures }) => !isUndefined(measures) && !isUndefined(measures.t50Coolbear));
  const hasVerdict = lots.some(({ trial }) => trial.contests.length + trial.estimated.length > 0)
    || reports.some(({ plants }) => plants?.plants.some(({ agents }) => agents.length > 0));
  return [
    ...(lots.length > 0 ? ofLots : []),
    ...(isMeasured ? ofMeasures : []),
    ...(batches.some(({ cut }) => cut) ? ofCutTests : []),
    ...(batches.some(({ plannedStages }) => plannedStages.length > 0) ? ofPlans : []),
    ...(hasVerdict ? ofVerdicts : []),
  ];
}

/** What has to be known of the whole report. */
export function warningsOf({ lots, homeless, ahead, now }: Report): string[] {
  const warnings = lots.length === 0 ? ['This journal has no lots.'] : [];
  if (ahead > 0) warnings.push(`${counted(ahead, 'count')} dated after ${isoOf(now.day)} ${isOrAre(ahead)} included in these numbers, but no verdict rests on ${ahead === 1 ? 'its batch' : 'their batches'}.`);
  if (homeless === 1) warnings.push('1 line with an error names no known lot, so these numbers leave it out.');
  if (homeless > 1) warnings.push(`${homeless} lines with an error name no known lot, so these numbers leave them out.`);
  return warnings;
}
