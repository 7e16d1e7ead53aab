/** Every check, by what it is about. A new check is a file of its own and a line here. */
import type { Context, Found, IdCheck, JournalCheck, LotCheck, SolutionCheck } from './check.ts';
import { countBeforeSowing, countExceedsSown, countInFuture, moreThanGerminated, totalFalls } from './counts.ts';
import { cutDoesNotAddUp } from './cut-test.ts';
import { afterClose, endBeforeStart, noRecentCount, sownBeforeCollected } from './dates.ts';
import { doses, stockSolubility } from './doses.ts';
import { duplicateBatches, duplicateDefinitions, duplicateZones } from './duplicate-definition.ts';
import { missingDate, missingStockDate } from './missing-date.ts';
import { nothingLeft, sownExceedsSeeds, splitExceedsSeeds } from './seeds-given.ts';
import { liftMissing, liftWithoutSoak, soakTooLong } from './soaks.ts';
import { noControl, nothingHeldBack } from './treatment.ts';
import { unknownBatches, unknownIds } from './unknown-ids.ts';
import { unknownZone } from './unknown-zone.ts';

const idChecks: readonly IdCheck[] = [unknownIds, duplicateDefinitions];

const lotChecks: readonly LotCheck[] = [
  missingDate, splitExceedsSeeds, sownExceedsSeeds, nothingLeft, countExceedsSown, moreThanGerminated, totalFalls,
  countInFuture, countBeforeSowing, cutDoesNotAddUp, endBeforeStart, afterClose, sownBeforeCollected, noRecentCount,
  soakTooLong, liftMissing, liftWithoutSoak, doses, nothingHeldBack, noControl,
  ({ id }, context) => unknownBatches(id, context),
  ({ id }, context) => duplicateBatches(id, context),
];

const solutionChecks: readonly SolutionCheck[] = [missingStockDate, stockSolubility];

const journalChecks: readonly JournalCheck[] = [unknownZone, duplicateZones];

/** All problems of one id: as a name, as a lot, as a stock. */
export function problemsOfId(id: string, context: Context): Found[] {
  const { journal } = context;
  const mentions = journal.mentionsOf(id);
  const all = idChecks.flatMap(check => [...check(id, mentions, context)]);
  const lot = journal.lot(id);
  if (lot) all.push(...lotChecks.flatMap(check => [...check(lot, context)]));
  const solution = journal.solution(id);
  if (solution) all.push(...solutionChecks.flatMap(check => [...check(solution, context)]));
  return all;
}

/** Problems of the records that hold for the whole journal. */
export function problemsOfJournal(context: Context): Found[] {
  return journalChecks.flatMap(check => [...check(context)]);
}
