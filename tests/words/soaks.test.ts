import { describe, expect, test } from 'vitest';
import { soakState } from '../../server/src/calendar/soaks.ts';
import { dosesText, noEndText, soakLengthText, soFarText } from '../../server/src/words/soaks.ts';
import type { Batch, Soak } from '../../server/src/journal/life.ts';
import { readFixture } from '../support/fixture.ts';
import { at, journalOf } from '../features/journals.ts';

/** The first soak of the lot X. */
function soakOf(lines: string): { batch: Batch; soak: Soak } {
  const journal = journalOf(readFixture(`lot X Primula japonica, 20 seeds\n${lines}`));
  const batch = journal.lot('X')!.root;
  return { batch, soak: batch.soaks[0]! };
}

describe('the length of a soak', () => {
  test.each([
    ['as it was written, without a time of day', 'soak X 2026-01-10, water, 24 h', '24 h'],
    ['as it was written, in minutes', 'soak X 2026-01-10 19:00, water, 30 min', '30 min'],
    ['as the clock showed, where it was lifted', 'soak X 2026-01-10 19:00, water, 24 h\nlift X 2026-01-11 18:45', '23.8 h'],
    ['as it was written, where the times of day leave it open', 'soak X 2026-01-10, water, 24 h\nlift X 2026-01-11', '24 h'],
    ['within limits, where what was written cannot be', 'soak X 2026-01-10, water, 12 h\nlift X 2026-01-12', '24 to 72 h'],
    ['within limits, where nothing was written', 'soak X 2026-01-10, water\nlift X 2026-01-12', '24 to 72 h'],
    ['at most so long, where it went on to something else', 'soak X 2026-01-10 19:00, water\nsow X 2026-01-12 07:00', 'up to 36 h'],
    ['until the end that was written', 'soak X 2026-01-10 19:00, water, until 2026-01-11 07:00', '12 h'],
    ['of no end is none', 'soak X 2026-01-10 19:00, water', undefined],
  ])('is %s', (_, lines, text) => {
    expect(soakLengthText(soakOf(lines).soak)).toBe(text);
  });
});

describe('what seed was soaked in', () => {
  test.each([
    ['an agent', 'GA3 500 ppm', 'GA3 500 ppm'],
    ['several', 'GA3 500 ppm, KNO3 0.2 %', 'GA3 500 ppm + KNO3 0.2 %'],
    ['water', 'water', 'water'],
    ['powder on a towel', 'GA3 unmeasured', 'GA3 unmeasured'],
    ['an agent without its strength', 'GA3', 'GA3'],
    ['a stock with its true strength', 'G1 10 mL', 'GA3 900 ppm (G1)'],
    ['a stock whose strength is not known', 'G2 10 mL', 'GA3 of unknown strength (G2)'],
    ['a stock of powder that was halved by eye', 'G3', 'GA3 about 1000 ppm (G3)'],
    ['what was diluted from it, twice', 'G5', 'GA3 about 250 ppm (G5)'],
    ['a bit of it beside one that was weighed', 'G3 10 mL, G1 10 mL', 'GA3 about 950 ppm (G3 and G1)'],
    ['a stock of a part of a packet by eye', 'G6', 'GA3 about 1000 ppm (G6)'],
    ['something that is no agent', 'kelp 5 ppm', 'kelp (unknown)'],
  ])('is %s', (_, substances, text) => {
    const stocks = `stock G1 2026-01-01, GA3 18 mg, purity 50 %, 10 mL
stock G2 2026-01-01, GA3 18 mg
stock G3 2026-01-01, GA3 400 mg halved 2 times, 100 mL
dilute G4 2026-01-02, from G3 10 mL, to 20 mL
dilute G5 2026-01-02, from G4 10 mL, to 20 mL
powder P1 2026-01-01, GA3 400 mg
stock G6 2026-01-01, from P1 halved 2 times, 100 mL`;
    expect(dosesText(soakOf(`${stocks}\nsoak X 2026-01-10, ${substances}, 24 h`).soak.doses, true)).toBe(text);
  });

  test('names the stock only where asked to', () => {
    const { soak } = soakOf('stock G1 2026-01-01, GA3 10 mg, 10 mL\nsoak X 2026-01-10, G1 10 mL');
    expect(dosesText(soak.doses)).toBe('GA3 1000 ppm');
  });
});

describe('water that fills up', () => {
  test('is in the strength of the others; by itself it is water', () => {
    const told = (liquid: string) => dosesText(soakOf(`stock G2 2026-01-02, GA3 10 mg, 20 mL\nsoak X 2026-01-10, ${liquid}, 24 h`).soak.doses);
    expect(told('G2 5 mL, water 5 mL')).toBe('GA3 250 ppm');
    expect(told('water 20 mL')).toBe('water');
  });
});

describe('seed in a soak', () => {
  const planned = soakOf('soak X 2026-01-10 19:00, water, 24 h');

  test('is in it from its beginning to its end', () => {
    const times = ['2026-01-10 18:59', '2026-01-10 19:00', '2026-01-11 18:59', '2026-01-11 19:00'];
    expect(times.map(time => soakState(planned.soak, planned.batch, at(time)))).toEqual(['to come', 'in it', 'in it', 'out']);
  });

  test('is in it with no end written, until the batch is closed', () => {
    const { batch, soak } = soakOf('soak X 2026-01-10 19:00, water\ndiscard X 2026-01-12 08:00, soft');
    expect(soakState(soak, batch, at('2026-01-12 07:59'))).toBe('in it');
    expect(soakState(soak, batch, at('2026-01-12 08:00'))).toBe('out');
  });

  test('with no end written is taken to be in it for 30 days and no longer', () => {
    const { batch, soak } = soakOf('soak X 2026-01-10 19:00, water');
    // 10 January and 30 days are 9 February.
    expect(soakState(soak, batch, at('2026-02-09'))).toBe('in it');
    expect(soakState(soak, batch, at('2026-02-10'))).toBe('no end recorded');
    // 783 days: 355 to the end of 2026, 365 of 2027, 63 to 3 March 2028, which is a leap year.
    expect(noEndText(soak, at('2028-03-03'))).toBe('no end recorded; it began 783 days ago');
  });

  test('has been in it for so long', () => {
    expect(soFarText(planned.soak, at('2026-01-11 00:30'), 'Europe/Vienna')).toBe('5.5 h so far');
    expect(soFarText(planned.soak, at('2026-01-11 00:30'), undefined)).toBe('5.5 h by the wall clock so far');
    expect(soFarText(planned.soak, at('2026-01-11'), 'Europe/Vienna')).toBe('at least 5 h so far');
  });
});
