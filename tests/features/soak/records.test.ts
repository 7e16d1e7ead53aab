import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { soakChoices } from '../../../server/src/features/soak/choices.ts';
import { soakRecords, type SoakQuestion } from '../../../server/src/features/soak/records.ts';
import { parse } from '../../../server/src/syntax/parse.ts';
import { readFixture } from '../../support/fixture.ts';
import { at, journalOf } from '../journals.ts';

const bench = `
  stock G1 2026-01-09, GA3 20 mg, 20 mL
  stock G2 2026-01-08, GA3 20 mg
  lot V-1 Iris, 60 seeds
  split V-1, A 24 seeds, B 24 seeds
  lot V-2 Gentiana lutea, 60 seeds
  lot V-3 Primula, 60 seeds
  sow V-3 2026-01-10
  lot V-4 Lewisia, 60 seeds
  soak V-4 2026-02-10 08:00, water, 20 h
`;
const now = at('2026-02-10 18:30');
const choices = (lot?: string, source = bench) => soakChoices(journalOf(readFixture(source)), now, lot);
const answer = (question: SoakQuestion) => soakRecords(question, journalOf(readFixture(bench)), now);
const two: SoakQuestion = { batches: ['V-1/A', 'V-2'], liquid: 'G1', amount: '10 mL', long: '24 h' };

describe('what can be chosen', () => {
  test('are batches in no soak, those of the lot in hand first and sown ones last; bottles and water; the last length', () => {
    const { batches, liquids, long } = choices('V-2');
    expect(batches.map(({ id }) => id)).toEqual(['V-2', 'V-1/A', 'V-1/B', 'V-1', 'V-3']);
    expect(batches[0]!.text).toBe('Gentiana lutea · not sown');
    expect(liquids.map(({ id, kind, isKnown }) => [id, kind, isKnown])).toEqual([
      ['G1', 'stock', true], ['G2', 'stock', false], ['water', 'water', false]]);
    expect(liquids[0]!.text).toContain('GA3 1000 ppm · 20 mL left');
    expect(long).toBe('20 h');
    expect(choices().batches[0]!.id).toBe('V-1/A');
  });

  test('end with seed that is sown or has begun to germinate, though it is of the lot in hand', () => {
    const counted = `${bench}chill V-2 2026-01-01, 4 C\ncount V-2 2026-02-01, 3\n`;
    expect(choices('V-2', counted).batches.map(({ id }) => id)).toEqual(['V-1/A', 'V-1/B', 'V-1', 'V-2', 'V-3']);
    expect(choices('V-3').batches.map(({ id }) => id)).toEqual(['V-1/A', 'V-1/B', 'V-2', 'V-1', 'V-3']);
  });

  test('without a soak that says how long one lasts, none is proposed', () => {
    expect(choices(undefined, 'lot V-1 Iris\nsoak V-1 2026-02-01, water').long).toBeUndefined();
  });
});

describe('the records', () => {
  test('of a stock as it is, of a strength that is its own, and of water need no dilution', () => {
    const records = ['soak V-1/A 18:30, G1 10 mL, 24 h', 'soak V-2 18:30, G1 10 mL, 24 h'];
    expect(answer(two)).toEqual({ problems: {}, records });
    expect(answer({ ...two, strength: '0.1 %' })).toEqual({ problems: {}, records });
    expect(answer({ batches: ['V-1/A'], liquid: 'water' }).records).toEqual(['soak V-1/A 18:30, water']);
    expect(answer({ batches: ['V-1/A'], liquid: 'G2', amount: '' }).records).toEqual(['soak V-1/A 18:30, G2']);
  });

  test('of a weaker strength begin with the dilution for all of them together', () => {
    expect(answer({ ...two, strength: '500 ppm', places: 'jar 1, jar 2' })).toEqual({
      problems: {},
      records: [
        'dilute G1-500, from G1 10 mL, to 20 mL',
        'soak V-1/A 18:30, G1-500 10 mL, 24 h, at jar 1', 'soak V-2 18:30, G1-500 10 mL, 24 h, at jar 2',
      ],
    });
    expect(answer({ ...two, strength: '500 ppm', places: 'jar 1' }).records[2]).toBe('soak V-2 18:30, G1-500 10 mL, 24 h, at jar 1');
  });

  test('have no time where none is known', () => {
    expect(soakRecords(two, journalOf(readFixture(bench)), at('2026-02-10')).records[0]).toBe('soak V-1/A, G1 10 mL, 24 h');
  });

  test('are not written of what cannot be read or made, and the question that it is about says why', () => {
    const problem = (changed: Partial<SoakQuestion>) => {
      const { problems, records } = answer({ ...two, ...changed });
      expect(records).toEqual([]);
      return problems;
    };
    expect(problem({ strength: '0,5 g/L' })).toEqual({ strength: expect.stringContaining('Write 0.5') as string });
    expect(problem({ strength: '2000 ppm' })).toEqual({ strength: expect.stringContaining('G1 is weaker') as string });
    expect(problem({ strength: '500 ppm', amount: '' })).toEqual({ amount: expect.stringContaining('how much each batch gets') as string });
    expect(problem({ strength: '500 ppm', amount: '30 mL' })).toEqual({ amount: expect.stringContaining('20 mL of it is left') as string });
    expect(problem({ amount: '15 mL' })).toEqual({ amount: expect.stringContaining('20 mL of it is left') as string });
    expect(problem({ liquid: 'G2', strength: '500 ppm' })).toEqual({ strength: expect.stringContaining('unknown') as string });
    expect(problem({ amount: 'ten' })).toHaveProperty('amount');
    expect(problem({ long: '24 hours?' })).toHaveProperty('long');
    expect(problem({ places: 'jar 1, jar 2, jar 3' })).toEqual({ places: expect.stringContaining('one place for all') as string });
  });

  test('can be read, whatever was typed', () => {
    const text = fc.oneof(fc.string(), fc.constantFrom('', '500 ppm', '10 mL', '24 h', 'jar 1, jar 2', '0.05 %', '250 ppm'));
    fc.assert(fc.property(text, text, text, text, (strength, amount, long, places) => {
      const { records } = answer({ ...two, strength, amount, long, places });
      expect(records.flatMap(record => parse(record).problems)).toEqual([]);
    }));
  });
});
