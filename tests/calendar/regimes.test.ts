import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { regimePlan, regimePlans, type RegimePlan } from '../../server/src/calendar/regimes.ts';
import { batchOf, day, iso, journalOf, moment } from './helpers.ts';

const base = `
regime woodland, warm 20 C 12 weeks, chill 4 C 14 weeks, warm 18 C 12 weeks
regime hardened, warm 20 C 60 days, warm 15 C 30 days, chill 4 C 90 days
regime open, warm 20 C, chill 4 C 90 days
lot PAR-26 Paris polyphylla, 16 seeds
`;

function planOf(source: string, now: string, path = 'PAR-26'): RegimePlan {
  const journal = journalOf(base + source);
  return regimePlan(batchOf(journal, path), moment(now))!;
}

/** Each stage with its state and its days. */
function laid(source: string, now: string): string[] {
  return shown(planOf(source, now));
}

function shown({ stages }: RegimePlan): string[] {
  return stages.map(({ stage, state, start, end }) => `${stage} ${state} ${iso(start) ?? '?'} ${iso(end) ?? '?'}`);
}

const sown = 'sow PAR-26 2026-09-06, regime woodland\n';

describe('a regime', () => {
  it('is laid out from the day of the sowing', () => {
    expect(laid(sown, '2026-09-06')).toEqual([
      'warm running 2026-09-06 2026-11-29', 'chill to come 2026-11-29 2027-03-07', 'warm to come 2027-03-07 2027-05-30',
    ]);
    expect(iso(planOf(sown, '2026-09-06').end)).toBe('2027-05-30');
  });

  it('is to come as a whole before the sowing', () => {
    expect(laid(sown, '2026-09-05').map(line => line.split(' 2026')[0])).toEqual(['warm to come', 'chill to come', 'warm to come 2027-03-07 2027-05-30']);
    expect(planOf(sown, '2026-09-05').current).toBeUndefined();
  });

  it('counts months by the calendar, over leap days and over years', () => {
    const source = 'regime years, warm 20 C 3 months, chill 4 C 3 months, warm 20 C 1 year\nsow PAR-26 2027-08-31, regime years';
    expect(laid(source, '2027-09-01')).toEqual([
      'warm running 2027-08-31 2027-11-30', 'chill to come 2027-11-30 2028-02-29', 'warm to come 2028-02-29 2029-02-28',
    ]);
  });

  it('has records take the place of the plan and push what follows', () => {
    const chill = `${sown}chill PAR-26 2026-12-20, 5 C\n`;
    expect(laid(chill, '2027-01-01')).toEqual([
      'warm done 2026-09-06 2026-12-20', 'chill running 2026-12-20 2027-03-28', 'warm to come 2027-03-28 2027-06-20',
    ]);
    expect(laid(`${sown}chill PAR-26 2026-12-20, 5 C, 10 weeks`, '2027-01-01').slice(1)).toEqual([
      'chill running 2026-12-20 2027-02-28', 'warm to come 2027-02-28 2027-05-23',
    ]);
    expect(planOf(chill, '2027-01-01').stages[1]).toMatchObject({
      temperature: { day: 5 }, planned: { start: day('2026-11-29'), end: day('2027-03-07') },
    });
  });

  it('cannot go on before today where a stage is late', () => {
    expect(laid(sown, '2026-12-24')).toEqual([
      'warm running 2026-09-06 2026-11-29', 'chill to come 2026-12-24 2027-04-01', 'warm to come 2027-04-01 2027-06-24',
    ]);
  });

  it('is done when its last stage has had its time', () => {
    const all = `${sown}chill PAR-26 2026-11-29\nwarm PAR-26 2027-03-07\n`;
    const states = (source: string, now: string) => planOf(source, now).stages.map(({ state }) => state);
    expect(states(all, '2027-05-29')).toEqual(['done', 'done', 'running']);
    expect(states(all, '2027-05-30')).toEqual(['done', 'done', 'done']);
    expect(planOf(all, '2027-05-30')).toMatchObject({ current: undefined, next: undefined, end: day('2027-05-30') });
    // Closed before that it ended with the close, closed after that in its own time.
    expect(laid(`${all}discard PAR-26 2027-05-01`, '2027-07-01')[2]).toBe('warm done 2027-03-07 2027-05-01');
    expect(laid(`${all}discard PAR-26 2027-06-10`, '2027-07-01')[2]).toBe('warm done 2027-03-07 2027-05-30');
  });

  it('reads records out of order, and those of dates to come as a plan', () => {
    expect(laid(`warm PAR-26 2027-04-01\nchill PAR-26 2026-12-20\n${sown}`, '2026-10-01')).toEqual([
      'warm running 2026-09-06 2026-12-20', 'chill to come 2026-12-20 2027-04-01', 'warm to come 2027-04-01 2027-06-24',
    ]);
  });

  it('goes on after a second record of the same kind with its temperature and time span', () => {
    const source = `${sown}warm PAR-26 2026-09-06, 25 C\nwarm PAR-26 2026-10-04, 22 C, 10 weeks\n`;
    expect(laid(source, '2026-10-10').slice(0, 2)).toEqual(['warm running 2026-09-06 2026-12-13', 'chill to come 2026-12-13 2027-03-21']);
    expect(planOf(source, '2026-10-10').stages[0]?.temperature?.day).toBe(22);
  });

  it('begins its first stage with the record of it where there is one', () => {
    expect(laid(`${sown}warm PAR-26 2026-09-06, 20 C`, '2026-10-01')[0]).toBe('warm running 2026-09-06 2026-11-29');
    expect(laid(`${sown}warm PAR-26 2026-09-10, 20 C`, '2026-10-01')[0]).toBe('warm running 2026-09-10 2026-12-03');
  });

  it('tells two stages of a kind that follow each other apart by temperature, else by the nearer date', () => {
    const hardened = 'sow PAR-26 2026-09-01, regime hardened\n';
    const first = (more: string) => laid(hardened + more, '2026-11-20').slice(0, 2);
    expect(first('warm PAR-26 2026-09-20, 15 C')).toEqual(['warm done 2026-09-01 2026-09-20', 'warm running 2026-09-20 2026-10-20']);
    expect(first('warm PAR-26 2026-10-28, 20 C')[1]).toMatch(/^warm to come/);
    expect(first('warm PAR-26 2026-10-25')).toEqual(['warm done 2026-09-01 2026-10-25', 'warm running 2026-10-25 2026-11-24']);
    expect(first('warm PAR-26 2026-09-03')[1]).toMatch(/^warm to come/);
  });

  it('skips a stage whose successor was written', () => {
    expect(laid(`${sown}warm PAR-26 2027-03-01`, '2027-03-10')).toEqual([
      'warm done 2026-09-06 2027-03-01', 'chill skipped ? ?', 'warm running 2027-03-01 2027-05-24',
    ]);
    expect(laid(`${sown}chill PAR-26 2026-09-06`, '2026-09-10')[0]).toBe('warm skipped ? ?');
  });

  it('says what is off plan, and goes on after it', () => {
    const source = 'sow PAR-26 2026-09-01, regime hardened\nchill PAR-26 2026-11-30\nwarm PAR-26 2027-03-01, 20 C, 4 weeks\n';
    const plan = planOf(source, '2027-03-02');
    expect(plan.offPlan.map(({ entry }) => entry.line.text)).toEqual(['warm PAR-26 2027-03-01, 20 C, 4 weeks']);
    expect(plan).toMatchObject({ current: undefined, next: undefined });
    expect(shown(plan)).toEqual(['warm done 2026-09-01 2026-11-30', 'warm skipped ? ?', 'chill done 2026-11-30 2027-03-01']);
  });

  it('goes on after a record off plan on the day of the sowing, and not before today', () => {
    const source = (span: string) => `sow PAR-26 2026-09-01, regime warmth\nchill PAR-26 2026-09-01${span}\n`;
    const warmth = 'regime warmth, warm 20 C 60 days, warm 15 C 30 days\n';
    expect(laid(warmth + source(', 4 C, 20 days'), '2026-09-05')).toEqual(['warm skipped ? ?', 'warm to come 2026-09-21 2026-10-21']);
    expect(laid(warmth + source(', 4 C, 20 days'), '2026-10-05')[1]).toBe('warm to come 2026-10-05 2026-11-04');
    expect(laid(warmth + source(''), '2026-09-05')[1]).toBe('warm to come ? ?');
  });

  it('that is changed half-way begins anew with the second sowing', () => {
    const source = `${sown}chill PAR-26 2026-11-29\nsow PAR-26 2027-01-10, regime hardened\n`;
    const journal = journalOf(base + source);
    const batch = batchOf(journal, 'PAR-26');
    const plans = (now: string) => regimePlans(batch, moment(now)).map(plan => [plan.regime, ...shown(plan)]);
    expect(plans('2027-01-20')).toEqual([
      ['woodland', 'warm done 2026-09-06 2026-11-29', 'chill done 2026-11-29 2027-01-10', 'warm not reached ? ?'],
      ['hardened', 'warm running 2027-01-10 2027-03-11', 'warm to come 2027-03-11 2027-04-10', 'chill to come 2027-04-10 2027-07-09'],
    ]);
    expect(regimePlan(batch, moment('2027-01-20'))?.regime).toBe('hardened');
    expect(regimePlan(batch, moment('2026-12-20'))?.regime).toBe('woodland');
    expect(regimePlans(batch, moment('2027-01-20'))[0]?.cutShort?.line.text).toBe('sow PAR-26 2027-01-10, regime hardened');
  });

  it('that the batch was closed in is cut short', () => {
    const plan = planOf(`${sown}discard PAR-26 2026-10-01, soft`, '2026-12-01');
    expect(shown(plan)).toEqual(['warm done 2026-09-06 2026-10-01', 'chill not reached ? ?', 'warm not reached ? ?']);
    expect(plan).toMatchObject({ current: undefined, next: undefined, end: undefined });
    expect(plan.cutShort?.record.keyword).toBe('discard');
    // On the last day of a stage the next one is not reached.
    expect(laid(`${sown}discard PAR-26 2026-11-29, soft`, '2026-11-29')[1]).toBe('chill not reached ? ?');
  });

  it('gives no dates after a stage without a time span, until the next one is written', () => {
    const open = 'sow PAR-26 2026-09-06, regime open\n';
    expect(laid(open, '2026-10-01')).toEqual(['warm running 2026-09-06 ?', 'chill to come ? ?']);
    expect(laid(`${open}chill PAR-26 2026-12-01`, '2026-12-02')).toEqual(['warm done 2026-09-06 2026-12-01', 'chill running 2026-12-01 2027-03-01']);
  });

  it('goes along with the seed that is split off', () => {
    const source = `${sown}split PAR-26 2026-10-01, A 8 seeds, B 8 seeds\nchill PAR-26/A 2026-11-01\n`;
    expect(shown(planOf(source, '2026-11-10', 'PAR-26/A'))[1]).toBe('chill running 2026-11-01 2027-02-07');
    expect(shown(planOf(source, '2026-11-10', 'PAR-26/B'))[1]).toBe('chill to come 2026-11-29 2027-03-07');
  });

  it('is none where the batch was sown in none, or where no record defines it', () => {
    expect(planOf('sow PAR-26 2026-09-06', '2026-10-01')).toBeUndefined();
    expect(planOf('sow PAR-26 2026-09-06, regime woodlnad', '2026-10-01')).toBeUndefined();
  });
});

