/** Every check, by what it is about. A new check is a file of its own and a line here. */
import type { Stay } from '../calendar/stays.ts';
import type { JournalFile } from '../journal/journal-file.ts';
import type { Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { stockAboveSolubility } from './above-solubility.ts';
import { afterClose } from './after-close.ts';
import { applyExceedsSeedlings } from './apply-exceeds-seedlings.ts';
import { beyondGuides } from './beyond-guides.ts';
import type { Context, Found, IdCheck, JournalCheck, LotCheck, PlantCheck, SlotCheck, SolutionCheck } from './check.ts';
import { countBeforeSowing } from './count-before-sowing.ts';
import { countExceedsSown } from './count-exceeds-sown.ts';
import { countInFuture } from './count-in-future.ts';
import { cutDoesNotAddUp } from './cut-does-not-add-up.ts';
import { dangers } from './dangers.ts';
import { doses } from './doses.ts';
import { drawBeforeMade } from './draw-before-made.ts';
import { duplicateBatches, duplicateDefinitions, duplicateZones } from './duplicate-definition.ts';
import { endBeforeStart } from './end-before-start.ts';
import { farAhead } from './far-ahead.ts';
import { Events } from './events.ts';
import { forgottenId } from './forgotten-id.ts';
import { impossibleDilution } from './impossible-dilution.ts';
import { leftInWrongUnit } from './left-in-wrong-unit.ts';
import { liftMissing } from './lift-missing.ts';
import { liftWithoutSoak } from './lift-without-soak.ts';
import { limitTwice } from './limit-twice.ts';
import { mergeConflicts } from './merge-conflict.ts';
import { missingDate } from './missing-date.ts';
import { mixedInDish } from './mixed-in-dish.ts';
import { moreLeftThanPossible } from './more-left-than-possible.ts';
import { moreThanGerminated } from './more-than-germinated.ts';
import { noControl } from './no-control.ts';
import { noRecentCount } from './no-recent-count.ts';
import { notBeforehand } from './not-beforehand.ts';
import { nothingHeldBack } from './nothing-held-back.ts';
import { nothingLeft } from './nothing-left.ts';
import { oneAgent } from './one-agent.ts';
import { readyUntreated } from './ready-untreated.ts';
import { replacesItself } from './replaces-itself.ts';
import { slotTaken } from './slot-taken.ts';
import { soakTooLong } from './soak-too-long.ts';
import { sownBeforeCollected } from './sown-before-collected.ts';
import { sownExceedsSeeds } from './sown-exceeds-seeds.ts';
import { splitExceedsSeeds } from './split-exceeds-seeds.ts';
import { splitTooSmall } from './split-too-small.ts';
import { stockExpired } from './stock-expired.ts';
import { stockNearExpiry } from './stock-near-expiry.ts';
import { stockOverdrawn } from './stock-overdrawn.ts';
import { strengthOfStockMissing } from './strength-missing.ts';
import { takenAfterEmpty } from './taken-after-empty.ts';
import { dilutedSlip } from './strength-slip.ts';
import { swappedInBottle, swappedInGuides, swappedUnits } from './swapped-units.ts';
import { totalAsNew } from './total-as-new.ts';
import { totalFalls } from './total-falls.ts';
import { unknownBatch } from './unknown-batch.ts';
import { unknownIds } from './unknown-ids.ts';
import { unknownLimit } from './unknown-limit.ts';
import { unknownZone } from './unknown-zone.ts';
import { slippedDays, yearSlip } from './year-slip.ts';

const idChecks: readonly IdCheck[] = [unknownIds, duplicateDefinitions, forgottenId, missingDate, swappedUnits];

const lotChecks: readonly LotCheck[] = [
  replacesItself, unknownBatch, duplicateBatches, splitExceedsSeeds, sownExceedsSeeds, nothingLeft, countExceedsSown,
  moreThanGerminated, totalFalls, countInFuture, countBeforeSowing, cutDoesNotAddUp, endBeforeStart, afterClose,
  sownBeforeCollected, soakTooLong, liftMissing, liftWithoutSoak, mixedInDish, dangers, doses, beyondGuides,
  applyExceedsSeedlings,
  nothingHeldBack, noControl, splitTooSmall, noRecentCount, farAhead, yearSlip, totalAsNew,
  notBeforehand,
];

const solutionChecks: readonly SolutionCheck[] = [
  stockAboveSolubility, oneAgent, impossibleDilution, stockOverdrawn, drawBeforeMade, stockExpired, stockNearExpiry,
  takenAfterEmpty, leftInWrongUnit, moreLeftThanPossible,
  swappedInBottle, dilutedSlip, strengthOfStockMissing,
];

const slotChecks: readonly SlotCheck[] = [slotTaken];

const plantChecks: readonly PlantCheck[] = [readyUntreated];

const journalChecks: readonly JournalCheck[] = [unknownZone, duplicateZones, unknownLimit, limitTwice, swappedInGuides];

/** All problems of one id: as a name, as a lot, as a stock. */
export function problemsOfId(id: string, context: Context): Found[] {
  const { journal } = context;
  const mentions = journal.mentionsOf(id);
  const all: Found[] = [];
  for (const check of idChecks) all.push(...check(id, mentions, context));
  const lot = journal.lot(id);
  if (lot) {
    const events = new Events(lot);
    for (const check of lotChecks) all.push(...check(lot, context, events));
  }
  const solution = journal.solution(id);
  if (solution) {
    const draws = journal.drawsFrom(id);
    for (const check of solutionChecks) all.push(...check(solution, context, draws));
  }
  return all;
}

/** Problems of all that ever lay in one slot, of whatever lots. */
export function problemsOfSlot(stays: readonly Stay[]): Found[] {
  // Nobody is in one's own way, and most slots hold one batch a year.
  return stays.length < 2 ? [] : slotChecks.flatMap(check => [...check(stays)]);
}

/** Problems that lots of one plant have with each other. */
export function problemsOfPlant(lots: readonly Lot[]): Found[] {
  return plantChecks.flatMap(check => [...check(lots)]);
}

/**
 * Problems of a file as it is written: what a merge left open, and `day` lines out of their order; without `now`,
 * before the other files are read, only what no day can change.
 */
export function problemsOfFile(file: JournalFile, now: Moment | undefined): Found[] {
  return [...mergeConflicts(file), ...(now ? slippedDays(file, now) : [])];
}

/** Problems of the records that hold for the whole journal. */
export function problemsOfJournal(context: Context): Found[] {
  return journalChecks.flatMap(check => [...check(context)]);
}
