import { describe, expect, it } from 'vitest';
import { exact } from '../../server/src/solutions/amounts.ts';
import { type Recipe, recipeForDilution, recipeForDrops, recipeForPowder, recipeForSoak } from '../../server/src/solutions/recipe.ts';
import { agent, codeOf, valueOf } from './helpers.ts';

const texts = ({ steps }: Recipe): string[] => steps.map(({ text }) => text);
const keepCold = 'Keep it cold, dark and closed. In water at 20 C, about half of it is gone after 14 days ' +
  '(a supplier’s product data page, unverified).';

describe('the recipe of a stock', () => {
  const g1 = {
    agent: agent('GA3'),
    mass: { value: 20, unit: 'mg' },
    volume: { value: 18, unit: 'mL' },
    purity: { percent: 90 },
  } as const;

  it('is weighed, wetted with alcohol, made up, labelled and kept', () => {
    const recipe = valueOf(recipeForPowder(g1, { made: '2026-01-09', keepsUntil: '2030-01-09' }));
    expect(texts(recipe)).toEqual([
      'Weigh 20 mg of GA3 powder on a balance that shows 1 mg.',
      'Wet the powder with a few drops of alcohol and stir until it has dissolved.',
      'Make it up to 18 mL with water, and mix well.',
      'Label it: GA3 1000 ppm, 2026-01-09, good until 2030-01-09.',
      keepCold,
    ]);
    expect(recipe.cautions.map(({ id }) => id)).toContain('alcohol');
  });

  it('tells a kitchen that its scale is too coarse, and what to do', () => {
    const { tooSmall } = valueOf(recipeForPowder(g1));
    expect(tooSmall?.message).toBe('20 mg cannot be weighed on a scale that shows 0.01 g: it takes 100 mg or more.');
    expect(tooSmall?.remedies.length).toBeGreaterThan(0);
    const large = valueOf(recipeForPowder({ ...g1, mass: { value: 1, unit: 'g' }, volume: { value: 1, unit: 'L' } }));
    expect(large.tooSmall).toBeUndefined();
    // By hand: 100 mg of this powder are 90 mg of GA3, and make 90 mL of 1000 ppm.
    const kitchen = valueOf(recipeForPowder(g1, {}, 'kitchen')).tooSmall;
    expect(kitchen?.message).toBe(tooSmall?.message);
    expect(kitchen?.remedies.map(({ text }) => text)).toContain('Make more of it: 100 mg of GA3 powder made up to 90 mL.');
    // Below what even a balance weighs, the least of that balance counts.
    const tiny = valueOf(recipeForPowder({ ...g1, mass: { value: 0.5, unit: 'mg' } })).tooSmall;
    expect(tiny?.message).toBe('0.5 mg cannot be weighed on a balance that shows 0.1 mg: it takes 1 mg or more.');
  });

  it('keeps the amount of the record where no tool shows it just so', () => {
    const odd = valueOf(recipeForPowder({ ...g1, mass: { value: 20.33, unit: 'mg' } }));
    expect(texts(odd)[0]).toBe('Weigh 20.33 mg of GA3 powder.');
  });

  it('from a packet is halved by eye', () => {
    const packet = { ...g1, mass: { value: 100, unit: 'mg' }, halved: 1 } as const;
    expect(texts(valueOf(recipeForPowder(packet)))[0]).toBe(
      'Tip the packet of GA3 (100 mg) on smooth paper, halve it by eye once, and take one part: about 50 mg.',
    );
    expect(valueOf(recipeForPowder(packet)).tooSmall).toBeUndefined();
  });

  it('of a salt needs no alcohol, and kinetin needs lye', () => {
    const salt = valueOf(recipeForPowder({ ...g1, agent: agent('GA3K') }));
    expect(texts(salt)[1]).toBe('Stir the powder into some of the water until it has dissolved.');
    const kinetin = valueOf(recipeForPowder({ ...g1, agent: agent('kinetin') }));
    expect(texts(kinetin)[1]).toContain('lye');
    expect(kinetin.cautions.map(({ id }) => id)).toContain('alkali');
  });

  it('is refused where the stock cannot be worked out', () => {
    expect(codeOf(recipeForPowder({ ...g1, volume: { value: 0, unit: 'mL' } }))).toBe('not-positive');
  });
});

