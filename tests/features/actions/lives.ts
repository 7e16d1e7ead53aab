/** What a journal says of every batch, apart from where it says so. */
import { staysOf } from '../../../server/src/calendar/stays.ts';
import type { Journal } from '../../../server/src/journal/journal.ts';
import type { Batch, Dose } from '../../../server/src/journal/life.ts';

/** By path; without lines, files and columns. Agents are called as `named` says, by default as the journal does. */
export function livesOf(journal: Journal, named = (agent: string): string => agent): Record<string, unknown> {
  return Object.fromEntries([...journal.lots()].flatMap(lot => Array.from(lot.batches, ([path, batch]) => {
    const lay = staysOf(lot).filter(({ id }) => id === path)
      .map(({ place, from, to, part }) => [place, from, to, part]);
    return [path, { plant: lot.plant, collected: lot.collected, ...lifeOf(batch, named), lay }];
  })));
}

function lifeOf(batch: Batch, named: (agent: string) => string): object {
  const { seeds, kept, sown, tested, thinned, origin, totals, medium } = batch;
  const { events, inherited, soaks, stages, closed } = batch;
  const told = [...inherited, ...events].map(event => [
    event.type, event.entry.moment, event.entry.record.facts.length, event.type === 'count' ? event.after : undefined,
  ]);
  const dosed = ({ agent, ppm }: Dose) =>
    [agent && named(agent.word), ppm.ok ? ppm.value.toString() : ppm.refusal.code];
  const lain = soaks.map(({ start, end, length, endedBy, doses }) =>
    [start, end, length, endedBy, doses.map(dosed)]);
  const staged = stages.map(({ stage, start, end, planned }) => [stage, start, end, planned]);
  return {
    seeds, kept, sown, tested, thinned, origin, totals, told, lain, staged, closed: closed?.type, medium,
  };
}
