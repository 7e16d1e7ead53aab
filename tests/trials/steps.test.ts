import { describe, expect, test } from 'vitest';
import { contest, trial } from './helpers.ts';

/** Two batches soaked on one day; sides are told by what was done then, each line of A once more for B. */
const sides = (a: readonly string[], b: readonly string[], seeds = 24) => `
  lot L Iris alba, 120 seeds
  split L, A ${seeds} seeds, B ${seeds} seeds
  soak L/A 2026-01-10, GA3 500 ppm, 24 h
  soak L/B 2026-01-10, water, 24 h
  ${a.map(line => line.replace(' ', ' L/A ')).join('\n  ')}
  ${b.map(line => line.replace(' ', ' L/B ')).join('\n  ')}
`;
const sown = ['sow 2026-01-11', 'chill 2026-01-12, 4 C, 12 weeks'];

describe('the way out of the cold', () => {
  const warmed = (day: string, ...counts: readonly string[]) => [...sown, `warm ${day}, 18 C`, ...counts, 'discard 2026-06-10'];

  test('is the same up to three days, and makes the treated seed ahead of nothing where it was two weeks sooner', () => {
    const a = warmed('2026-03-23', 'count 2026-04-06, 37', 'count 2026-04-20, 6', 'count 2026-05-01, 0');
    const b = (day: string) => warmed(day, 'count 2026-04-06, 0', 'count 2026-04-20, 35', 'count 2026-05-01, 7');
    expect(contest(sides(a, b('2026-04-06'), 50))).toMatchObject({
      alsoDiffers: ['warm and cold stages'], verdict: { verdict: 'cannot tell', rule: 'more-differs' },
    });
    expect(contest(sides(a, b('2026-03-27'), 50)).alsoDiffers).toEqual(['warm and cold stages']);
    expect(contest(sides(a, b('2026-03-26'), 50)).alsoDiffers).toEqual([]);
  });

  test('is the same where one side follows a day after the look', () => {
    const looked = ['count 2026-04-06, 5', 'discard 2026-04-08'];
    const a = [...sown, 'warm 2026-04-05, 18 C', ...looked];
    expect(contest(sides(a, [...sown, 'warm 2026-04-06 18:00, 18 C', ...looked])).alsoDiffers).toEqual([]);
    expect(contest(sides(a, [...sown, ...looked])).alsoDiffers).toEqual(['warm and cold stages']);
  });

  test('is a second sowing too, on its day and at its temperature', () => {
    const out = (...sowing: readonly string[]) => [...sown, ...sowing, 'count 2026-06-01, 5', 'discard 2026-06-10'];
    const [a] = [out('sow 2026-04-06, 25 C')];
    for (const b of [out('sow 2026-05-06, 25 C'), out('sow 2026-04-06, 10 C'), out()]) {
      expect(contest(sides(a, b)).alsoDiffers, b.join()).toEqual(['warm and cold stages']);
    }
    expect(contest(sides(a, out('sow 2026-04-09, 25 C')))).toMatchObject({ alsoDiffers: [], remarks: [] });
    expect(contest(sides(a, out('sow 2026-04-09')))).toMatchObject({
      alsoDiffers: [], remarks: ['the temperature of a stage is recorded for one side only'],
    });
  });

  test('is a second sowing out of a regime', () => {
    const regime = '\n  regime woodland, warm 20 C 60 days, chill 4 C 90 days\n';
    const out = (day: string) => ['sow 2026-01-11, regime woodland', `sow ${day}, 18 C`, 'count 2026-09-01, 5', 'discard 2026-09-10'];
    const of = (day: string) => trial(regime + sides(out('2026-06-20'), out(day))).contests[0]!.alsoDiffers;
    expect([of('2026-06-20'), of('2026-07-20')]).toEqual([[], ['warm and cold stages']]);
  });

  test('is no sowing after a mere soak', () => {
    const again = (...soaked: readonly string[]) => ['sow 2026-01-11, 15 C', ...soaked, 'count 2026-03-01, 5', 'discard 2026-03-02'];
    const found = contest(sides(again('scarify 2026-01-20', 'sow 2026-01-20, 15 C'), again('scarify 2026-01-20')));
    expect(found.alsoDiffers).toEqual([]);
  });
});

