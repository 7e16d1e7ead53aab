/** Whether something is held back from a treatment, and whether there is anything to compare it with. */
import { isUsed, type Batch, type Dose } from '../journal/life.ts';
import { listed } from '../syntax/nearest.ts';
import { found, relatedTo, subjectOf, type LotCheck } from './check.ts';

/** Agents that can harm, or that are meant to break dormancy; washing seed in bleach treats nothing in this sense. */
function active(batch: Batch, roles: readonly string[]): Dose[] {
  return batch.soaks.flatMap(({ doses }) => doses).filter(({ agent }) => agent && roles.includes(agent.role));
}

const hormones = ['hormone'];
const treatments = ['hormone', 'promoter', 'declared'];

export const nothingHeldBack: LotCheck = function* ({ id, root, batches }) {
  const all = [...batches.values()];
  const holding = all.filter(batch => batch.children.length === 0 || batch.kept === undefined || batch.kept > 0);
  // A remainder of unknown size may hold something back; only a lot that was never split surely does not.
  if (holding.some(batch => active(batch, hormones).length === 0)) return;
  const first = all.flatMap(batch => batch.events).find(event => event.type === 'soak' && event.soak.doses.some(({ agent }) => agent?.role === 'hormone'));
  if (!first || (root.kept === undefined && root.children.length > 0)) return;
  const agents = [...new Set(all.flatMap(batch => active(batch, hormones)).map(({ agent }) => agent?.word ?? ''))];
  yield found(first.entry.line, 'nothing-held-back', subjectOf(first.entry), { lot: id, agent: listed(agents, 'and') });
};

export const noControl: LotCheck = function* (lot, context) {
  // Where nothing is held back at all, that is what is said.
  if ([...nothingHeldBack(lot, context)].length > 0) return;
  const used = [...lot.batches.values()].filter(batch => isUsed(batch) && batch.sowing);
  if (used.some(batch => active(batch, treatments).length === 0)) return;
  for (const batch of used) {
    const sowing = batch.events.find(({ type }) => type === 'sow');
    if (sowing) {
      yield found(sowing.entry.line, 'no-control', subjectOf(sowing.entry), { batch: batch.path, lot: lot.id }, [], [relatedTo(lot.definition, 'The lot')]);
    }
  }
};
