import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

const block = (text: string | undefined, start: string) => text?.split('\n\n').find(each => each.startsWith(start));

const REGIME = 'regime woodland, warm 20 C 12 weeks, chill 4 C 14 weeks, warm 18 C 12 weeks';

describe('hover on a batch in a regime', () => {
  test('shows what is done and what is to come, pushed by what was written', () => {
    const text = hover(`
      ${REGIME}
      lot PAR-26 Paris quadrifolia, 20 seeds
          ^^^^^^ here
      sow PAR-26 2026-01-01, 20 seeds, regime woodland
      chill PAR-26 2026-04-02, 4 C
    `, '2026-04-12');
    // Python 3.11, datetime: 2026-01-01 and 12 weeks are 2026-03-26; 2026-04-02 and 14 weeks 2026-07-09, and 12 more
    // 2026-10-01.
    expect(text).toContain(`**Regime woodland**, sown 2026-01-01:

- warm 20 C 12 weeks: done, 2026-01-01 to 2026-04-02 (planned, passed)
- chill 4 C 14 weeks: since 2026-04-02, 10 of 98 days, ends 2026-07-09 (planned from 2026-03-26)
- warm 18 C 12 weeks: to come, 2026-07-09 to 2026-10-01 (planned from 2026-07-02)

It ends 2026-10-01 at the earliest (in 5 months).

Chill so far 10 of 98 days, 240 of 2352 h within 0 to 10 °C (whole calendar days; 0 and 10 °C are included).`);
  });

  test('tells of a second winter the cold in all and that of the stage that goes on', () => {
    const text = hover(`
      regime two, chill 4 C 100 days, warm 18 C 50 days, chill 4 C 80 days
      lot COR-26 Cornus mas, 20 seeds
          ^^^^^^ here
      sow COR-26 2026-01-01, 20 seeds, regime two
      warm COR-26 2026-04-11, 18 C, 50 days
      chill COR-26 2026-05-31, 4 C, 80 days
    `, '2026-06-10');
    expect(block(text, 'Chill')).toBe('Chill so far 110 of 180 days, 2640 of 4320 h within 0 to 10 °C (whole calendar days; '
      + '0 and 10 °C are included). In the current stage 10 of 80 days, 240 of 1920 h within 0 to 10 °C.');
  });

  test('says by what it was cut short, and what the regime does not have', () => {
    const text = hover(`
      ${REGIME}
      lot PAR-26 Paris quadrifolia, 20 seeds
          ^^^^^^ here
      sow PAR-26 2026-01-01, 20 seeds, regime woodland
      discard PAR-26 2026-02-01, mould
    `, '2026-04-12');
    expect(text).toContain('- chill 4 C 14 weeks: not reached\n- warm 18 C 12 weeks: not reached\n\nCut short on 2026-02-01 by “discard”.');
    expect(block(hover(`
      regime w, warm 20 C 12 weeks
      lot PAR-26 Paris quadrifolia, 20 seeds
          ^^^^^^ here
      sow PAR-26 2026-01-01, 20 seeds, regime w
      chill PAR-26 2026-02-01, 4 C, 10 days
    `, '2026-02-05'), 'Not in')).toBe('Not in the regime: 4 C 10 days from 2026-02-01.');
  });

  test('says nothing of days that nobody can know', () => {
    const text = hover(`
      regime open, chill 4 C, warm 18 C 12 weeks
      lot PAR-26 Paris quadrifolia, 20 seeds
          ^^^^^^ here
      sow PAR-26 2026-01-01, 20 seeds, regime open
    `, '2026-01-11');
    expect(text).toContain('- chill 4 C: since 2026-01-01, 10 days, no length recorded (planned)\n'
      + '- warm 18 C 12 weeks: to come; its date is unknown because an earlier stage has no length\n\n'
      + 'Chill so far 10 days, planned length not recorded, 240 h within 0 to 10 °C');
  });
});

describe('a stage that nobody wrote down', () => {
  const journal = `
    ${REGIME}
    lot PAR-26 Paris quadrifolia, 20 seeds
        ^^^^^^ here
    sow PAR-26 2026-01-01, 20 seeds, regime woodland
  `;

  test('is marked as planned, and as passed when its time is over, in the list and in the life line', () => {
    const text = hover(journal, '2026-07-12');
    expect(block(text, 'sown')).toBe('sown 6 months ago under the regime woodland, 20 C 12 weeks (planned, passed), '
      + '4 C 14 weeks (planned, passed), 18 C 12 weeks (planned)');
    // As to when nothing was written, the days of the plan and the earliest that is left both stand there.
    expect(text).toContain(`
- warm 20 C 12 weeks: since 2026-01-01, 192 of 84 days, should have ended 2026-03-26 (planned, passed)
- chill 4 C 14 weeks: no record; in the regime 2026-03-26 to 2026-07-02 (planned, passed); if it has not started, 2026-07-12 at the earliest
- warm 18 C 12 weeks: no record; in the regime 2026-07-02 to 2026-09-24 (planned); if it has not started, 2026-10-18 at the earliest
`);
  });
});

describe('hover on a chilled batch', () => {
  const chill = (facts: string) => block(hover(`
    lot PAR-26 Paris quadrifolia, 20 seeds
        ^^^^^^ here
    chill PAR-26 2026-01-01, ${facts}
  `, '2026-01-11'), 'Chill');

  test('counts hours by day and by night, and says so', () => {
    expect(chill('12/4 C, 20 days')).toBe('Chill so far 10 of 20 days, 120 of 240 h within 0 to 10 °C (whole calendar days; '
      + '0 and 10 °C are included; a day and a night temperature count for 12 h each).');
  });

  test('counts no hours where no temperature is written', () => {
    expect(chill('20 days')).toBe('Chill so far 10 of 20 days (whole calendar days; no hours, because a temperature is missing).');
  });

  test('says nothing of cold where there is none', () => {
    expect(block(hover(`
      lot PAR-26 Paris quadrifolia, 20 seeds
          ^^^^^^ here
      warm PAR-26 2026-01-01, 20 C, 20 days
    `, '2026-01-11'), 'Chill')).toBeUndefined();
  });
});

describe('hover on the regime of a sowing', () => {
  test('shows its dates for that batch', () => {
    expect(hover(`
      ${REGIME}
      lot PAR-26 Paris quadrifolia, 20 seeds
      sow PAR-26 2026-01-01, 20 seeds, regime woodland
                                              ^^^^^^^^ here
    `, '2026-01-11')).toMatchInlineSnapshot(`
      "**woodland** · regime of PAR-26 from the sowing on 2026-01-01

      - warm 20 C 12 weeks: since 2026-01-01, 10 of 84 days, ends 2026-03-26 (planned)
      - chill 4 C 14 weeks: to come, 2026-03-26 to 2026-07-02
      - warm 18 C 12 weeks: to come, 2026-07-02 to 2026-09-24

      It ends 2026-09-24 at the earliest (in 8 months)."
    `);
  });
});
