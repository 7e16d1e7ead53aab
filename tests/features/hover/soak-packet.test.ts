/** The steps over a soak that names a packet of powder, worked out by hand; and when the seed is to be lifted. */
import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

/** Without the caution at the end, which has a test of its own. */
function soakHover(source: string, now: string): string | undefined {
  return hover(source, now)?.split('\n\n⚠')[0];
}

describe('hover on a soak with powder out of a packet', () => {
  const packets = `
      lot VER-24 Veratrum nigrum, 60 seeds
      powder P1 2026-01-01, GA3 1 g, purity 90 %
      powder P2 2026-01-01, GA3 1 g, purity 75 % salt
      powder P3 2026-01-01, GA3 1 g, purity 90 pct
      stock G1 2026-01-02, GA3 20 mg, 20 mL
      stock KN 2026-01-09, KNO3 1 g, 500 mL`;
  const stepsOf = (liquid: string) => soakHover(`${packets}
      soak VER-24 2026-01-10 19:00, ${liquid}, 24 h
      ^^^^ here
    `, '2026-02-03')!.split('\n').filter(line => /^\d\./.test(line)).slice(0, -2);

  test('weighs for a strength what the purity of the packet takes', () => {
    // 20 mL of 500 ppm hold 10 mg; 10 mg / 0.9 = 11.11 mg; 11 mg hold 9.9 mg: 495 ppm in 20 mL.
    expect(stepsOf('P1 500 ppm, 20 mL').slice(0, 1)).toEqual([
      '1. Weigh 11 mg of GA3 powder (P1) on a balance that shows 1 mg (worked out: 11.11 mg).',
    ]);
    expect(stepsOf('P1 500 ppm, 20 mL').slice(-2)).toEqual([
      '4. With these tools it comes out at 495 ppm, 1 % below the 500 ppm asked for. Made up to 19.8 mL, it would be exact.',
      '5. Put the seed into 20 mL of GA3 500 ppm, and cover all of it.',
    ]);
    // 75 % of the salt holds 0.75 * 346.379 / 384.469 = 67.57 % of the acid: 10 mg / 0.6757 = 14.8 mg.
    expect(stepsOf('P2 500 ppm, 20 mL')[0]).toContain(
      'Weigh 15 mg of GA3 powder (P2) on a balance that shows 1 mg (worked out: 14.8 mg)',
    );
  });

  test('weighs the mass that is written', () => {
    expect(stepsOf('P1 10 mg, 20 mL')).toEqual([
      '1. Weigh 10 mg of GA3 powder (P1) on a balance that shows 1 mg.',
      '2. Wet the powder with a few drops of alcohol and stir until it has dissolved.',
      '3. Make it up to 20 mL with water, and mix well.',
      '4. Put the seed into 20 mL of GA3 450 ppm, and cover all of it.',
    ]);
    expect(stepsOf('P1 10 mg, water 20 mL').slice(-1)).toEqual(['4. Put the seed into 20 mL of GA3 450 ppm with water, and cover all of it.']);
  });

  test('stirs it into the stock beside it, and into one liquid with other powder', () => {
    // 9 mg and 10 mg in 10 mL.
    expect(stepsOf('P1 10 mg, G1 10 mL')).toEqual([
      '1. Weigh 10 mg of GA3 powder (P1) on a balance that shows 1 mg.',
      '2. Wet the powder with a few drops of alcohol and stir until it has dissolved.',
      '3. Stir the powder into 10 mL of G1 until it has dissolved.',
      '4. Put the seed into 10 mL of GA3 1900 ppm, and cover all of it.',
    ]);
    expect(stepsOf('P1 10 mg, KNO3 0.5 %, 20 mL')).toEqual([
      '1. Weigh 10 mg of GA3 powder (P1) on a balance that shows 1 mg.',
      '2. Wet the powder with a few drops of alcohol and stir until it has dissolved.',
      '3. Weigh 100 mg of KNO3 powder on a scale that shows 0.01 g.',
      '4. Stir the powder into some of the water until it has dissolved.',
      '5. Make it up to 20 mL with water, and mix well.',
      '6. Put the seed into 20 mL of GA3 450 ppm with KNO3 0.5 %, and cover all of it.',
    ]);
  });

  test('says nothing of weighing where the strength is unknown, or comes out of the stock alone', () => {
    // The line of P3 has a mistake: it may be the purity.
    expect(stepsOf('P3 10 mg, 20 mL')).toEqual(['1. Put the seed into 20 mL of GA3 of unknown strength, and cover all of it.']);
    expect(stepsOf('P1 500 ppm, P2 500 ppm, 20 mL').map(step => step.slice(0, 15))).toEqual(['1. Put the seed']);
    // 5 mL of 1000 ppm in 20 mL are the 250 ppm that are written: there is no powder to add.
    expect(stepsOf('GA3 250 ppm, G1 5 mL, 20 mL').map(step => step.slice(0, 15))).toEqual(['1. Take 5 mL of', '2. Make it up t', '3. Put the seed']);
  });
});

describe('hover on a soak with an end', () => {
  test('tells when to lift it as the alarm does: by its “until”, with the time', () => {
    const last = (facts: string) => soakHover(`
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, GA3 500 ppm, ${facts}
      ^^^^ here
    `, '2026-02-03')!.split('\n').findLast(line => /^\d\./.test(line));
    expect(last('until 2026-01-11 18:30')).toBe('3. Lift it on 2026-01-11 at 18:30, rinse it with water, and note when.');
    expect(last('24 h, until 2026-01-11 18:30')).toBe('3. Lift it on 2026-01-11 at 18:30, rinse it with water, and note when.');
    expect(last('until 2026-01-11')).toBe('3. Lift it on 2026-01-11, rinse it with water, and note when.');
    expect(last('24 h')).toBe('3. Lift it after 24 h, rinse it with water, and note when.');
  });
});