describe('the recipe of a dilution', () => {
  const g2 = { agent: agent('GA3'), stock: 'G1', stockPpm: exact(1000), takenMl: exact(10), toMl: exact(20) };

  it('is drawn, made up, labelled and kept', () => {
    expect(texts(valueOf(recipeForDilution(g2, { made: '2026-01-09' })))).toEqual([
      'Take 10 mL of G1 with a 100 mL measuring cylinder.',
      'Make it up to 20 mL with water (10 mL of water), and mix well.',
      'Label it: GA3 500 ppm, 2026-01-09.',
      keepCold,
    ]);
  });

  it('says when the draw cannot be measured', () => {
    const tiny = valueOf(recipeForDilution({ ...g2, takenMl: exact(0.05) }, {}, 'kitchen'));
    expect(texts(tiny)[0]).toBe('Take 50 µL of G1.');
    expect(tiny.tooSmall?.message).toContain('50 µL cannot be measured');
    expect(tiny.tooSmall?.remedies.map(({ kind }) => kind)).toEqual(['in-two-steps', 'make-more']);
    expect(valueOf(recipeForDilution(g2)).tooSmall).toBeUndefined();
  });

  it('is refused where it cannot be', () => {
    expect(codeOf(recipeForDilution({ ...g2, toMl: exact(5) }))).toBe('more-than-made');
  });
});

describe('the recipe of a soak', () => {
  it('covers the seed, is labelled, and ends', () => {
    const soak = recipeForSoak({
      agents: [agent('GA3')], liquid: 'G2', volume: { value: 10, unit: 'mL' }, duration: '24 h', unmeasured: false,
    });
    expect(texts(soak)).toEqual([
      'Put the seed into 10 mL of G2, and cover all of it.',
      'Label it: the batch, the liquid, and when the soak began.',
      'Lift it after 24 h, rinse it with water, and note when.',
    ]);
    expect(soak.cautions.map(({ id }) => id)).toContain('treated-seed');
  });

  it('in a damp towel has no strength to tell, and powder to be careful with', () => {
    const towel = recipeForSoak({ agents: [agent('GA3')], liquid: 'GA3', duration: undefined, unmeasured: true });
    expect(texts(towel)[0]).toBe('Put the seed in a damp paper towel with a little GA3 powder, in a closed bag.');
    expect(texts(towel)[2]).toMatch(/^Lift it at the end/);
    const until = recipeForSoak({
      agents: [agent('GA3')], liquid: 'G2', duration: undefined, until: '2026-01-11', unmeasured: false,
    });
    expect(texts(until)[2]).toMatch(/^Lift it on 2026-01-11/);
    expect(JSON.stringify(towel.steps)).not.toContain('ppm');
    expect(towel.cautions.map(({ id }) => id)).toContain('powder');
  });

  it('in water needs no caution', () => {
    expect(recipeForSoak({ agents: [agent('water')], liquid: 'water', duration: '24 h', unmeasured: false }).cautions).toEqual([]);
    const both = recipeForSoak({ agents: [agent('water'), agent('GA3')], liquid: 'G2', duration: '24 h', unmeasured: false });
    expect(both.cautions).not.toEqual([]);
  });
});

describe('the recipe of drops', () => {
  it('says how many, of what, and that some are left alone', () => {
    const drops = recipeForDrops({ agents: [agent('GA3')], liquid: 'G2', drops: 2, volume: { value: 1, unit: 'mL' } });
    expect(texts(drops)).toEqual([
      'Put 2 drops of G2 on the growing point of each seedling: 1 mL in all.',
      'Leave some seedlings without drops to compare, and mark which are which.',
    ]);
    const inAll = recipeForDrops({ agents: [agent('GA3')], liquid: 'G2', drops: undefined, volume: { value: 0.5, unit: 'mL' }, seedlings: 5 });
    expect(texts(inAll)[0]).toBe('Put G2 on the growing point of each seedling: 0.5 mL in all, 0.1 mL on each.');
    expect(drops.cautions.map(({ id }) => id)).toEqual(['label-first', 'keep-away']);
    expect(texts(recipeForDrops({ agents: [agent('GA3')], liquid: 'G2', drops: 1 }))[0]).toContain('Put 1 drop of G2');
    expect(recipeForDrops({ agents: [agent('water')], liquid: 'water', drops: undefined }).cautions).toEqual([]);
  });
});
