import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countingRound } from '../../server/src/calendar/counting-round.ts';
import { due } from '../../server/src/calendar/due.ts';
import { historyOfPlace, nextFreeSlot, placesNow, whereNow, whereText } from '../../server/src/calendar/places.ts';
import { printMoment } from '../../server/src/journal/moment.ts';
import { journalOf, moment } from './helpers.ts';
import { journal as arbitraryJournal } from '../support/arbitrary-journal.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { staysOf } from '../../server/src/calendar/stays.ts';

/** Each place with what lies there. */
function lies(source: string, now: string): string[] {
  return placesNow(journalOf(source), moment(now)).flatMap(({ name, places }) => places.map(({ slot, stays }) =>
    `${name}${slot === undefined ? '' : ` / ${slot}`}: ${stays.map(({ id, part, what }) => (part === 'all' && !what ? id : `${id} (${part === 'rest' ? part : what ?? part})`)).join(', ')}`));
}

describe('what lies where', () => {
  it('is grouped by container and slot, numbers by their size', () => {
    expect(lies(`
      lot A Iris alba, at bag 10 slot 1
      lot B Iris alba, at bag 2 slot 10
      lot C Iris alba, at Bag 2 slot 9
      lot D Iris alba, at fridge
      lot E Iris alba, at fridge
      stock G1 2026-01-01, GA3 1 mg, 1 mL, at fridge slot b
    `, '2026-02-01')).toEqual(['bag 2 / 9: C', 'bag 2 / 10: B', 'bag 10 / 1: A', 'fridge: D, E', 'fridge / b: G1']);
  });

  it('follows the records in the order of time, not of lines', () => {
    const source = `
      lot A Iris alba, 10 seeds, at tin
      move A 2026-03-01, at frame
      sow A 2026-01-10, at bag 1
      chill A 2026-02-01, 4 C, at fridge
      warm A 2026-02-15, 20 C
    `;
    const places = ['2026-01-09', '2026-01-10', '2026-02-01', '2026-02-20', '2026-03-01'].map(now => lies(source, now));
    expect(places.flat()).toEqual(['tin: A', 'bag 1: A', 'fridge: A', 'fridge: A', 'frame: A']);
  });

  it('goes by the times of one day', () => {
    const source = `
      lot A Iris alba, 10 seeds
      move A 2026-03-01 18:00, at frame
      move A 2026-03-01 09:00, at bench
    `;
    expect(['08:59', '09:00', '17:59', '18:00'].map(time => lies(source, `2026-03-01 ${time}`))).toEqual([[], ['bench: A'], ['bench: A'], ['frame: A']]);
  });

  it('has the rest of a packet where it lay, and a batch in two places', () => {
    const source = `
      lot A Iris alba, 30 seeds, at tin 1
      sow A 2026-01-10, 10 seeds, at bag 1
      sow A 2026-01-20, 10 seeds, at bag 2
      move A 2026-01-25, at frame
      sow A 2026-01-30, at bag 3
    `;
    expect(lies(source, '2026-01-10')).toEqual(['bag 1: A (sown)', 'tin 1: A (rest)']);
    expect(lies(source, '2026-01-20')).toEqual(['bag 1: A (sown)', 'bag 2: A (sown)', 'tin 1: A (rest)']);
    expect(lies(source, '2026-01-25')).toEqual(['frame: A (sown)', 'tin 1: A (rest)']);
    expect(lies(source, '2026-01-30')).toEqual(['bag 3: A (sown)', 'frame: A (sown)']);
  });

  it('has seed that is sown out of its packet, wherever it was put', () => {
    expect(lies('lot A Iris alba, 30 seeds, at tin 1\nsow A 2026-01-10', '2026-02-01')).toEqual([]);
    expect(lies('lot A Iris alba, 30 seeds, at tin 1\nmove A 2026-01-01, at pot 1\nsow A 2026-01-10', '2026-02-01')).toEqual(['pot 1: A']);
  });

  it('has what was split off where its parent lay, and nothing where all was given out', () => {
    const source = `
      lot A Iris alba, 30 seeds, at tin 1
      split A 2026-01-10, X 10 seeds, Y 10 seeds
      sow A/X 2026-01-11, at bag 1
    `;
    expect(lies(source, '2026-01-09')).toEqual(['tin 1: A']);
    expect(lies(source, '2026-01-10')).toEqual(['tin 1: A, A/X, A/Y']);
    expect(lies(source, '2026-01-11')).toEqual(['bag 1: A/X', 'tin 1: A, A/Y']);
    expect(lies(`${source}  split A 2026-01-12, Z 10 seeds`, '2026-01-12')).toEqual(['bag 1: A/X', 'tin 1: A/Y, A/Z']);
  });

  it('has what is split off from sown seed where that lies, and from a rest where the rest lies', () => {
    const source = `
      lot A Iris alba, 30 seeds, at tin 1
      sow A 2026-01-10, 10 seeds, at bag 1
    `;
    expect(lies(`${source}  split A 2026-01-11, X 10 seeds`, '2026-01-11')).toEqual(['bag 1: A (sown)', 'tin 1: A (rest), A/X']);
    expect(lies(`${source}  sow A 2026-01-10, 20 seeds, at bag 1\n      split A 2026-01-11, X 5 seeds`, '2026-01-11'))
      .toEqual(['bag 1: A (sown), A/X']);
  });

  it('has a part of what was split off sown as a part of any batch is', () => {
    const soaked = `
      lot A Iris alba, 30 seeds, at tin 1
      soak A 2026-01-01 10:00, water, 24 h
      split A 2026-01-02 10:00, X 10 seeds
      move A/X 2026-01-02 11:00, at tin 2
      sow A/X 2026-01-10, 5 seeds, at bag 1
    `;
    expect(lies(soaked, '2026-01-10')).toEqual(['bag 1: A/X (sown)', 'tin 1: A', 'tin 2: A/X (rest)']);
  });

  it('has seed that is sown out of its bag into compost there, and the rest of the packet where it was', () => {
    const source = `
      lot A Iris alba, 30 seeds, at tin 1
      regime cold, chill 4 C 12 weeks
      sow A 2026-01-10, 10 seeds, in moss, regime cold, at bag 1
      sow A 2026-04-10, in compost, at frame
    `;
    expect(lies(source.replace('2026-04-10,', '2026-04-10, 25 seeds,'), '2026-04-10')).toEqual(['frame: A (sown)', 'tin 1: A (rest)']);
  });

  it('has seed in its soak until it is lifted, even when that is late', () => {
    const source = `
      lot A Iris alba, 30 seeds, at tin 1
      soak A 2026-01-10 19:00, water, 24 h, at jar 2
    `;
    expect(lies(source, '2026-01-10 18:59')).toEqual(['tin 1: A']);
    expect(lies(source, '2026-01-10 19:00')).toEqual(['jar 2: A']);
    expect(lies(source, '2026-01-12')).toEqual(['jar 2: A']);
    expect(lies(source, '2027-01-12')).toEqual([]);
    expect(lies(source.replace(', 24 h', ''), '2027-01-12')).toEqual([]);
    expect(lies(`${source}  lift A 2026-01-11 18:00`, '2026-01-11 17:59')).toEqual(['jar 2: A']);
    expect(lies(`${source}  lift A 2026-01-11 18:00`, '2026-01-11 18:00')).toEqual([]);
    expect(lies(`${source}  sow A 2026-01-11 20:00, at bag 1`, '2026-01-11 20:00')).toEqual(['bag 1: A']);
  });

  it('has what was divided in its soak there under the names of its parts', () => {
    const source = `
      lot A Iris alba, 30 seeds
      soak A 2026-01-10 19:00, water, 24 h, at jar 2
      split A 2026-01-10 20:00, X 15 seeds, Y 15 seeds
      lift A/X 2026-01-11 19:00
    `;
    expect(lies(source, '2026-01-11 08:00')).toEqual(['jar 2: A/X, A/Y']);
    expect(lies(source, '2026-01-12')).toEqual(['jar 2: A/Y']);
  });

  it('has potted seedlings on the bench, and the seed that was not potted where it was, with how many', () => {
    const tray = `
      lot A Iris alba, 24 seeds
      sow A 2026-01-10, at tray 4
      count A 2026-03-01, 11, 1 rotted
      pot A 2026-03-15, 9 seedlings, at bench 1
    `;
    expect(lies(tray, '2026-03-14')).toEqual(['tray 4: A']);
    // 24 seeds, less 11 germinated and 1 rotted; 11 seedlings, less 9 potted.
    expect(lies(tray, '2026-03-15')).toEqual(['bench 1: A (9 seedlings)', 'tray 4: A (12 seeds and 2 seedlings)']);
    const more = `${tray}  count A 2026-04-01, 3\n      pot A 2026-04-02, 5 seedlings, at Bench1\n`;
    expect(lies(more, '2026-04-02')).toEqual(['bench 1: A (14 seedlings)', 'tray 4: A (9 seeds)']);
    expect(lies(`${more}      count A 2026-05-01, 9 rotted`, '2026-05-01')).toEqual(['bench 1: A (14 seedlings)']);
    // Which of the seedlings died or left was not written.
    expect(lies(`${more}      count A 2026-05-01, 1 died`, '2026-05-01')).toEqual(['bench 1: A (seedlings)', 'tray 4: A (not potted)']);
    expect(lies(`${more}      give A 2026-05-01, 3 seedlings`, '2026-05-01')).toEqual(['bench 1: A (seedlings)', 'tray 4: A (not potted)']);
    expect(lies(tray.replace('24 seeds', 'about 24 seeds'), '2026-03-15')).toEqual(['bench 1: A (9 seedlings)', 'tray 4: A (not potted)']);
    expect(lies(tray.replace(', 9 seedlings', ''), '2026-03-15')).toEqual(['bench 1: A (seedlings)', 'tray 4: A (not potted)']);
  });

  it.each([
    ['pot A 2026-03-15, 20 seedlings, at bench 1', '20 seedlings'], ['pot A 2026-03-15, at bench 1', 'seedlings'],
  ])('has all of a batch on the bench once all of it germinated or rotted, and was potted: %s', (pot, what) => {
    const tray = 'lot A Iris alba, 30 seeds, at tin 1\nsow A 2026-01-10, 24 seeds, at tray 4\ncount A 2026-03-01, 20, 4 rotted\n';
    expect(lies(tray + pot, '2026-03-15')).toEqual([`bench 1: A (${what})`, 'tin 1: A (rest)']);
  });

  it('takes the seed elsewhere with a stage, and all of the batch with a move', () => {
    const potted = `
      lot A Iris alba, 24 seeds
      sow A 2026-01-10, at tray 4
      count A 2026-03-01, 9
      pot A 2026-03-15, 9 seedlings, at bench 1
    `;
    expect(lies(`${potted}  chill A 2026-03-20, 4 C, at fridge`, '2026-03-20')).toEqual(['bench 1: A (9 seedlings)', 'fridge: A (15 seeds)']);
    expect(lies(`${potted}  move A 2026-03-20, at frame`, '2026-03-20')).toEqual(['frame: A']);
    expect(lies(`${potted}  discard A 2026-03-20, sold out`, '2026-03-20')).toEqual([]);
    expect(lies(`${potted}  plant A 2026-03-20, 9 seedlings`, '2026-03-20')).toEqual(['tray 4: A']);
  });

  it('has nothing of what was closed', () => {
    expect(lies('lot A Iris alba, 30 seeds\ndiscard A 2026-01-01, soft\nmove A 2026-01-10, at bin', '2026-01-11')).toEqual([]);
    expect(lies('lot A Iris alba, 30 seeds\nsow A 2026-01-01, at bag 1\ndiscard A 2026-01-10, soft', '2026-01-10')).toEqual([]);
  });
});

