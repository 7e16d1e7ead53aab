import { isGivenOut } from '../journal/given-out.ts';
import { listed } from '../syntax/nearest.ts';
import { found, type LotCheck } from './check.ts';
import { subjectOf } from './spans.ts';
import { agentsIn, agentsOf } from './treated.ts';

const hormones = ['hormone'] as const;

/** Every seed of a lot is treated with a hormone. */
export const nothingHeldBack: LotCheck = function* ({ id, batches }, _context, events) {
  const first = events.of('soak').find(({ soak }) => agentsIn(soak.doses, hormones).length > 0);
  if (!first) return;
  const holding = [...batches.values()].filter(batch => !isGivenOut(batch));
  if (holding.some(batch => batch.unread || agentsOf(batch, hormones).length === 0)) return;
  const agents = new Set(holding.flatMap(batch => agentsOf(batch, hormones)).map(({ word }) => word));
  yield found(first.entry.line, 'nothing-held-back', subjectOf(first.entry), { lot: id, agent: listed([...agents], 'and') });
};
