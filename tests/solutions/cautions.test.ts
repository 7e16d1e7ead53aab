import { describe, expect, it } from 'vitest';
import { type BenchWork, type CautionId, cautionsFor } from '../../server/src/solutions/cautions.ts';
import { agent } from './helpers.ts';

function ids(work: BenchWork, ...words: string[]): CautionId[] {
  return cautionsFor(work, words.map(agent)).map(({ id }) => id);
}

describe('the cautions', () => {
  it('of powder made up speak of eyes, of alcohol where it dissolves in it, and of locking away', () => {
    expect(ids('powder', 'GA3')).toEqual(['label-first', 'powder', 'alcohol', 'keep-away']);
    expect(ids('powder', 'GA3K')).toEqual(['label-first', 'powder', 'keep-away']);
    expect(ids('powder', 'kinetin')).toEqual(['label-first', 'powder', 'alkali', 'keep-away']);
  });

  it('of a soak speak of treated seed, and not of the powder', () => {
    expect(ids('soak', 'GA3')).toEqual(['label-first', 'keep-away', 'treated-seed']);
    expect(ids('unmeasured', 'GA3')).toContain('powder');
  });

  it('of bleach and peroxide forbid to mix them, each said once', () => {
    expect(ids('soak', 'bleach', 'peroxide', 'bleach')).toEqual([
      'label-first', 'bleach', 'peroxide', 'keep-away', 'treated-seed',
    ]);
    const [, bleach] = cautionsFor('soak', [agent('bleach')]);
    for (const other of ['acid', 'alcohol', 'peroxide']) expect(bleach?.text).toContain(other);
  });

  it('of acid scarification speak of acid', () => {
    expect(ids('acid-scarification')).toContain('acid');
  });

  it.each(['powder', 'dilution', 'soak', 'unmeasured', 'apply', 'acid-scarification'] as const)(
    'of %s put label, local rules and licensed practice first',
    (work) => {
      expect(cautionsFor(work, [])[0]?.text).toMatch(/label.*local rules.*licensed practice come first/);
    },
  );
});
