import { describe, expect, it } from 'vitest';
import { reportText } from '../../server/src/report/text.ts';
import { at, reportFor } from './helpers.ts';

/** Counts chosen so that three of the batches are examples of Newcombe 1998, Table I: 0/20, 1/29 and 15/148. */
const JOURNAL = `
  lot TRO-25 Trollius europaeus, 240 seeds, collected 2025-07, from own bed, stored dry, dormancy PD
  split TRO-25, A 20 seeds, B 29 seeds, C 148 seeds
  stock G1 2026-01-02, GA3 20 mg, purity 90 %, 18 mL
  dilute G2 2026-01-02, from G1 10 mL, to 20 mL
  soak TRO-25/A 2026-01-03 19:00, water, 24 h
  soak TRO-25/B 2026-01-03 19:00, G2 10 mL, 24 h
  chill TRO-25/C 2026-01-04, 4 C, 90 days
  sow TRO-25/A 2026-01-04 19:00
  sow TRO-25/B 2026-01-04 19:00
  count TRO-25/A 2026-01-18, 0
  count TRO-25/B 2026-01-18, 1
  count TRO-25/C 2026-02-01, 10
  count TRO-25/C 2026-03-01, 5, 2 emerged, 3 rotted
  cut TRO-25/A 2026-03-01, 17 fresh, 2 dead, 1 empty
`;

