import { describe, expect, it } from 'vitest';
import { isUndefined } from '../../server/src/measures/measured.ts';
import { at, reportFor } from './helpers.ts';

/** Examples of Newcombe 1998, Stat Med 17:857-872, Table I, with Wilson's interval (method 3). */
const NEWCOMBE = [
  { x: 81, n: 263, low: 0.2553, high: 0.3662 },
  { x: 15, n: 148, low: 0.0624, high: 0.1605 },
  { x: 0, n: 20, low: 0, high: 0.1611 },
  { x: 1, n: 29, low: 0.0061, high: 0.1718 },
];

describe('the share of a batch that germinated', () => {
  it('has the interval of Wilson, as in Newcombe 1998, Table I, method 3', () => {
    for (const { x, n, low, high } of NEWCOMBE) {
      const { lots } = reportFor(`
        lot A-1 Adonis vernalis, ${n} seeds
        sow A-1 2026-01-04
        count A-1 2026-01-18, ${x}
      `, at('2026-01-20'));
      const germination = lots[0]!.batches[0]!.germination;
      if (isUndefined(germination)) throw new Error(germination.undefined);
      expect(germination).toMatchObject({ x, n, value: x / n });
      expect(germination.wilson.low).toBeCloseTo(low, 4);
      expect(germination.wilson.high).toBeCloseTo(high, 4);
    }
  });

  it('is of the seed sown less the lost', () => {
    const { lots } = reportFor(`
      lot A-1 Adonis vernalis, 30 seeds
      sow A-1 2026-01-04, 22 seeds
      count A-1 2026-01-18, 5, 2 lost, 1 rotted
    `, at('2026-01-20'));
    expect(lots[0]!.batches[0]!.germination).toMatchObject({ x: 5, n: 20, value: 0.25 });
  });

  it('is undefined, with the reason, before the first count', () => {
    const [lot] = reportFor('lot A-1 Adonis, 30 seeds\nsow A-1 2026-01-04', at('2026-01-20')).lots;
    const [batch] = lot!.batches;
    expect(batch).toMatchObject({ totals: undefined, germination: { undefined: 'not counted yet' } });
  });
});

describe('the days of a batch', () => {
  it('are those on which counts found the first and the last germinated seed, from the sowing', () => {
    const { lots } = reportFor(`
      lot A-1 Adonis vernalis, 30 seeds
      sow A-1 2026-01-04
      count A-1 2026-01-11, 0
      count A-1 2026-01-18, 2
      count A-1 2026-01-25, 0, 1 rotted
      count A-1 2026-02-01, 1
      count A-1 2026-02-08, 0
    `, at('2026-02-10'));
    expect(lots[0]!.batches[0]!.days).toEqual({ first: 14, last: 28 });
  });
});

describe('the lots of a report', () => {
  const JOURNAL = `
    --- a.germ
    lot B-1 Bellis, 20 seeds
    split B-1, A 10 seeds, B 10 seeds
    lot A-1 Adonis, 30 seeds
    split A-1, A 10 seeds
    --- b.germ
    count A-1/A 2026-01-18, 2
  `;
  const idsOf = (options = {}) => reportFor(JOURNAL, at('2026-01-20'), options).lots.map(({ lot }) => lot.id);

  it('come in the order of the journal', () => {
    expect(idsOf()).toEqual(['B-1', 'A-1']);
  });

  it('are those that the files asked for say something of', () => {
    expect(idsOf({ files: ['b.germ'] })).toEqual(['A-1']);
    expect(idsOf({ files: ['a.germ'] })).toEqual(['B-1', 'A-1']);
  });

  it('are those asked for by their ids', () => {
    expect(idsOf({ ids: ['A-1', 'C-1'] })).toEqual(['A-1']);
  });

  it('have their batches, and the lot itself as one where seed stayed in it', () => {
    const { lots } = reportFor(JOURNAL, at('2026-01-20'));
    expect(lots.map(({ batches }) => batches.map(({ batch }) => batch.path))).toEqual([['B-1/A', 'B-1/B'], ['A-1', 'A-1/A']]);
  });
});

describe('errors', () => {
  it('are counted for the lot whose records have them, and apart where a line names none', () => {
    const { lots, homeless } = reportFor(`
      lot A-1 Adonis, 30 seeds
      sow A-1 2026-02-30, 30 seeds
      count A-1 2026-01-18, 3 sprouted
      lot B-1 Bellis, 20 seeds
      sowed B-1 2026-01-04
      count C-1 2026-01-18, 3
    `, at('2026-01-20'));
    expect(lots.map(({ lot, errors }) => [lot.id, errors])).toEqual([['A-1', 2], ['B-1', 0]]);
    expect(homeless).toBe(2);
  });

  it('in a count leave it out as a look: what could not be read is not 0', () => {
    const reported = (...counts: string[]) => reportFor(`
      lot A-1 Adonis, 30 seeds
      sow A-1 2026-01-04
      ${counts.map((count, n) => `count A-1 2026-01-${18 + n}, ${count}`).join('\n      ')}
    `, at('2026-01-30')).lots[0]!.batches[0]!;
    expect(reported('about 5')).toMatchObject({ totals: undefined, germination: { undefined: 'not counted yet' } });
    expect(reported('3', '30 %')).toMatchObject({ totals: { germinated: 3 }, germination: { x: 3, n: 30 } });
  });

  it('in a soak do not make seed untreated for certain', () => {
    const { lots } = reportFor('lot A-1 Adonis, 30 seeds\nsoak A-1 2026-01, GA3 500 ppm, 24 h\nsow A-1 2026-01-04', at('2026-01-30'));
    expect(lots[0]!.batches[0]!.treatment).toBe('untreated (as far as can be read)');
  });

  it.each(['photo A-1 990-01-01, a.jpg', 'note A-1 2026-02-30, still hard', 'due A-1, look at it', 'photo A-1 2026-01-05'])(
    'in a record that tells nothing of the seed change nothing: %s', record => {
      const { lots, homeless } = reportFor(`lot A-1 Adonis, 30 seeds\n${record}\nsow A-1 2026-01-04`, at('2026-01-30'));
      expect([lots[0]!.errors, homeless]).not.toEqual([0, 0]);
      expect(lots[0]!.batches[0]!.treatment).toBe('untreated');
    });
});