describe('the time of cold before sowing', () => {
  const chilled = (start: string, sowing = '2026-04-05') => [`chill ${start}, 4 C`, `sow ${sowing}, 15 C`, 'count 2026-05-03, 5', 'discard 2026-06-10'];
  const of = (a: string, b: string) => contest(sides(chilled(a), chilled(b))).alsoDiffers;

  test('may differ by a week, or a fifth of it', () => {
    expect(of('2026-01-11', '2026-01-18')).toEqual([]);
    expect(of('2026-01-11', '2026-01-25')).toEqual(['warm and cold stages']);
    expect(of('2026-03-20', '2026-03-25')).toEqual(['warm and cold stages']);
    expect(of('2026-03-20', '2026-03-23')).toEqual([]);
  });

  test('is that of one stage where the same is written again', () => {
    const twice = ['chill 2026-01-11, 4 C', 'chill 2026-02-20, 4 C, 4 weeks', ...chilled('').slice(1)];
    expect(contest(sides(twice, chilled('2026-01-11'))).alsoDiffers).toEqual([]);
    expect(contest(sides(twice.map(line => line.replace('20, 4 C', '20, 0 C')), chilled('2026-01-11'))).alsoDiffers).toEqual(['warm and cold stages']);
  });
});

describe('the cold of dry seed', () => {
  const wet = (agent: string) => `soak 2026-01-01 19:00, ${agent}, 24 h`;
  const cold = ['chill 2026-01-02 20:00, 4 C, 12 weeks'];
  const out = ['sow 2026-03-27, 15 C', 'count 2026-04-24, 5', 'discard 2026-06-10'];
  const later = ['soak 2026-03-26, water, 24 h', ...out];
  const of = (a: readonly string[], b: readonly string[]) => contest(sides(a, b)
    .replace('  soak L/A 2026-01-10, GA3 500 ppm, 24 h\n  soak L/B 2026-01-10, water, 24 h\n', ''));
  const remark = 'the moisture of the seed in a stage is recorded for one side only';

  test('is not that of seed that was soaked before', () => {
    expect(of([wet('GA3 500 ppm'), ...cold, ...out], [...cold, ...later])).toMatchObject({
      alsoDiffers: ['warm and cold stages (one side was still dry)'], verdict: { rule: 'more-differs' },
    });
    const late = later.map(line => line.replace('water', 'GA3 500 ppm'));
    expect(of([...cold, ...late], [wet('water'), ...cold, ...out]).alsoDiffers).toEqual(['warm and cold stages (one side was still dry)']);
    expect(of([...cold, ...late], [...cold, ...later])).toMatchObject({ alsoDiffers: [], remarks: [] });
    expect(of([wet('GA3 500 ppm'), ...cold, ...out], [wet('water'), ...cold, ...out])).toMatchObject({ alsoDiffers: [], remarks: [] });
  });

  test('may have been none where nothing says so', () => {
    expect(of([wet('GA3 500 ppm'), ...cold, ...out], [...cold, ...out])).toMatchObject({ alsoDiffers: [], remarks: expect.arrayContaining([remark]) });
    expect(of([...cold, ...later.map(line => line.replace('water', 'GA3 500 ppm'))], [...cold, ...out]).remarks).not.toContain(remark);
    // In its medium it is moist.
    const sowing = ['sow 2026-01-02 18:00', ...cold, ...out.slice(1)];
    expect(of([wet('GA3 500 ppm').replace('19:00', '09:00').replace('24', '8'), ...sowing], sowing).remarks).not.toContain(remark);
  });
});