describe('a report in plain text', () => {
  it('says of what a percentage is where seed was split off since, and why there is no T50', () => {
    const text = reportText([reportFor(`
      lot PAE-25 Paeonia obovata, 90 seeds
      warm PAE-25 2025-09-02, 20 C
      count PAE-25 2025-11-01, 4
      split PAE-25 2025-11-25, A 40 seeds
      sow PAE-25/A 2025-11-26, 20 seeds
      sow PAE-25/A 2025-12-06, 20 seeds
      count PAE-25/A 2026-02-01, 5
    `, at('2026-03-15'))]);
    expect(text).toContain('  The percentage of PAE-25 is of 90 seeds, not sown. Some of its seed was split off later.\n');
    expect(text).toContain('  No T50 for PAE-25/A: it was sown in portions, each with its own day 0.\n');
    expect(text.match(/No T50|The percentage/g)).toHaveLength(2);
  });

  it('says of estimated seed once what its percentages are of, and a range of one number as one number', () => {
    const text = reportText([reportFor(`
      lot PAE-25 Paeonia obovata, 90 seeds
      split PAE-25, A 20 to 30 seeds, B 20 to 30 seeds, C 10 to 12 seeds
      sow PAE-25/A 2025-11-26
      sow PAE-25/B 2025-11-26
      count PAE-25/A 2026-02-01, 5
      count PAE-25/B 2026-02-01, 0
      count PAE-25/C 2025-11-20, 1
      sow PAE-25/C 2025-11-26
    `, at('2026-03-15'))]).replaceAll(/\s+/g, ' ');
    expect(text).toContain('PAE-25/A untreated 20 to 30 5 16.7 to 25.0 ');
    expect(text).toContain('PAE-25/B untreated 20 to 30 0 0.0 0.0 to 16.1 ');
    expect(text).toContain('The percentages of PAE-25/A and PAE-25/B are each of 20 to 30 sown, estimated. They cover every number in that range. '
      + 'The percentage of PAE-25/C is of 10 to 12 seeds before the sowing, estimated. It covers every number in that range.');
  });

  it('explains what a planned stage is where one is shown', () => {
    const source = (regime: string) => reportText([reportFor(`
      regime woodland, warm 20 C 12 weeks, chill 4 C 14 weeks
      lot PAR-25 Paris quadrifolia, 30 seeds
      sow PAR-25 2025-10-06${regime}
    `, at('2026-02-01'))]);
    expect(source(', regime woodland')).toContain(
      '\n“Planned”: a stage of the regime with no record of its own. “Passed”: its time is over.\n');
    expect(source('')).not.toContain('“Planned”');
  });

  it('says between which looks in the cold seed germinated that was sown later', () => {
    const text = reportText([reportFor(`
      lot PAR-25 Paris quadrifolia, 30 seeds
      chill PAR-25 2025-10-11, 4 C, 12 weeks
      count PAR-25 2025-11-08, 0
      count PAR-25 2025-12-10, 5
      sow PAR-25 2026-01-03
    `, at('2026-03-15'))]);
    expect(text).toMatch(/ day -56 to -24 +-24$/m);
    expect(text).toMatch(/ PAR-25 +day -56 to -24 +-56 to -24 +sown, day 71$/m);
  });

  it('has a table for each lot, its numbers right and their reading explained', () => {
    // 20 mg of 90 % in 18 mL is 1000 ppm, half of it 500. TRO-25/C: 15 of 148, first found after 28 days of cold; mean
    // (10 x 28 + 5 x 56) / 15 = 37.3, by the counts before (5 x 28) / 15 = 9.3.
    expect(reportText([reportFor(JOURNAL, at('2026-03-15'))])).toBe(`Report as of 2026-03-15

TRO-25  Trollius europaeus
240 seeds, collected 2025-07, from own bed, stored dry, dormancy PD, 43 seeds kept back
  Batch     Treatment         Seeds  Sown  Germinated     %  95 % interval          First  Last
  TRO-25/A  water 24 h           20    20           0   0.0    0.0 to 16.1              –     –
  TRO-25/B  GA3 500 ppm 24 h     29    29           1   3.4    0.6 to 17.2  before day 14    14
  TRO-25/C  4 C 90 days         148     –          15  10.1    6.2 to 16.0  before day 28    56

  Batch               T50  Mean time  % of full  % of viable  Emerged  Rotted
  TRO-25/A              –          –        0.0          0.0        0       0
  TRO-25/B  before day 14   up to 14          –            –        0       0
  TRO-25/C  before day 28    9 to 38          –            –        2       3

  Batch     Cut test                   State
  TRO-25/A  17 fresh, 2 dead, 1 empty  closed 2026-03-01 by cut
  TRO-25/B  –                          sown, day 70
  TRO-25/C  –                          4 C for 70 of 90 days
  Days of TRO-25/C count from the start of the first stage on 2026-01-04.

  Treated against untreated
    GA3 500 ppm 24 h (B) against water 24 h (A)
      Cannot tell yet: by day 14, 1 of 29 treated seeds had germinated (3 %) and 0 of 20 untreated
      (0 %): 3 points more (95 % interval -13 to 17). 28 of 29 treated seeds may still germinate.

% is the share of the seed sown, less lost, that germinated (of the seed in the batch if none was
sown), with Wilson’s 95 % interval.
First: the counts between which the first seed germinated. Last: the count that found the last one.
Days count from sowing (or the end of the soak, or the first stage).
A seed that emerged or has a leaf counts as germinated. So does a seedling that died; rotted seed
does not.
– means unknown. Empty columns are left out.
T50: the counts between which half of the seed that germinated came up: seed (G + 1) / 2 of G, after
Coolbear. Mean time: in days. Both are ranges, because seed germinates between two counts.
% of full leaves out seed that the cut test found empty; % of viable also leaves out seed that it
found dead.
Verdicts follow the rules in the format reference. “So far”, “yet”: seed may still germinate. Points
are percentage points, worked out before percentages are rounded.
`);
  });

  it('leaves out columns without anything to show', () => {
    const report = reportFor('lot A-1 Adonis, 30 seeds', at('2026-01-20'));
    expect(reportText([report])).toContain('  Batch  Treatment  Seeds  State\n  A-1    none yet      30  not begun\n');
  });

  it('does not round to nothing or everything what is not quite that', () => {
    const report = reportFor(`
      lot A-1 Adonis, 4000 seeds
      sow A-1 2026-01-04
      count A-1 2026-01-18, 1
      lot B-1 Bellis, 4000 seeds
      sow B-1 2026-01-04
      count B-1 2026-01-18, 3999
    `, at('2026-01-20'));
    const text = reportText([report]);
    expect(text).toMatch(/A-1 .* <0\.1 /);
    expect(text).toMatch(/B-1 .* >99\.9 /);
  });

  it('says that it has counts of later days too', () => {
    const report = reportFor(JOURNAL, at('2026-02-20'));
    expect(reportText([report])).toMatch(
      /\n2 counts dated after 2026-02-20 are included in these numbers, but no verdict rests on their\s+batches\.\n/);
  });

  it('prints no control that a journal holds', () => {
    const report = reportFor('lot A-1 Adonis \u202evernalis, 30 seeds, from \u001b[31mred bed', at('2026-01-20'));

    expect(reportText([report])).not.toMatch(/[\u001b\u202e]/);
  });

  it('paints the headings with what it is given', () => {
    const report = reportFor('lot A-1 Adonis, 30 seeds', at('2026-01-20'));
    expect(reportText([report], { width: 100, bold: text => `<${text}>`, blocks: false })).toContain('\n<A-1  Adonis>\n');
  });

  it('says within what limits the share of all the seed is where some was lost after the first had germinated', () => {
    const lostAfter = (counts: string) => reportText([reportFor(`
      lot A-1 Adonis, 30 seeds
      sow A-1 2026-01-04
      ${counts}
    `, at('2026-03-20'))]);
    expect(lostAfter('count A-1 2026-01-18, 10\n      count A-1 2026-01-25, 15 lost\n      count A-1 2026-02-01, 5'))
      .toContain('15 seeds of A-1 were lost after some had germinated. Of all 30, 50 to 100 % would have germinated,\n  whatever became of the lost.');
    expect(lostAfter('count A-1 2026-01-11, 15 lost\n      count A-1 2026-01-18, 10')).not.toContain('were lost after');
  });
});
