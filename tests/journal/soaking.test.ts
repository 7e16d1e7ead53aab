import { describe, expect, test } from 'vitest';
import { isForgotten } from '../../server/src/journal/soaking.ts';
import { at, batchOf, when } from './helpers.ts';

/** The soaks of a batch: how long each was, and what set its end. */
function soaks(source: string, path = 'VER-24') {
  const { soaks: all } = batchOf(`lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 20 seeds\n${source.trim().replace(/^ +/gm, '')}`, path);
  return all.map(({ endedBy, end, length }) => {
    const hours = length && (length.least === length.most ? length.least / 60 : [length.least / 60, length.most / 60]);
    return [endedBy, when(end), hours];
  });
}

describe('a soak', () => {
  test('ends with its lift', () => {
    expect(soaks('soak VER-24 2026-01-10 19:00, water\nlift VER-24 2026-01-11 18:45')).toEqual([['lift', '2026-01-11 18:45', 23.75]]);
  });

  test('without one ends at its until, and without that after its time span', () => {
    expect(soaks('soak VER-24 2026-01-10 19:00, water, 12 h, until 2026-01-11 18:00')).toEqual([['until', '2026-01-11 18:00', 23]]);
    expect(soaks('soak VER-24 2026-01-10 19:00, water, 90 min')).toEqual([['duration', '2026-01-10 20:30', 1.5]]);
    expect(soaks('soak VER-24 2026-01-10 19:00, water, 12 h\nlift VER-24 2026-01-11 08:00')).toEqual([['lift', '2026-01-11 08:00', 13]]);
    expect(soaks('soak VER-24 2026-01-10 19:00, water, until 2026-01-11')).toEqual([['until', '2026-01-11', [5, 29]]]);
    // A month is as long as its days, without a time of day too.
    expect(soaks('soak VER-24 2026-01-10, water, 1 month')).toEqual([['duration', '2026-02-10', 31 * 24]]);
  });

  test('of which no end is written is taken to be over after thirty days, and one that was lifted is not in doubt', () => {
    const forgotten = (source: string, day: string) => {
      const [soak] = batchOf(`lot VER-24 Veratrum nigrum, 60 seeds\n${source}`).soaks;
      return isForgotten(soak!, at(day));
    };
    const open = 'soak VER-24 2026-01-10 19:00, water';
    expect([forgotten(open, '2026-02-09'), forgotten(open, '2026-02-10')]).toEqual([false, true]);
    // The days count from its planned end.
    expect([forgotten(`${open}, 2 days`, '2026-02-11'), forgotten(`${open}, 2 days`, '2026-02-12')]).toEqual([false, true]);
    expect(forgotten(`${open}\nlift VER-24 2026-01-11 19:00`, '2027-01-10')).toBe(false);
  });

  test('goes on where nothing ends it', () => {
    expect(soaks('soak VER-24 2026-01-10 19:00, water\nnote VER-24 2026-01-11, floats\nmove VER-24 2026-01-11, at shelf')).toEqual([
      [undefined, undefined, undefined],
    ]);
  });

  test('is over when the seed goes on to something else; since when is not known', () => {
    for (const next of ['sow VER-24', 'chill VER-24', 'warm VER-24', 'soak VER-24', 'cut VER-24', 'discard VER-24', 'count VER-24']) {
      const facts = { soak: ', water, 1 h', cut: ', 60 dead', count: ', 0' }[next.split(' ')[0]!] ?? '';
      expect(soaks(`soak VER-24 2026-01-10 19:00, water\n${next} 2026-01-11 19:00${facts}`)[0]).toEqual(['next', '2026-01-11 19:00', [0, 24]]);
    }
  });

  test('is not over by a count of the seed in the soak before', () => {
    const two = 'soak VER-24 2026-01-10 19:00, water\ncount VER-24 2026-01-11 07:00, 0\nsoak VER-24 2026-01-11 19:00, GA3 500 ppm';
    expect(soaks(two)).toEqual([['next', '2026-01-11 19:00', [0, 24]], [undefined, undefined, undefined]]);
  });

  test('is not over when the seed was counted in it and lifted later', () => {
    expect(soaks('soak VER-24 2026-01-10 19:00, GA3 unmeasured\ncount VER-24 2026-01-11 07:00, 0\nlift VER-24 2026-01-11 19:00'))
      .toEqual([['lift', '2026-01-11 19:00', 24]]);
  });

  test('was over at its planned end when the seed goes on after it, and not when it goes on before', () => {
    expect(soaks('soak VER-24 2026-01-10 19:00, water, 24 h\nsow VER-24 2026-01-11')).toEqual([['duration', '2026-01-11 19:00', 24]]);
    expect(soaks('soak VER-24 2026-01-10 19:00, water, 24 h\nsow VER-24 2026-01-11 09:00')).toEqual([['next', '2026-01-11 09:00', [0, 14]]]);
  });

  test('has no length where it ends before it begins', () => {
    expect(soaks('soak VER-24 2026-01-10 19:00, water, until 2026-01-10 18:00')).toEqual([['until', '2026-01-10 18:00', undefined]]);
  });

  test('is as long as was written, whether or not the time of day was', () => {
    expect(soaks('soak VER-24 2026-01-10, water, 24 h')).toEqual([['duration', '2026-01-11', 24]]);
    expect(soaks('soak VER-24 2026-01-10, water, 2 days')).toEqual([['duration', '2026-01-12', 48]]);
    expect(soaks('soak VER-24 2026-01-10, water, 0.5 days')).toEqual([['duration', '2026-01-10', 12]]);
    expect(soaks('soak VER-24 2026-01-10 19:00, water, 0.5 days')).toEqual([['duration', '2026-01-11 07:00', 12]]);
    // The clock showed 02:30 twice that night.
    expect(soaks('zone Europe/Vienna\nsoak VER-24 2026-10-25 02:30, water, 12 h')[0]![2]).toBe(12);
  });

  // Summer time begins on 2026-03-29 and ends on 2026-10-25 in the European Union (directive 2000/84/EC).
  test('has the hours that really passed, where the zone is written', () => {
    const spring = 'soak VER-24 2026-03-28 19:00, water\nlift VER-24 2026-03-29 19:00';
    const autumn = 'soak VER-24 2026-10-24 19:00, water\nlift VER-24 2026-10-25 19:00';
    expect(soaks(`zone Europe/Vienna\n${spring}`)[0]![2]).toBe(23);
    expect(soaks(`zone Europe/Vienna\n${autumn}`)[0]![2]).toBe(25);
    expect(soaks(spring)[0]![2]).toBe(24);
    expect(soaks('zone Europe/Vienna\nsoak VER-24 2026-03-28 19:00, water, 24 h')).toEqual([['duration', '2026-03-29 20:00', 24]]);
    expect(soaks('zone Europe/Vienna\nsoak VER-24 2026-03-28 19:00, water, 1 day')).toEqual([['duration', '2026-03-29 19:00', 23]]);
    // In Chile the clocks go forward at midnight: 2026-09-06 has no 00:30.
    expect(soaks('zone America/Santiago\nsoak VER-24 2026-09-05 20:00, water, until 2026-09-06 08:00')[0]![2]).toBe(11);
  });

  test('says that it was timed by the clock on the wall without a zone', () => {
    const wallClock = (zone: string) => batchOf(`${zone}\nlot VER-24 Veratrum\nsoak VER-24 2026-01-10 19:00, water\nlift VER-24 2026-01-11 19:00`)
      .soaks[0]!.length!.wallClock;
    expect(wallClock('zone Europe/Vienna')).toBe(false);
    expect(wallClock('zone Europe/Nowhere')).toBe(true);
    expect(wallClock('#')).toBe(true);
  });

  test('may be one of several, each with its own lift', () => {
    expect(soaks(`
      soak VER-24 2026-01-10 18:00, bleach 1 %, 10 min
      soak VER-24 2026-01-10 18:30, GA3 500 ppm
      lift VER-24 2026-01-11 18:30
    `)).toEqual([['duration', '2026-01-10 18:10', 1 / 6], ['lift', '2026-01-11 18:30', 24]]);
  });

  test('without times on one day is any length up to a day', () => {
    expect(soaks('day 2026-01-10\nsoak VER-24, water\nlift VER-24\nsoak VER-24, GA3 500 ppm\nlift VER-24')).toEqual([
      ['lift', '2026-01-10', [0, 24]], ['lift', '2026-01-10', [0, 24]],
    ]);
  });
});