describe('where a bottle lies', () => {
  it('is where it was put, until it is thrown away', () => {
    const source = 'stock G1 2026-01-01, GA3 1 mg, 1 mL, at fridge\nnote G1 2026-02-01, thrown away\n';
    expect(['2025-12-31', '2026-01-31', '2026-02-01'].map(now => lies(source, now))).toEqual([[], ['fridge: G1'], []]);
  });
});

describe('where a batch lies', () => {
  it('is every place that a part of it was sown in, and the packet only before', () => {
    const journal = journalOf(`
      lot A Iris alba, 30 seeds, at tin 1
      sow A 2026-01-10, 10 seeds, at bag 1
      sow A 2026-01-20, 10 seeds, at Bag 2
      discard A 2026-03-01, mould
    `);
    const on = (day: string) => whereNow(staysOf(journal.lot('A')!), 'A', moment(day));
    expect([on('2026-01-09'), on('2026-01-10'), on('2026-01-20'), on('2026-03-01')])
      .toEqual([['tin 1'], ['bag 1'], ['bag 1', 'Bag 2'], []]);
    expect([whereText(on('2026-01-20')), whereText([])]).toEqual(['bag 1 and Bag 2', undefined]);
    const [count] = due(journal, moment('2026-02-01'));
    expect(count).toMatchObject({ kind: 'count', places: ['bag 1', 'Bag 2'], place: 'bag 1 and Bag 2' });
    expect(countingRound(journal, moment('2026-02-01'))[0]?.place).toBe('bag 1 and Bag 2');
  });
});

