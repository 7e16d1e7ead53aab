/** The report of a journal: what it says of each lot and of each batch, as values for tables and for other programs. */
import type { ProblemBook } from '../checks/problem-book.ts';
import type { Journal } from '../journal/journal.ts';
import { isToldByParts } from '../journal/given-out.ts';
import type { LeaveEvent, Lot } from '../journal/life.ts';
import { mentionsOf, tellsOf } from '../journal/mentions.ts';
import { lotsInOrder } from '../journal/lots.ts';
import type { Moment } from '../journal/moment.ts';
import { isSeenAhead } from '../journal/seen.ts';
import { replacingOf, type Replacing } from '../journal/replacing.ts';
import type { Day } from '../model/day.ts';
import type { PlantRank } from '../model/plant.ts';
import { problemKinds } from '../model/problems.ts';
import { byPlant } from '../trials/by-plant.ts';
import { trialOf, type LotTrial } from '../trials/lot-trial.ts';
import { plantTrial, type PlantTrial } from '../trials/plant-trial.ts';
import { isSaidIn } from './agenda.ts';
import { leavingsOf, reportBatch, type BatchReport } from './batch-report.ts';

export interface LotReport {
  readonly lot: Lot;
  /** Those with seed or counts of their own; one that was given out whole is told by its parts. */
  readonly batches: readonly BatchReport[];
  /** What left by now of those that are told by their parts alone. */
  readonly leavings: readonly LeaveEvent[];
  readonly trial: LotTrial;
  readonly replacing: Replacing;
  /** Errors in the records of the lot: what they say may be missing from its numbers. */
  readonly errors: number;
}

export interface Report {
  /** Tells one journal from another where a report is of several. */
  readonly name: string | undefined;
  readonly now: Moment;
  readonly zone: string | undefined;
  readonly lots: readonly LotReport[];
  /** The same lots, those of a plant together; undefined where that was not asked for. */
  readonly plants: PlantsReport | undefined;
  /** Lines with an error that name no lot of the journal, so that nobody can say whose numbers lack what they say. */
  readonly homeless: number;
  /** Counts and cut tests of these lots that are dated after today; the numbers have them too. */
  readonly ahead: number;
  /** The tests behind the verdicts are told too. */
  readonly details: boolean;
}

export interface PlantsReport {
  readonly by: PlantRank;
  /** In the order of their names. */
  readonly plants: readonly PlantTrial[];
}

export interface ReportOptions {
  readonly now: Moment;
  readonly name?: string;
  /** Lots that these files say something of; without it all. */
  readonly files?: readonly string[];
  /** These lots alone. */
  readonly ids?: readonly string[];
  /** Whose lots are put together. */
  readonly by?: PlantRank;
  /** Tell the tests behind the verdicts too. */
  readonly details?: boolean;
}

/** The lots in the order of the journal, each with its batches. The book must be up to date. */
export function reportOf(
  journal: Journal, book: ProblemBook, { now, name, files, ids, by, details = false }: ReportOptions,
): Report {
  const { ofLots, homeless } = errorsOf(journal, book);
  const lots = lotsInOrder(journal.lots())
    .filter(({ id }) => !ids || ids.includes(id))
    .filter(({ id }) => isSaidIn(journal, id, files))
    .map(lot => lotReport(lot, journal, ofLots, now));
  const plants = by && { by, plants: plantTrials(lots, by, now.day) };
  return { name, now, zone: journal.zone, lots, plants, homeless, ahead: aheadOf(lots, now), details };
}

/** What the report has of one lot, without a look at all others. The book must be up to date. */
export function reportOnLot(lot: Lot, journal: Journal, book: ProblemBook, now: Moment): LotReport {
  const files = new Set(journal.mentionsOf(lot.id).map(({ line }) => line.store.name));
  return lotReport(lot, journal, errorsOf(journal, book, files).ofLots, now);
}

function lotReport(lot: Lot, journal: Journal, errors: ReadonlyMap<string, number>, now: Moment): LotReport {
  const batches = [...lot.batches.values()];
  return {
    lot,
    batches: batches.filter(batch => !isToldByParts(batch)).map(batch => reportBatch(lot, batch, now)),
    leavings: batches.filter(isToldByParts).flatMap(batch => leavingsOf(batch, now)),
    trial: trialOf(lot, now.day),
    replacing: replacingOf(journal, lot.id),
    errors: errors.get(lot.id) ?? 0,
  };
}

function plantTrials(lots: readonly LotReport[], by: PlantRank, today: Day): PlantTrial[] {
  return [...byPlant(lots.map(({ lot }) => lot), by)].map(([plant, ofPlant]) => plantTrial(plant, ofPlant, today));
}

function aheadOf(lots: readonly LotReport[], now: Moment): number {
  const events = lots.flatMap(({ lot }) => [...lot.batches.values()].flatMap(batch => batch.events));
  return events.filter(event => isSeenAhead(event, now.day)).length;
}

function errorsOf(
  journal: Journal, book: ProblemBook, files: Iterable<string> = journal.files.keys(),
): { ofLots: ReadonlyMap<string, number>; homeless: number } {
  const ofLots = new Map<string, number>();
  const homeless = new Set();
  for (const name of files) {
    for (const { line, problem } of book.eachOf(name)) {
      if (problemKinds[problem.code].severity !== 'error') continue;
      const { record } = line.content;
      const named = new Set(record && mentionsOf(record).map(({ id }) => id));
      const lots = [...named].filter(id => journal.lot(id) && tellsOf(record!, id));
      for (const id of lots) ofLots.set(id, (ofLots.get(id) ?? 0) + 1);
      if (lots.length === 0) homeless.add(line);
    }
  }
  return { ofLots, homeless: homeless.size };
}
