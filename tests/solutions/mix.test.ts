import { describe, expect, it } from 'vitest';
import type { MixRefusal, MixSource } from '../../server/src/solutions/mix-plan.ts';
import { ownBench } from '../../server/src/solutions/tools.ts';
import { ask, fromStock, inPpm, plan, powder, refusal, steps } from './asked.ts';

const ids = (list: readonly { readonly id: string }[]): string[] => list.map(({ id }) => id);
const kinds = ({ nearest }: MixRefusal): string[] => nearest.map(({ kind }) => kind);

describe('a plan from a stock', () => {
  it('for 20 mL of 500 ppm takes 10 mL of 1000 ppm and 10 mL of water (common practice)', () => {
    const made = plan('GA3', inPpm(500), 20, fromStock(1000));
    expect(made.method).toBe('dilution');
    expect(made.amounts.stock?.wanted.value).toBe(10);
    expect(made.amounts.water?.value).toBe(10);
    expect(made.result).toMatchObject({ ppm: 500, text: '500 ppm', offPercent: 0 });
    expect(steps(made).slice(0, 3)).toEqual([
      'Take 10 mL of the 1000 ppm GA3 stock with a 100 mL measuring cylinder.',
      'Make it up to 20 mL with water (10 mL of water), and mix well. Measure with a 100 mL measuring cylinder.',
      'Label it: GA3 500 ppm, and the date.',
    ]);
  });

  it('counts half a step for each filling of a tool, and says how often it is filled', () => {
    const made = plan('GA3', inPpm(500), 7, fromStock(1333));
    expect(steps(made).slice(0, 2)).toEqual([
      'Take 2.63 mL of the 1333 ppm GA3 stock with a 1 mL syringe marked every 0.01 mL, filled 3 times (worked out: 2.626 mL).',
      // 4.37 mL of water would not show on it.
      'Make it up to 7 mL with water, and mix well. Measure with a 10 mL syringe marked every 0.2 mL.',
    ]);
    // 1333 x 2.63 / 7, three times 0.005 mL and 0.1 mL off at worst: rational arithmetic.
    expect(made.result.limits.lowPpm).toBeCloseTo(1333 * (2.63 - 0.015) / 7.1, 9);
    expect(made.result.limits.highPpm).toBeCloseTo(1333 * (2.63 + 0.015) / 6.9, 9);
    expect(made.result.limits.counted[0]).toBe('draw to half a step of a 1 mL syringe marked every 0.01 mL, each of 3 times');
  });

  it('tells the limits in the unit that was asked for', () => {
    const percent = plan('bleach', { value: 0.5, unit: '%' }, 100, fromStock(4.5, '%')).result;
    // 4825 and 5075 ppm, as in the data.
    expect(percent.limits.text).toBe(`from ${(percent.limits.lowPpm / 10_000).toFixed(3)} to ${(percent.limits.highPpm / 10_000).toFixed(3)} %`);
    expect(plan('smoke', { value: 10, unit: '%' }, 100, fromStock(100, '%')).result.limits.text).toMatch(/^from 9\.73 to 10\.3 %$/);
    expect(plan('KNO3', { value: 20_000, unit: 'uM' }, 500, powder).result.limits.text).toMatch(/ µM$/);
  });

  // Check values computed by rational arithmetic.
  it.each([
    [250, 250, 1000, 62.5, 187.5],
    [100, 500, 5000, 10, 90],
    [400, 750, 2000, 150, 250],
    [50, 100, 1000, 5, 45],
  ])('for %s mL of %s mg/L from %s mg/L takes %s mL and %s mL of water', (ml, target, stock, taken, water) => {
    const made = plan('GA3', { value: target, unit: 'mg/L' }, ml, fromStock(stock, 'mg/L'));
    expect(made.amounts.stock?.wanted.value).toBe(taken);
    expect(made.amounts.water?.value).toBe(water);
    expect(made.result.ppm).toBe(target);
  });

  it('mixes units: 1.443506 mM of GA3 from 0.1 %', () => {
    const made = plan('GA3', { value: 1.443506, unit: 'mM' }, 20, fromStock(0.1, '%'));
    expect(made.asked.ppm).toBeCloseTo(500, 3);
    expect(ids(made.assumptions)).toEqual(['molar-mass', 'volumes-add']);
    expect(made.result.text).toMatch(/ mM$/);
  });

  it('of the strength of the stock is the stock itself', () => {
    const made = plan('GA3', inPpm(1000), 20, fromStock(0.1, '%'));
    expect(made.method).toBe('undiluted');
    expect(steps(made)[0]).toContain('Take 20 mL of the 0.1 % GA3 stock');
    expect(made.amounts.water).toBeUndefined();
  });

  it('is refused above the stock, and the nearest is the stock undiluted or powder', () => {
    const answer = refusal('GA3', inPpm(2000), 20, fromStock(1000));
    expect(answer.code).toBe('stronger-than-stock');
    expect(answer.message).toBe('2000 ppm cannot be made from 1000 ppm: water only makes it weaker.');
    expect(answer.nearest.map(({ text }) => text)).toEqual([
      'The nearest is the stock itself, undiluted: 1000 ppm.',
      'From powder: 40 mg of pure GA3 made up to 20 mL is 2000 ppm.',
    ]);
    expect(kinds(refusal('bleach', { value: 6, unit: '%' }, 20, fromStock(5, '%')))).toEqual(['use-undiluted']);
  });

  it('is refused when the draw is too small, with two ways out', () => {
    const answer = refusal('GA3', inPpm(5), 5, fromStock(1000), { bench: 'kitchen' });
    expect(answer.code).toBe('too-little-to-draw');
    expect(kinds(answer)).toEqual(['in-two-steps', 'make-more']);
  });

  it('tells a kitchen when only a micropipette can follow', () => {
    const made = plan('GA3', inPpm(10), 10, fromStock(1000));
    expect(made.amounts.stock?.tool.id).toBe('micropipette');
    expect(made.inKitchen?.message).toContain('cannot be measured on a 1 mL syringe');
    expect(made.inKitchen?.remedies.length).toBeGreaterThan(0);
  });

  it('warns of a stock that water does not hold', () => {
    expect(ids(plan('GA3', inPpm(500), 20, fromStock(10, 'g/L')).warnings)).toEqual(['stock-above-solubility']);
  });

  // Peroxide of 12 % has 1.04 g/mL (handbook value, from memory): weighed as water, 125 g of it are only 120 mL.
  it('says that a strong stock weighed as water is not worked out', () => {
    const left = (percent: number) => plan('peroxide', { value: percent / 4, unit: '%' }, 500, fromStock(percent, '%'), { bench: 'kitchen' })
      .result.limits.notCounted;
    expect([left(12), left(1)]).toEqual([['strength of the stock', 'that it weighs more than water'], ['strength of the stock']]);
  });

  it('dilutes liquids by their own %, and says how it reads it', () => {
    const bleach = plan('bleach', { value: 0.5, unit: '%' }, 200, fromStock(5, '%'));
    expect(bleach.amounts.stock?.wanted.value).toBe(20);
    expect(ids(bleach.assumptions)).toContain('bleach-as-naocl');
    expect(ids(bleach.cautions)).toContain('bleach');
    const smoke = plan('smoke', { value: 10, unit: '%' }, 200, fromStock(100, '%'));
    expect(smoke.sameAs).toEqual([]);
    expect(ids(smoke.assumptions)).toContain('percent-by-volume');
  });
});

