import type { Entry } from '../journal/life.ts';
import type { Journal } from '../journal/journal.ts';
import { minutesOf, printQuantity } from '../model/quantity.ts';
import { factOf, type FactOfType } from '../model/record.ts';
import { compareDoses } from '../solutions/comparison.ts';
import { replacement } from '../syntax/reader.ts';
import { found, relatedTo, type JournalCheck } from './check.ts';
import { placeOf } from './spans.ts';

type Value = FactOfType<'strength'> | FactOfType<'duration'>;

interface Said {
  readonly entry: Entry;
  readonly value: Value;
}

/**
 * Limits of one thing that differ: without a day, only the last one counts, and for the whole journal. The order of
 * files is nothing that a grower thinks of, and a dose too strong is not pointed out where the wrong one counts.
 */
export const limitTwice: JournalCheck = function* ({ journal }) {
  const before = new Map<string, Said>();
  for (const entry of journal.globalEntries('limit')) {
    const { line, record } = entry;
    const value = factOf(record, 'strength') ?? factOf(record, 'duration');
    if (!record.subject || !value) continue;
    const plant = factOf(record, 'for')?.value.text;
    const key = `${record.subject.text}\n${plant ?? ''}`.toLowerCase();
    const other = before.get(key);
    before.set(key, { entry, value });
    if (!other || isSame(value, other.value, record.subject.text, journal)) continue;
    const [limit, instead] = [printQuantity(value.value), printQuantity(other.value.value)];
    yield found(line, 'limit-twice', value, {
      what: plant === undefined ? record.subject.text : `${record.subject.text} for ${plant}`, limit, other: instead,
      place: placeOf(other.entry, entry),
    }, { fixes: [replacement(value, instead)], related: [relatedTo(other.entry, 'The other one')] });
  }
};

function isSame(a: Value, b: Value, of: string, { agents }: Journal): boolean {
  const agent = agents.get(of);
  if (a.type === 'strength' && b.type === 'strength' && agent) {
    const compared = compareDoses({ agent, strength: a.value }, { agent, strength: b.value });
    if (compared.comparable) return compared.order === 0;
  }
  const minutes = [a, b].map(({ type, value }) => (type === 'duration' ? minutesOf(value) : undefined));
  return minutes[0] === undefined ? printQuantity(a.value) === printQuantity(b.value) : minutes[0] === minutes[1];
}
