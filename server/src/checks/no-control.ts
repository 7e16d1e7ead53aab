import { isGivenOut } from '../journal/given-out.ts';
import { faultyBatches } from '../trials/faults.ts';
import { groupsOf } from '../trials/groups.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { nothingHeldBack } from './nothing-held-back.ts';
import { subjectOf } from './spans.ts';
import { agentsOf } from './treated.ts';

/** Washing seed in bleach or peroxide treats nothing in this sense. */
const treatments = ['hormone', 'promoter', 'declared'] as const;

/** Treated seed was sown and no untreated seed of the lot. Said once, where the first of it was sown. */
export const noControl: LotCheck = function* (lot, context, events) {
  const [first] = events.of('sow');
  if (!first) return;
  const sown = [...lot.batches.values()].filter(batch => batch.sowing && !isGivenOut(batch));
  if (sown.some(batch => batch.unread || agentsOf(batch, treatments).length === 0)) return;
  // Where nothing is held back at all, that is what is said.
  if ([...nothingHeldBack(lot, context, events)].length > 0) return;
  // Seed that was watched before it was treated is a control up to then. Asked last: it takes all groups of the lot.
  if (groupsOf(lot, faultyBatches(lot, Infinity)).groups.some(({ treatment }) => treatment.length === 0)) return;
  yield found(first.entry.line, 'no-control', subjectOf(first.entry), { batch: first.batch.path, lot: lot.id },
    { related: [relatedTo(lot.definition, 'The lot')] });
};
