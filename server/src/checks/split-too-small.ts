import { isGivenOut } from '../journal/given-out.ts';
import type { Batch, Lot } from '../journal/life.ts';
import { plan } from '../measures/plan.ts';
import { FARTHEST, splitPlan, tells } from '../trials/split-plan.ts';
import { isActiveSoak } from '../trials/treatment.ts';
import { found, type LotCheck } from './check.ts';
import { factsSpan } from './spans.ts';

/** One part of a split is treated, and the seeds are too few to show anything, whatever comes up. */
export const splitTooSmall: LotCheck = function* (lot, _context, events) {
  if (!isTooSmall(lot)) return;
  for (const { entry } of events.of('split')) {
    const planned = splitPlan(entry.record, lot);
    if (!planned || planned.isSupposed) continue;
    const { treated, untreated } = planned;
    const { best } = plan(treated.seeds, untreated.seeds, FARTHEST.untreated);
    if (tells(treated.seeds, untreated.seeds)) continue;
    const suggestion = tells(best.treated, best.untreated)
      ? `Divided into ${best.treated} treated and ${best.untreated} untreated, the same seeds would show that much.`
      : 'No division of so few seeds shows it: sow more, or expect no proof.';
    yield found(
      entry.line, 'split-too-small', factsSpan(entry, 'part'), { treated: treated.seeds, untreated: untreated.seeds, suggestion });
  }
};

/** Of all the seed of the lot that was treated or was meant to stay untreated beside it. */
function isTooSmall({ root, batches }: Lot): boolean {
  const holding = [...batches.values()].filter(batch => !isGivenOut(batch) && (batch !== root || batch.sowing));
  const seedsOf = (all: readonly Batch[]) => all.reduce((sum, { kept }) => sum + (kept ?? Infinity), 0);
  const isTreated = ({ soaks }: Batch) => soaks.some(isActiveSoak);
  const treated = seedsOf(holding.filter(isTreated));
  const untreated = seedsOf(holding.filter(batch => !isTreated(batch)));
  return treated > 0 && untreated > 0 && Number.isFinite(treated + untreated) && !tells(treated, untreated);
}
