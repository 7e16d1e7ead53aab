import { describe, expect, it } from 'vitest';
import { builtInAgents, saltOf } from '../../server/src/solutions/agents.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
import { agent } from './helpers.ts';

describe('a built-in agent', () => {
  it('is known by each word of the format', () => {
    const words = [
      'GA3', 'GA3K', 'GA4+7', 'KNO3', 'ethephon', 'smoke', 'peroxide', 'bleach', 'thiourea', 'kinetin', 'BA', 'water',
    ];
    expect([...builtInAgents.keys()].sort()).toEqual(words.sort());
  });

  it('dissolves as a supplier’s product data page says (unverified): GA3 5 g/L, its potassium salt 50 g/L', () => {
    expect(agent('GA3').solubility?.ppm.equals(5000)).toBe(true);
    expect(agent('GA3K').solubility?.ppm.equals(50_000)).toBe(true);
    expect(agent('GA3').solubility?.source.kind).toBe('read');
  });

  it('dissolves as it is remembered: g/L', () => {
    const gPerL = (word: string) => toNumber(agent(word).solubility!.ppm.div(1000));
    expect(['KNO3', 'thiourea', 'BA'].map(gPerL)).toEqual([280, 140, 0.06]);
    // 32 g in 100 g of water are 132 g, at 1.16 g/mL 113.8 mL.
    expect(gPerL('KNO3') / (32 / (132 / 1.16) * 1000)).toBeCloseTo(1, 2);
  });

  it('owns up to every figure that was not read', () => {
    for (const { word, solubility, limit } of builtInAgents.values()) {
      if (!['GA3', 'GA3K'].includes(word) && solubility) expect(solubility.source.kind).toBe('from memory');
      if (limit) expect(limit.source.text).toBe('common practice, no source');
    }
  });

  it('has a molar mass, unless it is no one substance', () => {
    const without = [...builtInAgents.values()].filter(a => a.molarMass === undefined).map(a => a.word);
    expect(without).toEqual(['smoke', 'water']);
  });

  it('of two gibberellins has the mean of both molar masses', () => {
    expect(toNumber(agent('GA4+7').molarMass!)).toBe(331.388);
    expect(agent('GA4+7').molarMassIs).toBe('mean of a mixture');
  });

  it('knows which salt belongs to which acid', () => {
    expect(saltOf(agent('GA3'))?.word).toBe('GA3K');
    expect(saltOf(agent('KNO3'))).toBeUndefined();
    // Check value computed by rational arithmetic: 346.379 / 384.469.
    expect(toNumber(agent('GA3K').acid!.perSalt)).toBeCloseTo(0.9009283, 7);
  });

  it('has a usual range that holds its own limit', () => {
    for (const { limit, usual } of builtInAgents.values()) {
      if (limit && usual) expect(usual.low.lte(1000) && usual.high.gte(1000)).toBe(true);
    }
  });
});