describe('where to look for what comes up', () => {
  it('is where the seed stayed when some seedlings were potted; the batch itself lies in both places', () => {
    const journal = journalOf(`
      lot A Iris alba, 24 seeds
      sow A 2026-01-10, at tray 4
      count A 2026-03-01, 9
      pot A 2026-03-15, 9 seedlings, at bench 1
      due A 2026-04-01, feed them
    `);
    const now = moment('2026-04-02');
    expect(whereNow(staysOf(journal.lot('A')!), 'A', now)).toEqual(['tray 4', 'bench 1']);
    expect(due(journal, now).map(({ kind, place }) => [kind, place])).toEqual([['count', 'tray 4'], ['reminder', 'tray 4 and bench 1']]);
    expect(countingRound(journal, now)[0]?.place).toBe('tray 4');
  });
});

describe('the history of a place', () => {
  const source = `
    lot A Iris alba, 10 seeds
    sow A 2026-02-01, at bag 1 slot 1
    move A 2026-03-01, at frame
    lot B Iris alba, 10 seeds
    sow B 2026-01-01, at Bag1 slot 01
    discard B 2026-01-20, soft
    lot C Iris alba, 10 seeds
    sow C 2026-01-15, at bag 1 slot 2
  `;
  const history = (place: string) => historyOfPlace(journalOf(source), place).map(({ id, from, to }) =>
    `${id} ${from ? printMoment(from) : ''} to ${to ? printMoment(to) : 'now'}`);

  it('has all that ever lay there, the first first', () => {
    expect(history('bag 1 slot 1')).toEqual(['B 2026-01-01 to 2026-01-20', 'A 2026-02-01 to 2026-03-01']);
    expect(history('bag 1')).toEqual(['B 2026-01-01 to 2026-01-20', 'C 2026-01-15 to now', 'A 2026-02-01 to 2026-03-01']);
    expect(history('nowhere')).toEqual([]);
  });
});

