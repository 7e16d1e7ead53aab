import { describe, expect, test } from 'vitest';
import { expectAllMarked, problemsIn } from './marked.ts';

describe('a name that nothing defines', () => {
  test('is marked by what was wanted: a lot, a stock, a regime, an agent, anything at all', () => {
    expectAllMarked(`
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      regime cold, chill 4 C 90 days
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds
      day 2026-01-10
      soak VRE-24/A, water, 24 h
           ^^^^^^ unknown-lot
      soak VER-24/A, G7 10 mL, 24 h
                     ^^ unknown-agent
      dilute G2, from G7 10 mL, to 20 mL
                      ^^ unknown-stock
      sow VER-24/A 2026-01-11, 24 seeds, regime warmth
                                                ^^^^^^ unknown-regime
      note VER-25 2026-01-11, hard seed
           ^^^^^^ unknown-id
      due G9 2026-02-01, look for flakes
          ^^ unknown-id
      guide Veratrum, kelp 5 ppm
                      ^^^^ unknown-agent
      stock G5, kemp 1 g, 1 L
                ^^^^ unknown-agent
      limit kelp, 5 ppm
            ^^^^ unknown-agent
    `, { now: '2026-01-20' });
  });

  test('is known once it is defined, in whatever file and line', () => {
    expectAllMarked(`
      --- 2026.germ
      day 2026-01-10
      soak VER-24/A, G2 10 mL, kelp 5 ppm, 24 h
      sow VER-24/A 2026-01-11, 24 seeds, regime cold
      note G2 2026-01-11, clear
      note kelp 2026-01-11, smells
      note cold 2026-01-11, worked
      limit kelp, 5 ppm
      --- zz.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds, B 24 seeds
      sow VER-24/B 2026-01-11
      dilute G2 2026-01-09, from G1 10 mL, to 20 mL
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      agent kelp, seaweed of the garden shop
      regime cold, chill 4 C 90 days
    `, { now: '2026-01-20' });
  });

  test('is marked where it names a thing of another kind', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      regime cold, chill 4 C 90 days
      day 2026-01-10
      count G1, 3
            ^^ unknown-lot
      soak VER-24, cold 5 mL, VER-24 5 mL, water, 24 h
                   ^^^^ unknown-agent
                              ^^^^^^ unknown-fact
      sow VER-24 2026-01-11, regime G1
                                    ^^ unknown-regime
      note cold/A, a regime has no batches
           ^^^^ unknown-lot
    `, { now: '2026-01-20' });
  });

  test('says what was probably meant, of the kind that is wanted, and offers it', () => {
    const [problem] = problemsIn('unknown-lot', 'lot VER-24 Veratrum nigrum\nregime VER-25, warm 20 C\ncount VER-26/A 2026-01-10, 3');
    expect(problem?.message).toBe('No lot “VER-26” is defined in this journal. Did you mean “VER-24”?');
    expect(problem?.fixes.map(({ text }) => text)).toEqual(['VER-24']);
    const [agent] = problemsIn('unknown-agent', 'lot VER-24 Veratrum nigrum\nsoak VER-24 2026-01-10, ethepon 100 ppm');
    expect(agent?.fixes.map(({ text }) => text)).toEqual(['ethephon']);
  });

  test('is no slip of a name as short as two letters, unless in case, nor of a much longer one', () => {
    const message = (id: string, lot: string) => problemsIn('unknown-lot', `lot ${lot} Veratrum\ncount ${id} 2026-01-10, 0`)[0]!.message;
    expect(message('G7', 'G1')).not.toContain('Did you mean');
    expect(message('g1', 'G1')).toContain('Did you mean “G1”?');
    expect(message('ACD', 'ACO')).toContain('Did you mean “ACO”?');
    expect(message('ACO-2', 'ACO-2025')).not.toContain('Did you mean');
    expect(message('ACO-2025-wst', 'ACO-2025-west')).toContain('Did you mean “ACO-2025-west”?');
  });

  test('is one mistake in each file, at its first use, which says how many more records use it', () => {
    const source = `
      --- a.germ
      day 2026-01-10
      soak VER-24/A, water, 24 h
           ^^^^^^ unknown-lot
      soak VER-24/B, kelp 5 ppm, 24 h
                     ^^^^ unknown-agent
      sow VER-24, 12 seeds
      apply VER-24/B, kelp 1 ppm, 2 drops
      --- b.germ
      count VER-24/A 2026-01-20, 3
            ^^^^^^ unknown-lot
    `;
    expectAllMarked(source, { now: '2026-01-20' });
    expect(problemsIn('unknown-lot', source).map(({ message }) => message)).toEqual([
      'No lot “VER-24” is defined in this journal; 3 more records in this file use it. Define it, such as: lot VER-24 Primula vialii, 60 seeds.',
      'No lot “VER-24” is defined in this journal. Define it, such as: lot VER-24 Primula vialii, 60 seeds.',
    ]);
    expect(problemsIn('unknown-agent', source)[0]?.message).toContain('; one more record in this file uses it.');
  });

  test('says how to define it where nothing is like it', () => {
    expect(problemsIn('unknown-lot', 'count VER-24 2026-01-10, 3')[0]?.message).toMatch(/Define it, such as: lot VER-24 Primula vialii, 60 seeds\.$/);
    expect(problemsIn('unknown-agent', 'lot V Veratrum\nsoak V 2026-01-10, seaweed 5 ppm')[0]?.message)
      .toMatch(/Declare it with “agent seaweed”, or define a stock of that name\.$/);
    expect(problemsIn('unknown-agent', 'guide Veratrum, seaweed 5 ppm')[0]?.message).toMatch(/Declare it with “agent seaweed”\.$/);
    expect(problemsIn('unknown-stock', 'dilute G2 2026-01-10, from G1 1 mL, to 2 mL')[0]?.message)
      .toMatch(/Define it, such as: stock G1 2026-01-09, GA3 20 mg, 20 mL\.$/);
  });
});
