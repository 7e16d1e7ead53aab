import { describe, expect, it } from 'vitest';
import { reportData } from '../../server/src/report/json.ts';
import { stateText } from '../../server/src/words/state.ts';
import { reportMarkdown } from '../../server/src/report/markdown.ts';
import { reportText } from '../../server/src/report/text.ts';
import { at, reportFor } from '../report/helpers.ts';

const JOURNAL = `
  lot A-1 Adonis vernalis, 30 seeds
  soak A-1 2026-01-10 19:00, GA3 500 ppm, 24 h
  sow A-1 2026-01-11 19:10, 30 seeds, 20 C
  warm A-1 2026-02-01, 20 C
  chill A-1 2026-03-01, 4 C, 12 weeks
  cut A-1 2026-07-01, 30 fresh
  note A-1 2026-07-02, one sound seed kept for the picture
`;

function state(now: ReturnType<typeof at>, journal = JOURNAL): string {
  return stateText(reportFor(journal, now).lots[0]!.batches[0]!.state, now);
}

describe('where a batch stands', () => {
  it('is told by the last thing that was done to it by now', () => {
    expect(state(at('2026-01-09'))).toBe('not begun');
    expect(state(at('2026-01-10', 18, 59))).toBe('not begun');
    expect(state(at('2026-01-10', 19))).toBe('in soak since 2026-01-10 19:00, out 2026-01-11 19:00');
    expect(state(at('2026-01-11', 19, 5))).toBe('out of soak 2026-01-11 19:00, not sown');
    expect(state(at('2026-01-11', 19, 10))).toBe('sown, day 0');
    expect(state(at('2026-01-31', 8))).toBe('sown, day 20');
    expect(state(at('2026-02-11', 8))).toBe('20 C for 10 days');
    // 31 days of March and 30 of April after the first of March
    expect(state(at('2026-05-01', 8))).toBe('4 C for 61 of 84 days');
    expect(state(at('2026-06-30', 8))).toBe('4 C for 121 days (84 planned)');
    expect(state(at('2026-07-01', 8))).toBe('closed 2026-07-01 by cut');
    expect(state(at('2027-07-01', 8))).toBe('closed 2026-07-01 by cut');
  });

  it('is still the soak on its last day where the time of day is not known', () => {
    const soaking = JOURNAL.split('\n').slice(0, 3).join('\n');
    expect(state(at('2026-01-11'), soaking)).toContain('in soak');
    expect(state(at('2026-01-12'), soaking)).toBe('out of soak 2026-01-11 19:00, not sown');
  });

  it('is not sown yet when it was only scarified', () => {
    const scarified = 'lot A-1 Baptisia australis, 30 seeds\nscarify A-1 2026-01-10, nicked';
    expect(state(at('2026-01-12'), scarified)).toBe('scarified 2026-01-10, not sown');
    expect(reportText([reportFor(scarified, at('2026-01-12'))])).toMatch(/A-1 +scarified +30 +scarified 2026-01-10, not sown/);
  });

  it('gives seeds that left by an estimate as a range, as data too', () => {
    const journal = `
      lot A-1 Adonis vernalis, 30 seeds
      give A-1 2026-01-10, about 10 seeds
      give A-1 2026-01-10, 2 seeds
      sow A-1 2026-01-11
    `;
    const report = reportFor(journal, at('2026-02-01'));
    expect(reportMarkdown([report])).toContain('sown, day 21; 11 to 13 seeds given away |');
    const { lots: [lot] } = reportData(report) as { lots: { batches: { leavings: unknown[] }[] }[] };
    expect(lot!.batches[0]!.leavings).toMatchObject([
      { seeds: null, estimated: { seeds: { least: 9, most: 11 } } }, { seeds: 2 },
    ]);
  });

  it('tells how many seedlings were potted by now, as data too', () => {
    const report = reportFor(`
      lot A-1 Adonis vernalis, 30 seeds
      sow A-1 2026-01-11
      count A-1 2026-02-01, 20
      pot A-1 2026-04-01, 9 seedlings
      pot A-1 2026-04-20, 3 seedlings
      plant A-1 2026-05-08, 2 seedlings
      pot A-1 2026-07-01, 4 seedlings
    `, at('2026-06-01'));
    expect(reportMarkdown([report])).toContain('sown, day 141; 12 of 20 potted, 2 of 20 planted out |');
    expect(reportData(report)).toMatchObject({ lots: [{ batches: [{ potted: 12 }] }] });
  });

  it('tells what left one part after the other, as data too', () => {
    const journal = `
      lot A-1 Adonis vernalis, 30 seeds
      sow A-1 2026-01-11, 24 seeds
      give A-1 2026-01-12, 6 seeds, to a friend
      count A-1 2026-02-01, 20
      plant A-1 2026-05-01, 3 seedlings, in the rockery
      plant A-1 2026-05-08, 2 seedlings
      lose A-1 2026-05-09, 1 seedling, to slugs
      plant A-1 2026-07-01, 9 seedlings
    `;
    const report = reportFor(journal, at('2026-06-01'));
    expect(reportMarkdown([report])).toContain('sown, day 141; 6 seeds given away, 5 of 20 planted out, 1 of 20 lost |');
    const { lots: [lot] } = reportData(report) as { lots: { batches: { leavings: unknown[] }[] }[] };
    expect(lot!.batches[0]!.leavings).toEqual([
      { on: '2026-01-12', how: 'give', whither: 'to a friend', seeds: 6, seedlings: 0 },
      { on: '2026-05-01', how: 'plant', whither: 'in the rockery', seeds: 0, seedlings: 3 },
      { on: '2026-05-08', how: 'plant', whither: null, seeds: 0, seedlings: 2 },
      { on: '2026-05-09', how: 'lose', whither: 'to slugs', seeds: 0, seedlings: 1 },
    ]);
  });

  it('tells what left before the rest was split once, where it left', () => {
    const journal = (second: string) => `
      lot A-1 Adonis vernalis, 100 seeds
      send A-1 2026-01-01, 10 seeds, to a friend
      split A-1 2026-01-02, A 40 seeds, ${second}
      give A-1/A 2026-01-03, 4 seeds
      split A-1/A 2026-01-04, 1 18 seeds, 2 18 seeds
      sow A-1/A/1 2026-01-11
    `;
    const dataOf = (second: string) => {
      const report = reportFor(journal(second), at('2026-02-01'));
      const { lots: [lot] } = reportData(report) as {
        lots: { leavings: object[]; batches: { batch: string; leavings: object[] }[] }[];
      };
      const told = lot!.batches.filter(({ leavings }) => leavings.length > 0);
      return { text: reportMarkdown([report]), lot: lot!, told };
    };
    const given = { batch: 'A-1/A', on: '2026-01-03', how: 'give', seeds: 4 };
    const whole = dataOf('B 50 seeds');
    expect(whole.text).toContain('100 seeds, 10 seeds sent, of A-1/A 4 seeds given away');
    expect(whole.text.match(/seeds (sent|given away)/g)).toHaveLength(2);
    expect(whole.told).toEqual([]);
    expect(whole.lot.leavings).toMatchObject([{ batch: 'A-1', on: '2026-01-01', how: 'send', seeds: 10 }, given]);
    // Where seed stayed, its row tells it.
    const rest = dataOf('B 45 seeds');
    expect(rest.text).toContain('not begun; 10 seeds sent |');
    expect(rest.text.match(/seeds (sent|given away)/g)).toHaveLength(2);
    expect(rest.told).toMatchObject([{ batch: 'A-1', leavings: [{ how: 'send', seeds: 10 }] }]);
    expect(rest.lot.leavings).toMatchObject([given]);
  });

  it('is told by what was done before the batch was split off', () => {
    const split = `
      lot A-1 Adonis vernalis, 30 seeds
      soak A-1 2026-01-10 19:00, water
      split A-1 2026-01-10 20:00, A 30 seeds
    `;
    expect(state(at('2026-01-10', 21), split)).toBe('in soak since 2026-01-10 19:00');
  });
});