describe('a soak in the middle of which batches are split off', () => {
  const source = `
    soak VER-24 2026-01-10 19:00, water
    split VER-24 2026-01-11 07:00, B 20 seeds
    lift VER-24/B 2026-01-11 07:00
    lift VER-24 2026-01-11 19:00
  `;

  test('has an end of its own in each of them', () => {
    expect(soaks(source)).toEqual([['lift', '2026-01-11 19:00', 24]]);
    expect(soaks(source, 'VER-24/B')).toEqual([['lift', '2026-01-11 07:00', 12]]);
  });

  test('is told the same in what a batch inherits', () => {
    const batch = batchOf(`lot VER-24 Veratrum, 60 seeds\n${source.replace(/^ +/gm, '')}`, 'VER-24/B');
    expect(batch.inherited.map(event => event.type === 'soak' && when(event.soak.end))).toEqual(['2026-01-11 07:00']);
    expect(batch.inherited[0]).toMatchObject({ soak: batch.soaks[0] });
  });

  test('is over for a parent that has no seeds left', () => {
    expect(soaks('soak VER-24/A 2026-01-10 19:00, water\nsplit VER-24/A 2026-01-11 07:00, 1 10 seeds, 2 10 seeds', 'VER-24/A'))
      .toEqual([['next', '2026-01-11 07:00', [0, 12]]]);
    expect(soaks('soak VER-24/A 2026-01-10 19:00, water\nsplit VER-24/A 2026-01-11 07:00, 1 10 seeds, 2 10 seeds', 'VER-24/A/1'))
      .toEqual([[undefined, undefined, undefined]]);
  });

  test('is the same for all of them when it had ended', () => {
    const ended = 'soak VER-24/A 2026-01-10 19:00, water\nlift VER-24/A 2026-01-11 07:00\nsplit VER-24/A 2026-01-12, 1 10 seeds, 2 10 seeds';
    for (const path of ['VER-24/A', 'VER-24/A/1', 'VER-24/A/2']) expect(soaks(ended, path)).toEqual([['lift', '2026-01-11 07:00', 12]]);
  });
});