describe('a plan from powder', () => {
  // Check values computed by rational arithmetic.
  it.each([
    [100, 500, 90, 55.5556, '56 mg', 504],
    [250, 1000, 90, 277.7778, '0.28 g', 1008],
    [30, 250, 85, 8.8235, '8.8 mg', 249.3333],
  ])('for %s mL of %s mg/L from %s %% powder needs %s mg, weighed as %s', (ml, target, percent, mg, weighed, real) => {
    const made = plan('GA3', { value: target, unit: 'mg/L' }, ml, { kind: 'powder', purity: { percent } });
    expect(made.amounts.powder?.wanted.value).toBeCloseTo(mg, 4);
    expect(made.amounts.powder?.measured.text).toBe(weighed === '0.28 g' ? '280 mg' : weighed);
    expect(made.result.ppm).toBeCloseTo(real, 4);
    expect(made.result.limits.lowPpm).toBeLessThan(real);
    expect(made.result.limits.highPpm).toBeGreaterThan(real);
  });

  it('says the true strength when rounding changes it, and the volume that would make it just', () => {
    const made = plan('GA3', inPpm(500), 100, { kind: 'powder', purity: { percent: 90 } });
    expect(steps(made)).toContain(
      'With these tools it comes out at 504 ppm, 0.8 % above the 500 ppm asked for. Made up to 100.8 mL, it would be exact.',
    );
    expect(steps(made)).toContain('Label it: GA3 504 ppm, and the date.');
  });

  it('labels with the dates it is given', () => {
    const made = plan('KNO3', { value: 0.2, unit: '%' }, 500, powder, { dates: { made: '2026-01-09' } });
    expect(steps(made)).toContain('Label it: KNO3 0.2 %, 2026-01-09.');
    expect(made.amounts.powder?.measured.text).toBe('1 g');
    expect(made.sameAs.map(({ text }) => text)).toContain('19.78 mM');
  });

  it('says that no purity is taken as pure', () => {
    expect(ids(plan('GA3', inPpm(500), 20, powder).assumptions)).toEqual(['ppm-is-mg-per-l', 'purity-not-given']);
  });

  it('is refused above what dissolves in water, with the unit that may have slipped', () => {
    const answer = refusal('GA3', { value: 500, unit: '%' }, 100, powder);
    expect(answer.code).toBe('above-solubility');
    expect(answer.nearest.map(({ text }) => text)).toEqual(['If the unit is wrong: 500 ppm.', 'The strongest in water is 0.5 %.']);
    expect(ask('GA3', inPpm(5000), 100, powder).possible).toBe(true);
  });

  it('only warns where the solubility is a figure from memory', () => {
    expect(ids(plan('BA', inPpm(200), 1000, powder).warnings)).toEqual(['above-solubility']);
  });

  it('is refused when there is too little to weigh, with the nearest that can be done', () => {
    const answer = refusal('GA3', inPpm(100), 20, powder, { bench: 'kitchen' });
    expect(answer.code).toBe('too-little-to-weigh');
    expect(answer.message).toBe('2 mg cannot be weighed on a scale that shows 0.01 g: it takes 100 mg or more.');
    expect(kinds(answer)).toEqual(['stronger-then-dilute', 'make-more', 'halve-packet']);
  });

  it('is refused for a liquid, for water, for nothing, and for a purity that cannot be', () => {
    expect(refusal('bleach', { value: 0.5, unit: '%' }, 100, powder).code).toBe('not-a-powder');
    expect(refusal('water', inPpm(5), 100, powder).code).toBe('no-strength');
    expect(refusal('GA3', inPpm(0), 100, powder).code).toBe('not-positive');
    expect(refusal('GA3', inPpm(5), 0, powder).code).toBe('not-positive');
    expect(refusal('GA3', inPpm(500), 100, { kind: 'powder', purity: { percent: 120 } }).code).toBe('bad-purity');
    expect(refusal('GA3', inPpm(1e-7), 100, powder).code).toBe('beyond-bench');
    expect(refusal('GA3', inPpm(500), 100_001, powder).message).toBe('That volume is out of range; 100 L is the most.');
    expect(plan('GA3', inPpm(500), 100_000, powder).result.limits.text).toBe('from 493 to 508 ppm');
    expect(refusal('GA3', inPpm(500), 0.01, fromStock(500)).code).toBe('too-little-to-draw');
  });
});