describe('whatever is written', () => {
  const kinds = fc.array(fc.constantFrom('chill', 'warm'), { minLength: 1, maxLength: 6 });
  const records = fc.array(fc.tuple(fc.constantFrom('chill', 'warm'), fc.nat(700), fc.option(fc.integer({ min: 1, max: 200 }))), { maxLength: 6 });

  it('stages that have days are in order and do not overlap, and none that is to come begins before today', () => {
    fc.assert(fc.property(kinds, records, fc.integer({ min: -10, max: 900 }), (stages, written, later) => {
      const now = day('2026-01-01') + later;
      const lines = [
        `regime r, ${stages.map((stage, i) => `${stage} ${i + 1} C ${10 * (i + 1)} days`).join(', ')}`, 'lot A Iris alba, 9 seeds',
        'sow A 2026-01-01, regime r',
        ...written.map(([kind, at, span]) => `${kind} A ${iso(day('2026-01-01') + at)}${span === null ? '' : `, ${span} days`}`),
      ];
      const journal = journalOf(lines.join('\n'));
      const plan = regimePlan(batchOf(journal, 'A'), { day: now, minutes: undefined })!;
      let last = -Infinity;
      for (const { start, end, state, records: own } of plan.stages) {
        if (start === undefined || end === undefined) continue;
        expect(start).toBeGreaterThanOrEqual(last);
        expect(end).toBeGreaterThanOrEqual(start);
        if (state === 'to come' && own.length === 0) expect(start).toBeGreaterThanOrEqual(now);
        last = end;
      }
      expect(plan.stages.filter(({ state }) => state === 'running').length).toBeLessThanOrEqual(1);
      expect(plan.stages.flatMap(stage => stage.records).length + plan.offPlan.length).toBe(written.length);
    }));
  });
});
