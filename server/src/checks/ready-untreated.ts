import { wholePercent } from '../measures/verdict-words.ts';
import type { DatedEntry, Lot } from '../journal/life.ts';
import { lotsInOrder } from '../journal/lots.ts';
import { everReady, readyBefore, type ReadyRecord } from '../trials/ready.ts';
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
  const ready = lotsInOrder(everReady(lots));
  if (ready.length === 0) return;
  for (const lot of lots) {
    for (const { entry, agent } of hormoneSoaksOf(lot)) {
      const record = readyBefore(ready, entry.moment.day);
      if (!record) continue;
      yield told(entry, agent, record);
      break;
    }
  }
};

interface HormoneSoak {
  readonly entry: DatedEntry;
  /** The word of the first hormone. */
  readonly agent: string;
}

/** A plant has many lots, all of which are asked when one of them changes. */
const memo = new WeakMap<Lot, readonly HormoneSoak[]>();

/** In the order of their days. */
function hormoneSoaksOf(lot: Lot): readonly HormoneSoak[] {
  let soaks = memo.get(lot);
  if (!soaks) {
    soaks = new Events(lot).of('soak').flatMap(({ entry, soak: { doses } }) => {
      const [hormone] = agentsIn(doses, ['hormone']);
      return hormone ? [{ entry, agent: hormone.word }] : [];
    }).sort((a, b) => a.entry.moment.day - b.entry.moment.day);
    memo.set(lot, soaks);
  }
  return soaks;
}

function told(entry: DatedEntry, agent: string, record: ReadyRecord): Found {
  const { lot, group, readiness: { x, n, halfBy }, last } = record;
  const [first, ...others] = group.batches.map(({ batch }) => batch.path);
  const batches = others.length > 0 ? `${first!} and its replicates` : first!;
  return found(
    entry.line, 'ready-untreated', subjectOf(entry),
    { plant: lot.plant ?? '', x, n, percent: wholePercent(x / n), batches, day: halfBy, agent },
    { related: [relatedTo(last.entry, `${x} of ${n} untreated seeds by then`)] },
  );
}
