import { describe, expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

const codes = ['soak-too-long'] as const;
const now = '2026-03-01';

describe('a soak longer than the limit', () => {
  test('is marked at what says its length; as long as the limit is right (24 h is the longest soak: common practice)', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 10 seeds, B 10 seeds, C 10 seeds, D 10 seeds, E 10 seeds
      day 2026-01-10
      soak VER-24/A 19:00, water, 24 h
      soak VER-24/B 19:00, water, 24.5 h
                                  ^^^^^^ soak-too-long
      soak VER-24/C 19:00, water, until 2026-01-11 19:06
                                  ^^^^^^^^^^^^^^^^^^^^^^ soak-too-long
      soak VER-24/D 19:00, water
           ^^^^^^^^ soak-too-long
      soak VER-24/E 19:00, water, 2 days
                                  ^^^^^^ soak-too-long
      day 2026-01-11
      lift VER-24/D 19:30
    `, { now });
  });

  test('is as long as the lift says, whatever was planned', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 10 seeds, B 10 seeds
      day 2026-01-10
      soak VER-24/A 19:00, water, 30 h
      soak VER-24/B 19:00, water, 12 h
           ^^^^^^^^ soak-too-long
      day 2026-01-11
      lift VER-24/A 18:45
      lift VER-24/B 20:00
    `, { now });
  });

  test('is marked only where it is certain: times that are not written may be any of their day', () => {
    expectMarked(codes, `
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 10 seeds, B 10 seeds, C 10 seeds
      soak VER-24/A 2026-01-10, water
      lift VER-24/A 2026-01-12
      soak VER-24/B 2026-01-10, water
           ^^^^^^^^ soak-too-long
      lift VER-24/B 2026-01-13
      soak VER-24/C 2026-01-10, water, 25 h
                                       ^^^^ soak-too-long
    `, { now });
  });

  test('is said to raise the dose only where there is one', () => {
    const message = (liquid: string) => problemsIn('soak-too-long', `lot V Veratrum\nsoak V 2026-01-10 19:00, ${liquid}, 30 h`, { now })[0]!.message;
    expect(message('water')).toMatch(/Long soaks starve seed of air: growers normally soak for a day at most\. If the seed came out before that, write a “lift” with the time\.$/);
    expect(message('GA3 100 ppm')).toMatch(/Long soaks starve seed of air and raise the dose: /);
  });

  test('is not one of a few minutes more, nor one that the clocks made longer', () => {
    expectMarked(codes, `
      zone Europe/Vienna
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 10 seeds, B 10 seeds, C 10 seeds, D 10 seeds
      soak VER-24/A 2026-01-10 19:00, water
      lift VER-24/A 2026-01-11 19:02
    # Summer time ends on 25 October 2026 (IANA): from seven to seven are 25 hours.
      soak VER-24/B 2026-10-24 19:00, water
      lift VER-24/B 2026-10-25 19:00
      soak VER-24/C 2026-10-24 19:00, water
           ^^^^^^^^ soak-too-long
      lift VER-24/C 2026-10-25 20:00
    # It begins on 29 March 2026: until eight o'clock are 24 hours.
      soak VER-24/D 2026-03-28 19:00, water, until 2026-03-29 20:00
    `.replace(/^ {4}#/gm, '      #'), { now: '2026-11-01' });
  });

  test.each([['planned', now], ['not over', '2026-05-12 00:59']])('that is %s will lie there', (_, present) => {
    const [problem] = problemsIn('soak-too-long', 'lot V Veratrum\nsoak V 2026-05-10 19:00, water, 30 h', { now: present });
    expect(problem!.message).toMatch(/^V will be in the soak for 30 h; the limit is 24 h.* at most\. Lift the seed sooner\.$/);
  });

  test('that is over lay there', () => {
    const [problem] = problemsIn('soak-too-long', 'lot V Veratrum\nsoak V 2026-05-10 19:00, water, 30 h', { now: '2026-05-12 01:00' });
    expect(problem!.message).toMatch(/^V was in the soak for 30 h; .* If the seed came out before that, write a “lift” with the time\.$/);
  });

  test('that a “lift” ended has its length from there: one of the times may be wrong', () => {
    const [problem] = problemsIn('soak-too-long', 'lot V Veratrum\nsoak V 2026-01-10 19:00, water\nlift V 2026-01-12 19:00', { now });
    expect(problem!.message).toMatch(/^V was in the soak for 48 h.* at most\. If a time is wrong, correct it\.$/);
  });

  test('may still go on', () => {
    const source = `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water
    `;
    const message = (time: string) => problemsIn('soak-too-long', source, { now: time }).map(problem => problem.message);
    expect(message('2026-01-11 19:00')).toEqual([]);
    expect(message('2026-01-11 19:05')).toEqual([]);
    expect(message('2026-01-11 19:06')).toEqual([
      'VER-24 has been in the soak for 24.1 h by the wall clock so far; the limit is 24 h (default: common practice, no source). '
        + 'Lift the seed now and write “lift”; if it came out before, write that time on the “lift”.',
    ]);
    // Where nobody knows what time it is, the day has just begun.
    expect(message('2026-01-11')).toEqual([]);
    expect(message('2026-01-12')).toHaveLength(1);
  });

  test('is over when the seed went on, was cut open or thrown away: how long it was is not known then', () => {
    for (const next of ['sow VER-24 2026-01-20', 'cut VER-24 2026-01-20, 60 dead', 'discard VER-24 2026-01-20, soft']) {
      expectMarked(codes, `lot VER-24 Veratrum nigrum, 60 seeds\nsoak VER-24 2026-01-10 19:00, water\n${next}`, { now });
    }
  });

  test('is that of each batch that was split off in it', () => {
    const source = `
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water
      split VER-24 2026-01-11 07:00, A 20 seeds, B 20 seeds, C 20 seeds
      lift VER-24/A 2026-01-11 07:00
      lift VER-24/B 2026-01-12 07:00
      lift VER-24/C 2026-01-12 07:00
    `;
    expect(problemsIn('soak-too-long', source, { now }).map(({ message }) => message.split(';')[0]))
      .toEqual(['VER-24/B and VER-24/C were in the soak for 36 h by the wall clock']);
  });

  test('goes by the limit record, for the genus before one for all, and says which', () => {
    const source = `
      --- stocks.germ
      limit soak, 12 h
      limit soak, 48 h, for Paris
      --- 2026.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      soak VER-24 2026-01-10 19:00, water, 13 h
                                           ^^^^ soak-too-long
      lot PAR-24 Paris polyphylla, 60 seeds
      soak PAR-24 2026-01-10 19:00, water, 48 h
    `;
    expectMarked(codes, source, { now });
    expect(problemsIn('soak-too-long', source.replace(/\^+ soak-too-long/, ''), { now })[0]?.message)
      .toContain('the limit is 12 h (the “limit” record in stocks.germ)');
  });

  // Summer time begins on 2026-03-29 and ends on 2026-10-25 in the European Union (directive 2000/84/EC).
  test('counts the hour that summer time takes and gives, where the zone is written', () => {
    const soak = (zone: string) => `
      ${zone}
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 10 seeds, B 10 seeds
      soak VER-24/A 2026-03-28 19:00, water
      lift VER-24/A 2026-03-29 19:30
      soak VER-24/B 2026-10-24 19:00, water
      lift VER-24/B 2026-10-25 19:30
    `;
    const lengths = (zone: string) => problemsIn('soak-too-long', soak(zone), { now: '2026-12-01' }).map(({ message }) => message.split(';')[0]);
    expect(lengths('zone Europe/Vienna')).toEqual(['VER-24/B was in the soak for 25.5 h']);
    expect(lengths('# no zone')).toEqual([
      'VER-24/A was in the soak for 24.5 h by the wall clock', 'VER-24/B was in the soak for 24.5 h by the wall clock',
    ]);
  });
});

test('where the time of day is unknown, a soak that goes on lasted until the day began', () => {
  const [problem] = problemsIn('soak-too-long', 'lot L Iris alba\nsoak L 2026-01-10 19:00, GA3 500 ppm', { now: '2026-01-12' });
  expect(problem!.message).toContain('has been in the soak for 29 h by the wall clock so far;');
});
