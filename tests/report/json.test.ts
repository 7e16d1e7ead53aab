import { describe, expect, it } from 'vitest';
import type { Interval } from '../../server/src/measures/measured.ts';
import { reportData } from '../../server/src/report/json.ts';
import { at, reportFor } from './helpers.ts';

const dataOf = (...args: Parameters<typeof reportFor>): unknown =>
  JSON.parse(JSON.stringify(reportData(reportFor(...args))));

describe('a report as data', () => {
  it('has every number at full precision, days as dates, and null for what is not known', () => {
    const data = dataOf(`
      zone Europe/Vienna
      lot A-1 Adonis vernalis, 49 seeds, collected 2025, dormancy PD
      split A-1, A 29 seeds
      stock G1 2026-01-02, GA3 20 mg, 60 mL
      soak A-1/A 2026-01-03 19:00, G1 10 mL, KNO3 0.2 %, at jar 1
      lift A-1/A 2026-01-04 18:30
      sow A-1/A 2026-01-04 19:00, 29 seeds, 20/10 C, in grit, at shelf 2
      count A-1/A 2026-01-18, 1
    `, at('2026-01-20', 8));
    expect(data).toMatchObject({
      now: '2026-01-20T08:00', zone: 'Europe/Vienna', linesWithoutLot: 0,
      lots: [{
        id: 'A-1', plant: 'Adonis vernalis', file: 'journal.germ', line: 2, seeds: 49,
        collected: { first: '2025-01-01', last: '2025-12-31' }, from: null, stored: null, dormancy: 'PD', errors: 0,
        batches: [{ batch: 'A-1', kept: 20, sown: null, totals: null, germination: { undefined: 'not counted yet' } }, {
          batch: 'A-1/A', seeds: 29, kept: 29, sown: 29, dayZero: { date: '2026-01-04', by: 'sowing' },
          soaks: [{
            start: '2026-01-03T19:00', end: '2026-01-04T18:30', endedBy: 'lift', hours: { least: 23.5, most: 23.5 },
            doses: [
              // 20 mg in 60 mL
              { agent: 'GA3', stock: 'G1', ppm: 1000 / 3, unmeasured: false },
              { agent: 'KNO3', stock: null, ppm: 2000, unmeasured: false },
            ],
          }],
          stages: [], cut: null, days: { first: 14, last: 14 },
          place: 'shelf 2', medium: 'grit', temperature: { day: 20, night: 10, unit: 'C' },
          totals: { germinated: 1, emerged: 0, leaf: 0, rotted: 0, died: 0, lost: 0, leggy: 0, abnormal: 0 },
          germination: { germinated: 1, of: 29, ofWhat: '29 sown', share: 1 / 29 },
          state: { kind: 'sown', since: '2026-01-04', days: 16 },
        }],
      }],
    });
    const { lots: [lot] } = data as { lots: { batches: { germination: Record<string, Interval> }[] }[] };
    const { germination } = lot!.batches[1]!;
    // binom.test(1, 29) of R, and Newcombe 1998, Table I
    expect(germination.clopperPearson!.high).toBeCloseTo(0.1776, 4);
    expect(germination.wilson!.low).toBeCloseTo(0.0061, 4);
  });

  it('tells what rotted, of the seed that the percentages are of', () => {
    const { lots: [lot] } = dataOf(`
      lot A-1 Adonis vernalis, 30 seeds
      sow A-1 2026-01-04
      count A-1 2026-01-18, 12, 3 rotted, 2 lost
    `, at('2026-01-20')) as { lots: { batches: { totals: object; measures: { rotted: object } }[] }[] };
    expect(lot!.batches[0]).toMatchObject({
      totals: { germinated: 12, rotted: 3, lost: 2 },
      measures: { rotted: { share: 3 / 28 } },
    });
  });

  it('has the reason in place of a number that cannot be given', () => {
    expect(dataOf(`
      lot A-1 Adonis vernalis
      soak A-1 2026-01-03 19:00, GA3 unmeasured, 24 h
      sow A-1 2026-01-04
      count A-1 2026-01-18, 3
    `, at('2026-01-20'))).toMatchObject({
      lots: [{
        seeds: null,
        batches: [{
          sown: null, germination: { undefined: expect.stringContaining('number of seeds') },
          soaks: [{ doses: [{ agent: 'GA3', unmeasured: true, ppm: { undefined: expect.any(String) } }] }],
        }],
      }],
    });
  });

  it('tells of each state with its own facts', () => {
    const state = (now: ReturnType<typeof at>) => (dataOf(`
      lot A-1 Adonis vernalis, 30 seeds
      soak A-1 2026-01-10 19:00, water, 24 h
      chill A-1 2026-01-12, 39.2 F, 12 weeks
      discard A-1 2026-07-01, all soft
    `, now) as { lots: { batches: { state: unknown; stages: unknown }[] }[] }).lots[0]!.batches[0]!;
    expect(state(at('2026-01-01')).state).toEqual({ kind: 'not begun' });
    expect(state(at('2026-01-11', 8)).state).toEqual({ kind: 'in soak', since: '2026-01-10T19:00', until: '2026-01-11T19:00' });
    expect(state(at('2026-01-11', 20)).state).toEqual({ kind: 'soaked', since: '2026-01-11T19:00' });
    const chilled = state(at('2026-02-11'));
    expect(chilled.state).toEqual({ kind: 'in stage', stage: 'chill', since: '2026-01-12', days: 30, planned: 84 });
    expect(chilled.stages).toEqual([
      {
        stage: 'chill', temperature: { day: 39.2, night: null, unit: 'F' }, planned: { value: 12, unit: 'weeks' },
        start: '2026-01-12', end: '2026-07-01',
      },
    ]);
    expect(state(at('2026-07-02')).state).toEqual({ kind: 'closed', by: 'discard', on: '2026-07-01' });
  });
});
