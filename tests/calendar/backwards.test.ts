import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scheduleFor, scheduleFrom, scheduleRecords, type Schedule } from '../../server/src/calendar/backwards.ts';
import { stagesOf } from '../../server/src/calendar/regime-match.ts';
import type { Duration, DurationUnit } from '../../server/src/model/quantity.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { day, iso } from './helpers.ts';

const regime = (facts: string) => stagesOf(parse(`regime r, ${facts}`).record!);
const woodland = regime('warm 20 C 12 weeks, chill 4 C 14 weeks, warm 18 C 12 weeks');
const around = { soak: { value: 24, unit: 'h' }, daysAfter: 0 } as const;

function shown(schedule: ReturnType<typeof scheduleFrom>) {
  if ('undefined' in schedule) return schedule;
  const { soak, sow, stages, ready } = schedule;
  return { soak: iso(soak), sow: iso(sow), stages: stages.map(({ start }) => iso(start)), ready: iso(ready) };
}

describe('a schedule from a day', () => {
  it('soaks before the sowing and lays out the stages from it', () => {
    expect(shown(scheduleFrom(day('2026-09-06'), woodland, around))).toEqual({
      soak: '2026-09-05', sow: '2026-09-06', stages: ['2026-09-06', '2026-11-29', '2027-03-07'], ready: '2027-05-30',
    });
  });

  it('counts a part of a day of soaking as a whole one, and none without a soak', () => {
    const soak = (value: number, unit: DurationUnit) =>
      iso((scheduleFrom(day('2026-09-06'), [], { soak: { value, unit }, daysAfter: 0 }) as Schedule).soak);
    expect([soak(12, 'h'), soak(24, 'h'), soak(36, 'h'), soak(2, 'days')]).toEqual(['2026-09-05', '2026-09-05', '2026-09-04', '2026-09-04']);
    // As long before it as the month from it is, 30 days.
    expect(soak(1, 'months')).toBe('2026-08-07');
    expect(shown(scheduleFrom(day('2026-09-06'), [], { soak: undefined, daysAfter: 20 }))).toEqual({
      soak: undefined, sow: '2026-09-06', stages: [], ready: '2026-09-26',
    });
  });

  it('is undefined, with the reason, where a stage has no length', () => {
    expect(scheduleFrom(day('2026-09-06'), regime('warm 20 C 12 weeks, chill 4 C'), around))
      .toEqual({ undefined: 'stage 2 of the regime (chill) has no length' });
    expect(scheduleFor(day('2026-09-06'), regime('chill'), around)).toHaveProperty('undefined');
  });
});

describe('a schedule for a wanted day', () => {
  it('begins so that it is ready by then', () => {
    expect(shown(scheduleFor(day('2027-05-01'), regime('chill 4 C 90 days'), { soak: undefined, daysAfter: 21 }))).toMatchObject({
      sow: '2027-01-10', ready: '2027-05-01',
    });
    expect(shown(scheduleFor(day('2027-05-30'), woodland, around))).toMatchObject({ soak: '2026-09-05', sow: '2026-09-06' });
  });

  it('goes by the calendar where the time span is in months', () => {
    expect(shown(scheduleFor(day('2028-02-29'), regime('chill 3 months'), around))).toMatchObject({ sow: '2027-11-30', ready: '2028-02-29' });
    expect(shown(scheduleFor(day('2027-02-28'), regime('chill 3 months'), around))).toMatchObject({ sow: '2026-11-30', ready: '2027-02-28' });
  });

  const span: fc.Arbitrary<Duration> = fc.record({
    value: fc.integer({ min: 1, max: 20 }), unit: fc.constantFrom('h', 'days', 'weeks', 'months', 'years'),
  });

  it('is the latest that is ready in time: a day later is too late', () => {
    const wantedDay = fc.integer({ min: -5000, max: 40_000 });
    fc.assert(fc.property(fc.array(span, { maxLength: 6 }), wantedDay, fc.nat(200), (spans, wanted, daysAfter) => {
      const stages = spans.map(duration => ({ stage: 'chill' as const, temperature: undefined, duration }));
      const more = { soak: undefined, daysAfter };
      const plan = scheduleFor(wanted, stages, more) as Schedule;
      expect(plan.ready).toBeLessThanOrEqual(wanted);
      expect((scheduleFrom(plan.sow + 1, stages, more) as Schedule).ready).toBeGreaterThan(wanted);
    }));
  });
});

describe('the records of a schedule', () => {
  it('are reminders that read without a problem', () => {
    const schedule = scheduleFor(day('2027-05-30'), woodland, around) as Schedule;
    const records = scheduleRecords('PAR-26/A', schedule, 'woodland', around.soak);
    expect(records).toEqual([
      'due PAR-26/A 2026-09-05, soak 24 h, to be sown on 2026-09-06',
      'due PAR-26/A 2026-09-06, sow in regime woodland, warm 20 C 12 weeks',
      'due PAR-26/A 2026-11-29, chill 4 C 14 weeks',
      'due PAR-26/A 2027-03-07, warm 18 C 12 weeks',
    ]);
    for (const record of records) expect(parse(record).problems).toEqual([]);
  });
});