describe('the next free slot', () => {
  const source = `
    lot A Iris alba, 10 seeds, at bag 3 slot 1
    lot B Iris alba, 10 seeds, at Bag 3 slot 2
    lot C Iris alba, 10 seeds, at bag 3 slot 4
    lot D Iris alba, 10 seeds
    sow D 2026-01-10, at bag 3 slot 3
    discard D 2026-02-01, soft
  `;
  const free = (now: string, container: string) => nextFreeSlot(journalOf(source), moment(now), container);

  it('is the first number that nothing lies in now', () => {
    expect(free('2026-01-20', 'bag 3')).toBe('bag 3 slot 5');
    expect(free('2026-02-01', 'BAG3')).toBe('bag 3 slot 3');
    expect(nextFreeSlot(journalOf('lot A Iris alba, at jar 1 slot 2'), moment('2026-01-20'), 'jar 1')).toBe('jar 1 slot 1');
  });

  it('is none for a container of which no numbered slot is known', () => {
    expect(free('2026-01-20', 'bag 4')).toBeUndefined();
  });
});

describe('whatever the journal', () => {
  it('a stay ends after it begins, and a batch that is closed lies nowhere', () => {
    fc.assert(fc.property(arbitraryJournal, ({ files, today }) => {
      const journal = new Journal();
      for (const { name, text } of files) journal.set(name, text.replaceAll(/^(sow [^\n]*)$/gm, '$1, at bag 1 slot 1'));
      const now = { day: today, minutes: undefined };
      const batches = [...journal.lots()].flatMap(lot => [...lot.batches.values()]);
      const closed = batches.filter(batch => batch.closed).map(({ path }) => path);
      const places = placesNow(journal, now).flatMap(container => container.places);
      const there = places.flatMap(({ stays }) => stays.map(({ id }) => id));
      expect(there.filter(id => closed.includes(id))).toEqual([]);
      for (const lot of journal.lots()) {
        for (const { from, to } of staysOf(lot)) if (from && to) expect(to.day).toBeGreaterThanOrEqual(from.day);
      }
    }));
  });
});
