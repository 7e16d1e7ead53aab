import { describe, expect, test } from 'vitest';
import type { LimitSettings } from '../../server/src/journal/settings.ts';
import { journalOf } from './helpers.ts';

function limitsOf(source: string, settings: LimitSettings = {}) {
  const journal = journalOf(source);
  journal.settings = settings;
  const strength = (word: string, plant?: string) => {
    const limit = journal.limits.strength(journal.agents.get(word)!, plant);
    return limit && [limit.value.value, limit.value.unit, limit.of, limit.origin];
  };
  const soak = (plant?: string) => {
    const { value, origin } = journal.limits.soak(plant);
    return [value.value, value.unit, origin];
  };
  return { limits: journal.limits, strength, soak };
}

describe('without a record and without a setting', () => {
  const { limits, strength, soak } = limitsOf('# nothing');

  test('the limits are those of common practice, and say so', () => {
    const origin = 'default: common practice, no source';
    expect(soak()).toEqual([24, 'h', origin]);
    expect(limits.stock).toMatchObject({ value: { value: 4, unit: 'years' }, origin, line: undefined });
    expect(limits.count(undefined)).toMatchObject({ value: { value: 7, unit: 'days' }, origin, line: undefined });
    expect(strength('GA3')).toEqual([1000, 'ppm', 'GA3', origin]);
  });

  test('a salt has the limit of its acid, and other agents have none', () => {
    expect(strength('GA3K')?.[2]).toBe('GA3');
    expect(strength('KNO3')).toBe(undefined);
  });
});

describe('the editor’s setting', () => {
  const settings = { soakHours: 12, stockYears: 2, countDays: 14, strengths: { GA3: '0.05 %', KNO3: '2 g/L' } };

  test('goes before the default, and is named', () => {
    const { limits, strength, soak } = limitsOf('# nothing', settings);
    expect(soak()).toEqual([12, 'h', 'setting plumule.limits.soakHours']);
    expect(limits.stock.origin).toBe('setting plumule.limits.stockYears');
    expect(limits.count(undefined)).toMatchObject({ value: { value: 14, unit: 'days' }, origin: 'setting plumule.limits.countDays' });
    expect(strength('GA3')).toEqual([0.05, '%', 'GA3', 'setting plumule.limits.strengths']);
    expect(strength('GA3K')?.[2]).toBe('GA3');
    expect(strength('KNO3')).toEqual([2, 'g/L', 'KNO3', 'setting plumule.limits.strengths']);
  });

  test('is the default where it is the same: the editor hands its defaults over as settings', () => {
    const { strength, soak } = limitsOf('# nothing', { soakHours: 24, strengths: { GA3: '1000 ppm' } });
    expect([soak()[2], strength('GA3')?.[3]]).toEqual(Array(2).fill('default: common practice, no source'));
  });

  test('is left out where it makes no sense', () => {
    for (const soakHours of [0, -1, NaN, Infinity]) expect(limitsOf('#', { soakHours }).soak()[0]).toBe(24);
    for (const text of ['', 'much', '5', '5 h', '500 ppm\nlimit GA3, 9 ppm', '1000 ppm, for Primula'.slice(0, 3)]) {
      expect(limitsOf('#', { strengths: { GA3: text } }).strength('GA3')?.[0]).not.toBe(9);
    }
    expect(limitsOf('#', { strengths: { GA3: 'much' } }).strength('GA3')?.[0]).toBe(1000);
  });
});

describe('a limit record', () => {
  test('goes before the setting and names its file', () => {
    const { limits, soak, strength } = limitsOf('--- my/stocks.germ\nlimit soak, 18 h\nlimit GA3, 300 ppm\nlimit stock, 1 year', { soakHours: 12, strengths: { GA3: '1 ppm' } });
    expect(soak()).toEqual([18, 'h', 'the “limit” record in stocks.germ']);
    expect(strength('GA3')).toEqual([300, 'ppm', 'GA3', 'the “limit” record in stocks.germ']);
    expect(limits.stock.value).toEqual({ value: 1, unit: 'years' });
    expect(limits.stock.line?.number).toBe(2);
  });

  test('for a genus or a species goes before one for all', () => {
    const { soak, strength } = limitsOf(`
      limit soak, 48 h, for Paris
      limit soak, 18 h
      limit GA3, 500 ppm, for primula
      limit GA3, 50 ppm, for Primula rosea
      limit GA3, 800 ppm
    `);
    expect([soak('Paris polyphylla')[0], soak('paris')[0], soak('Parisia')[0], soak(undefined)[0]]).toEqual([48, 48, 18, 18]);
    expect([strength('GA3', 'Primula rosea')?.[0], strength('GA3', 'Primula elatior')?.[0], strength('GA3', 'Iris')?.[0]]).toEqual([50, 500, 800]);
  });

  test('that comes later counts, by the order of files', () => {
    expect(limitsOf('--- b.germ\nlimit soak, 18 h\n--- a.germ\nlimit soak, 12 h\nlimit soak, 14 h').soak()[0]).toBe(18);
    expect(limitsOf('limit soak, 12 h\nlimit soak, 14 h').soak()[0]).toBe(14);
  });

  test('for a salt goes before one for its acid, which holds for it otherwise', () => {
    expect(limitsOf('limit GA3, 500 ppm').strength('GA3K')).toEqual([500, 'ppm', 'GA3', 'the “limit” record in journal.germ']);
    expect(limitsOf('limit GA3K, 600 ppm\nlimit GA3, 500 ppm').strength('GA3K')?.[2]).toBe('GA3K');
    expect(limitsOf('limit GA3K, 600 ppm').strength('GA3')?.[0]).toBe(1000);
  });

  test('may be for an agent that the journal declares', () => {
    expect(limitsOf('agent kelp, seaweed\nlimit kelp, 5 ppm').strength('kelp')?.slice(0, 3)).toEqual([5, 'ppm', 'kelp']);
  });

  test('that says no time, or no strength, says nothing', () => {
    expect(limitsOf('limit soak\nlimit soak, 5 ppm').soak()[0]).toBe(24);
    expect(limitsOf('limit GA3\nlimit GA3, 5 h').strength('GA3')?.[0]).toBe(1000);
  });
});

describe('a limit for a species', () => {
  test('goes before one for its genus, in whatever order they stand', () => {
    const records = ['limit GA3, 200 ppm, for Primula veris', 'limit GA3, 800 ppm, for Primula', 'limit GA3, 1500 ppm'];
    const soaks = ['limit soak, 6 h, for Primula veris', 'limit soak, 12 h, for Primula'];
    for (const order of [records, records.toReversed()]) {
      const { strength } = limitsOf(order.join('\n'));
      expect(['Primula veris', 'Primula veris subsp. canescens', 'Primula elatior', 'Primula', 'Primulina tabacum', undefined]
        .map(plant => strength('GA3', plant)?.[0])).toEqual([200, 200, 800, 800, 1500, 1500]);
      expect(strength('GA3K', 'Primula veris')?.[0]).toBe(200);
    }
    for (const order of [soaks, soaks.toReversed()]) {
      const { soak } = limitsOf(order.join('\n'));
      expect([soak('Primula veris')[0], soak('Primula elatior')[0], soak('Iris')[0]]).toEqual([6, 12, 24]);
    }
  });

  test('counts as the last one says, where two are for the same', () => {
    const { strength } = limitsOf('limit GA3, 200 ppm, for Primula veris\nlimit GA3, 300 ppm, for Primula veris');
    expect(strength('GA3', 'Primula veris')?.[0]).toBe(300);
  });
});
