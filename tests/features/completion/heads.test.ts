import { describe, expect, test } from 'vitest';
import { zoneNames } from '../../../server/src/features/completion/zones.ts';
import { labels, NOW, offered } from './offered.ts';

const lot = 'lot VER-24 Veratrum nigrum, 60 seeds\n  soak VER-24 2026-01-18 19:30, GA3 500 ppm';
const at = (above: string, line: string, marks: string, trigger?: ' ') =>
  labels(offered(`\n  ${lot}\n  ${above}\n  ${line}\n  ${marks}`, NOW, trigger));

describe('dates', () => {
  test('are today and yesterday, with the day of the week', () => {
    expect(at('', 'count VER-24 ', '            ^ here')).toEqual(['2026-01-19 · Monday, today', '2026-01-18 · Sunday, yesterday']);
    expect(at('', 'day ', '   ^ here')).toEqual(['2026-01-19 · Monday, today', '2026-01-18 · Sunday, yesterday']);
  });

  test('have the time where it gives the length of a soak', () => {
    expect(at('', 'soak VER-24 ', '           ^ here')[0]).toBe('2026-01-19 19:05 · Monday, now');
  });

  test('are left to the `day` line, and a time is offered', () => {
    expect(at('day 2026-01-19', 'count VER-24 ', '            ^ here')).toEqual(['19:05 · now', '2026-01-18 · Sunday, yesterday']);
    expect(at('day 2026-01-12', 'count VER-24 ', '            ^ here')).toEqual(['2026-01-19 · Monday, today', '2026-01-18 · Sunday, yesterday']);
  });

  test('do not come up by themselves below a `day` line when a blank is typed', () => {
    expect(at('day 2026-01-19', 'count VER-24 ', '            ^ here', ' ')).toEqual([]);
    expect(at('', 'count VER-24 ', '            ^ here', ' ')).not.toEqual([]);
  });

  test('are the end of the soak first for a lift; one without an end ends at the limit', () => {
    expect(at('', 'lift VER-24 ', '           ^ here')[0]).toBe('2026-01-19 19:30 · Monday, the end of its soak');
    expect(at('day 2026-01-19', 'lift VER-24 ', '           ^ here')[0]).toBe('19:30 · the end of its soak');
    expect(at('', 'lift VER-24 2026-01-19 ', '                      ^ here')).toEqual(['19:30 · the end of its soak', '19:05 · now']);
  });

  test('are days ahead for a reminder', () => {
    expect(at('chill VER-24 2026-01-19, 4 C, 90 days', 'due VER-24 ', '          ^ here').slice(0, 4)).toEqual([
      '2026-04-19 · Sunday, the end of “chill”', '2026-01-26 · Monday, in a week', '2026-02-02 · Monday, in 2 weeks', '2026-02-16 · Monday, in 4 weeks',
    ]);
  });

  test('are none for a record that takes no date', () => {
    expect(at('', 'regime x ', '        ^ here')).toEqual([]);
    expect(at('', 'day 2026-01-19 ', '              ^ here')).toEqual([]);
  });
});

describe('plants', () => {
  test('are those of other lots and of guides, the most frequent first', () => {
    expect(labels(offered(`
      lot V-1 Veratrum nigrum, 60 seeds
      lot V-2 Veratrum nigrum, 60 seeds
      guide Veratrum album, GA3 500 ppm
      lot V-3 Ver
                ^ here
    `))).toEqual(['Veratrum nigrum', 'Veratrum album']);
  });

  test('replace the name up to the comma, blanks included', () => {
    const found = offered(`
      lot V-1 Veratrum nigrum, 60 seeds
      lot V-3 Veratrum ni, 60 seeds
                        ^ here
    `)!;
    expect([found.start, found.cursor, found.end]).toEqual([8, 19, 19]);
    expect(labels(found)).toEqual(['Veratrum nigrum']);
  });
});

describe('zones', () => {
  test('are found by the place alone', () => {
    expect(labels(offered('\n  zone vienna\n            ^ here'))).toEqual(['Europe/Vienna']);
  });

  test('are a few where the engine cannot list them', () => {
    expect(zoneNames({})).toContain('Europe/Vienna');
    expect(zoneNames().length).toBeGreaterThan(zoneNames({}).length);
  });
});