describe('a plan from a packet', () => {
  const packet = (mg: number, halved?: number): MixSource => ({ kind: 'packet', mass: { value: mg, unit: 'mg' }, halved });

  it('of 100 mg halved twice makes 50 mL of 500 ppm', () => {
    const made = plan('GA3', inPpm(500), 20, packet(100, 2));
    expect(made.amounts.packet).toMatchObject({ halved: 2, portion: { value: 25 } });
    expect(made.amounts.makeUpTo.wanted.value).toBe(50);
    expect(made.amounts.leftOver?.value).toBe(30);
    expect(made.result.ppm).toBe(500);
    expect(made.result.limits.notCounted).toContain('mass of the packet');
  });

  it('is halved as often as makes sense when nobody says, and a whole packet as stock is offered', () => {
    const made = plan('GA3', inPpm(500), 20, packet(1000));
    expect(made.amounts.packet?.halved).toBe(4);
    expect(made.alternatives.map(({ text }) => text)).toEqual([
      'Make a stronger stock and dilute it: 1 g of GA3 powder made up to 200 mL is 5000 ppm; ' +
        '2 mL of that made up to 20 mL is 500 ppm.',
    ]);
  });

  it('used whole is not halved', () => {
    const made = plan('GA3', inPpm(500), 200, packet(100));
    expect(steps(made)[0]).toBe('Take the whole of the packet of GA3 (100 mg), and rinse it out with some of the water.');
    expect(made.amounts.leftOver).toBeUndefined();
    expect(made.alternatives).toEqual([]);
  });

  it('counts each halving by eye, and none where the packet is used whole', () => {
    const limits = (halved: number) => plan('GA3', inPpm(500), 10, packet(100, halved)).result.limits;
    const off = (halved: number) => limits(halved).highPpm / limits(halved).lowPpm;
    expect(off(1)).toBeGreaterThan(off(0) * 1.1);
    expect(off(2)).toBeGreaterThan(off(1) * 1.1);
    expect(limits(0).counted.map(each => /halving|volume/.exec(each)?.[0])).toEqual(['volume']);
    expect(limits(2).counted.map(each => /halving|volume/.exec(each)?.[0])).toEqual(['halving', 'volume']);
    expect(plan('GA3', inPpm(500), 200, powder).result.limits).toMatchObject({
      counted: ['mass to half a step of a scale that shows 0.01 g', 'volume to half a step of a 1 L measuring jug marked every 10 mL'],
      notCounted: ['purity of the powder'],
    });
  });

  it('is refused where no measure holds what it makes, whoever asks', () => {
    // 25 mg at 5000 ppm are 5 mL, and a 100 mL cup marked every 50 mL shows nothing below a litre.
    const bench = ownBench(['1000 mL by 50 mL'], undefined);
    expect(refusal('GA3', inPpm(5000), 5, packet(25, 0), { bench }).code).toBe('too-little-to-draw');
    expect(refusal('GA3', inPpm(500), 20, fromStock(1000), { bench }).code).toBe('too-little-to-draw');
  });

  it('is refused when a part is too little, with what it does make', () => {
    const answer = refusal('GA3', inPpm(500), 100, packet(100, 2));
    expect(answer.code).toBe('packet-too-small');
    expect(answer.nearest.map(({ text }) => text)).toEqual([
      'Halved once, one part is 50 mg and makes 100 mL of 500 ppm.',
      'It makes 50 mL of 500 ppm.',
      'In 100 mL it makes 250 ppm.',
    ]);
    // An eighth of the packet is enough where a sixteenth is not, and the whole where half is not.
    expect([[20, 4], [150, 1]].map(([ml, halved]) => refusal('GA3', inPpm(500), ml!, packet(100, halved)).nearest[0]?.text)).toEqual([
      'Halved 3 times, one part is 12.5 mg and makes 25 mL of 500 ppm.',
      'Not halved, one part is 100 mg and makes 200 mL of 500 ppm.',
    ]);
    // The whole packet, when nobody says how often it is halved.
    expect(refusal('GA3', inPpm(500), 500, packet(100)).nearest.map(({ text }) => text)).toEqual([
      'It makes 200 mL of 500 ppm.', 'In 500 mL it makes 200 ppm.',
    ]);
    // Halved less often it is still too little, and not halved it can be no less often.
    expect(kinds(refusal('GA3', inPpm(500), 500, packet(100, 1)))).toEqual(['less-volume', 'weaker']);
    expect(kinds(refusal('GA3', inPpm(500), 201, packet(100, 0)))).toEqual(['less-volume', 'weaker']);
  });

  it('is refused when a part would make far more than anybody wants, with the stock that it makes instead', () => {
    const answer = refusal('GA3', inPpm(10), 20, packet(1000, 2));
    expect(answer.message).toBe('250 mg of powder would make 25 L of 10 ppm, far more than you asked for.');
    expect(answer.nearest.map(({ text }) => text)).toEqual([
      'Make a stronger stock and dilute it: 250 mg of GA3 powder made up to 100 mL is 2500 ppm; ' +
        '80 µL of that made up to 20 mL is 10 ppm.',
    ]);
    expect(plan('GA3', inPpm(10), 25_000, packet(1000, 2)).amounts.leftOver).toBeUndefined();
    // 20 mg at 10 ppm are 2 L.
    expect(plan('GA3', inPpm(10), 1000, packet(20, 0)).amounts.makeUpTo.wanted.text).toBe('2 L');
    expect(refusal('GA3', inPpm(10), 1000, packet(20.001, 0)).code).toBe('packet-too-large');
  });

  it('is refused for no packet and for halvings that cannot be', () => {
    expect(refusal('GA3', inPpm(500), 20, packet(0, 1)).code).toBe('not-positive');
    expect(refusal('GA3', inPpm(500), 20, packet(100, 0.5)).code).toBe('bad-halving');
  });
});

