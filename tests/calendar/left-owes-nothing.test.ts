import fc from 'fast-check';
import { expect, test } from 'vitest';
import { due } from '../../server/src/calendar/due.ts';
import { placesNow } from '../../server/src/calendar/places.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import type { Moment } from '../../server/src/journal/moment.ts';
import { isoOf } from '../../server/src/model/day.ts';
import { journal } from '../support/arbitrary-journal.ts';

const leaving = fc.constantFrom('plant', 'give', 'sell', 'send', 'lose');

/** Ids of batches in the records that sow, soak or count them. */
const batchesIn = (text: string) => [...new Set([...text.matchAll(/^(?:sow|soak|count) (\S+)/gm)].map(([, id]) => id!))];

/** With a place for what is sown, and nothing over yet. */
const stillThere = (text: string) => text.replaceAll(/^(?:cut|discard|pot) .*\n/gm, '').replaceAll(', in grit', ', in grit, at tray');

test('seed that left is in no place and owes nothing, on that day and ever after', () => {
  const days = fc.integer({ min: 0, max: 400 });
  fc.assert(fc.property(journal, fc.infiniteStream(leaving), days, ({ files, today }, how, later) => {
    const gone = files.flatMap(({ text }) => batchesIn(text));
    const read = new Journal();
    for (const { name, text } of files) read.set(name, stillThere(text));
    // The seed that was never given to a batch leaves too.
    const ids = [...new Set([...gone, ...gone.map(id => id.split('/')[0]!)])];
    const lines = ids.map(id => `${how.next().value} ${id} ${isoOf(today + 1)}`);
    const placed = (now: Moment) => placesNow(read, now)
      .flatMap(({ places }) => places.flatMap(({ stays }) => stays.map(({ id }) => id))).filter(id => ids.includes(id));
    expect(placed({ day: today, minutes: 720 })).not.toEqual([]);
    read.set('leaving.germ', lines.join('\n'));
    const now = { day: today + 1 + later, minutes: 720 };
    expect(placed(now)).toEqual([]);
    expect(due(read, now).filter(({ id }) => ids.includes(id)).map(({ key }) => key)).toEqual([]);
  }), { numRuns: 100 });
});
