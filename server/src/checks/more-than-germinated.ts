import { hasTotal, type CountEvent, type LeaveEvent } from '../journal/life.ts';
import { factOf } from '../model/record.ts';
import { found, type Found, type LotCheck } from './check.ts';
import { countSpan } from './spans.ts';

const qualities = ['died', 'leggy', 'abnormal', 'stuck', 'freed'] as const;
const laterStages = ['emerged', 'leaf'] as const;

/** More seedlings died, are weak, or were pricked out than have germinated. */
export const moreThanGerminated: LotCheck = function* (_lot, _context, events) {
  for (const count of events.of('count')) if (mayBeTooMany(count)) yield* ofCount(count);
  for (const event of events.of('leave')) yield* ofLeaving(event);
  for (const { batch, entry } of events.of('pot')) {
    const seedlings = factOf(entry.record, 'seedlings');
    const before = batch.events.findLast((event): event is CountEvent =>
      event.type === 'count' && event.entry.moment.day <= entry.moment.day);
    // Who never counts may still pot.
    if (!seedlings || !before || batch.unread || seedlings.n.value <= before.after.germinated) continue;
    yield found(entry.line, 'more-than-germinated', seedlings,
      { n: seedlings.n.value, what: 'potted seedlings', batch: batch.path, germinated: before.after.germinated });
  }
};

/** More seedlings left than there were: those that had left before are not there any more. */
function* ofLeaving(event: LeaveEvent): Iterable<Found> {
  const { batch, entry, seedlings } = event;
  const upTo = batch.events.slice(0, batch.events.indexOf(event) + 1);
  const counted = upTo.findLast(each => each.type === 'count');
  if (seedlings === 0 || counted?.type !== 'count' || batch.unread) return;
  const { germinated, died } = counted.after;
  const sum = upTo.reduce((all, each) => all + (each.type === 'leave' ? each.seedlings : 0), 0);
  if (sum <= germinated - died) return;
  yield found(entry.line, 'more-than-germinated', factOf(entry.record, 'seedlings')!,
    { n: sum, what: 'seedlings that left', batch: batch.path, germinated: germinated - died });
}

/** A glance that spares most counts the rest. */
function mayBeTooMany(count: CountEvent): boolean {
  const { germinated } = count.after;
  return hasTotal(count) || qualities.some(what => count.after[what] > germinated);
}

function* ofCount({ batch: { path: batch }, entry, counts, before, after }: CountEvent): Iterable<Found> {
  const { line, record } = entry;
  for (const what of qualities) {
    if (after[what] <= after.germinated || after[what] === before[what]) continue;
    yield found(line, 'more-than-germinated', countSpan(record, [what]), { n: after[what], what, batch, germinated: after.germinated });
  }
  // A total in the same record is not raised by what the later stages imply: the two contradict each other.
  const stated = counts.find(({ what, total }) => what === 'germinated' && total);
  if (!stated) return;
  for (const what of laterStages) {
    if (after[what] <= stated.n.value) continue;
    yield found(line, 'more-than-germinated', countSpan(record, [what]), { n: after[what], what, batch, germinated: stated.n.value });
    return;
  }
}