describe('the warnings of a plan', () => {
  it('speak of the dose limit, for a salt by its acid', () => {
    expect(ids(plan('GA3', inPpm(1000), 100, powder).warnings)).toEqual([]);
    expect(plan('GA3', inPpm(1500), 100, powder).warnings).toEqual([{
      id: 'above-limit',
      text: 'This is above the limit of 1000 ppm for seed (common practice, no source): dilute it before use.',
    }]);
    // 1109 mg/L of the salt is below 1000 mg/L of acid, 1110 above; check values computed by rational arithmetic.
    expect(ids(plan('GA3K', inPpm(1109), 100, powder).warnings)).toEqual([]);
    expect(ids(plan('GA3K', inPpm(1110), 100, powder).warnings)).toEqual(['above-limit']);
  });

  it('go by the grower’s own limit where there is one', () => {
    expect(ids(plan('GA3', inPpm(600), 100, powder, { limit: inPpm(500) }).warnings)).toEqual(['above-limit']);
    expect(ids(plan('GA3', inPpm(1500), 100, powder, { limit: inPpm(2000) }).warnings)).toEqual([]);
  });

  it('say how long seed stands a disinfectant', () => {
    expect(plan('bleach', { value: 0.5, unit: '%' }, 100, fromStock(5, '%')).warnings).toEqual([{
      id: 'short-soak', text: 'Leave seed in it for 30 min at most, then rinse it (common practice, no source).',
    }]);
  });

  it('ask whether the unit slipped', () => {
    const [slip] = plan('GA3', inPpm(0.5), 100, fromStock(10)).warnings;
    expect(slip).toMatchObject({ id: 'unit-slip' });
    expect(slip?.text).toContain('Did you mean 0.5 g/L?');
  });
});
