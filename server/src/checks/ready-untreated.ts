import { lotsInOrder } from '../journal/lots.ts';
import { readyBefore, type ReadyRecord } from '../trials/ready.ts';
import { found, relatedTo, type Found, type PlantCheck } from './check.ts';
import { Events } from './events.ts';
import { subjectOf } from './spans.ts';
import { agentsIn } from './treated.ts';

/**
 * Seed goes into a hormone though untreated seed of its plant came up readily before, in this lot or in another one.
 * Said once for a lot, at its first such soak.
 */
export const readyUntreated: PlantCheck = function* (lots) {
  // So that it does not depend on the order in which lots were read which of two equal records is named.
  const ordered = lotsInOrder(lots);
  for (const lot of lots) {
    const soaks = new Events(lot).of('soak').toSorted((a, b) => a.entry.moment.day - b.entry.moment.day);
    for (const { entry, soak: { doses } } of soaks) {
      const hormone = agentsIn(doses, ['hormone'])[0];
      const record = hormone && readyBefore(ordered, entry.moment.day);
      if (!record) continue;
      yield told(entry, hormone.word, record);
      break;
    }
  }
};

function told(entry: Parameters<typeof subjectOf>[0] & Pick<Found, 'line'>, agent: string, record: ReadyRecord): Found {
  const { lot, group, readiness: { x, n, halfBy }, last } = record;
  const [first, ...others] = group.batches.map(({ batch }) => batch.path);
  const batches = others.length > 0 ? `${first!} and its replicates` : first!;
  return found(
    entry.line, 'ready-untreated', subjectOf(entry),
    { plant: lot.plant ?? '', x, n, percent: Math.round((100 * x) / n), batches, day: halfBy, agent },
    { related: [relatedTo(last.entry, `${x} of ${n} untreated seeds by then`)] },
  );
}
