/** A root is out weeks before the shoot: roots counted on one side beside shoots on the other are no fair contest. */
import type { CountEvent } from '../journal/life.ts';
import type { Group, TrialBatch } from './groups.ts';

/**
 * Names what was counted as what differs, in words; undefined where both sides can have been counted alike.
 *
 * @example
 * countedAsText(treated, untreated) // 'what was counted (roots of the treated seed, and of the untreated seed …)'
 */
export function countedAsText(treated: Group, untreated: Group): string | undefined {
  if (hasRoots(treated) && hasShootsOnly(untreated)) return text('treated', 'untreated');
  return hasRoots(untreated) && hasShootsOnly(treated) ? text('untreated', 'treated') : undefined;
}

function text(roots: string, shoots: string): string {
  return `what was counted (roots of the ${roots} seed, and of the ${shoots} seed only what emerged: `
    + 'write how many had germinated, too)';
}

/** At some look half of what had germinated or more had not emerged. */
function hasRoots(group: Group): boolean {
  return group.batches.some(each => countsIn(group, each)
    .some(({ after: { germinated, emerged } }) => germinated > 0 && (germinated - emerged) * 2 >= germinated));
}

/** Nothing is written of its roots: that as many had germinated as emerged is the least that may be. */
function hasShootsOnly(group: Group): boolean {
  return group.batches.some(each => {
    const counts = countsIn(group, each);
    const isUp = counts.some(({ after }) => after.germinated > 0);
    const facts = counts.flatMap(count => count.counts);
    return facts.some(({ what }) => what === 'emerged' || what === 'leaf')
      // A day without roots says nothing of the roots of those that came up later.
      && !facts.some(({ what, n }) => what === 'germinated' && (n.value > 0 || !isUp));
  });
}

function countsIn({ since = -Infinity }: Group, { batch: { events }, endedBy }: TrialBatch): CountEvent[] {
  const looked = endedBy ? events.slice(0, events.indexOf(endedBy)) : events;
  return looked.flatMap(event => (event.type === 'count' && event.entry.moment.day > since ? [event] : []));
}
