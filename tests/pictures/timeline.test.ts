import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seasonPicture, stagesPicture } from '../../server/src/features/drawing/season.ts';
import { dayOfIso, isoOf } from '../../server/src/model/day.ts';
import { monthTicks } from '../../server/src/pictures/month-ticks.ts';
import type { Frame } from '../../server/src/pictures/picture.ts';
import { themes } from '../../server/src/pictures/theme.ts';
import { timelinePicture, type Stretch } from '../../server/src/pictures/timeline.ts';
import { at, batchOf, journalOf } from '../journal/helpers.ts';
import { collisions, outside, pointsOf, shapesOf, textBoxes, withClass } from './svg.ts';

const frame: Frame = { theme: themes.light, width: 760, small: false, id: 'a' };

const REGIME = [
  'regime woodland, warm 20 C 30 days, chill 4 C 60 days',
  'lot VER-24 Veratrum nigrum, 60 seeds',
  'sow VER-24 2026-01-01, regime woodland, at bag 1 slot 2',
].join('\n');

describe('the stages of a batch', () => {
  test('are drawn up to today as they were, and from then on as they are planned', () => {
    const { table, svg } = stagesPicture(batchOf(REGIME), at('2026-01-21'), frame)!;
    expect(table.rows).toEqual([
      ['VER-24', '20 C 30 days', '2026-01-01', '2026-01-21', ''],
      ['VER-24', '20 C 30 days', '2026-01-21', '2026-01-31', 'planned'],
      ['VER-24', '4 C 60 days', '2026-01-31', '2026-04-01', 'planned'],
    ]);
    const bars = [
      ...withClass({ svg }, 'warm'),
      ...withClass({ svg }, 'warm planned'),
      ...withClass({ svg }, 'cold planned'),
    ];
    const widths = bars.map(({ attributes }) => Number(attributes.width));
    // 20, 10 and 60 days; written to a hundredth of a pixel.
    expect(widths[0]! / widths[1]!).toBeCloseTo(2, 2);
    expect(widths[2]! / widths[1]!).toBeCloseTo(6, 2);
    const [today] = withClass({ svg }, 'today').map(pointsOf);
    expect(today![0]![0]).toBeCloseTo(Number(bars[1]!.attributes.x), 1);
  });

  test('tell cold from warm, and what is planned from what was, in black and white, and say how', () => {
    const { svg } = stagesPicture(batchOf(REGIME), at('2026-01-21'), { ...frame, theme: themes.print })!;
    const bars = ['warm', 'warm planned', 'cold planned'].map(name => withClass({ svg }, name)[0]!.attributes);
    expect(bars.map(({ fill }) => fill)).toEqual(['url(#a-warm)', 'url(#a-warm)', 'url(#a-cold)']);
    expect(bars.map(bar => bar['stroke-dasharray'])).toEqual([undefined, '3 2', '3 2']);
    const words = shapesOf({ svg }).filter(({ name }) => name === 'text').map(({ text }) => text).join(' ');
    expect(words).toContain('hatched: cold · barred: warm');
  });

  test('are not drawn of a batch without any', () => {
    const journal = 'lot VER-24 Veratrum nigrum, 60 seeds\nsow VER-24 2026-01-01';
    expect(stagesPicture(batchOf(journal), at('2026-01-21'), frame)).toBeUndefined();
  });
});

describe('the season', () => {
  test('has the open batches by where they lie, with what is due next', () => {
    const journal = journalOf(
      `${REGIME}\nlot IRI-1 Iris alba, 9 seeds\nsow IRI-1 2026-01-01\nlot OLD-1 Iris alba, 9 seeds\nsow OLD-1 2026-01-01\ndiscard OLD-1 2026-01-05`,
    );
    const picture = seasonPicture(journal, at('2026-01-21'), frame)!;
    const words = shapesOf(picture)
      .filter(({ name }) => name === 'text')
      .map(({ text }) => text);
    expect(words).toEqual(
      expect.arrayContaining(['bag 1', 'VER-24', 'no place recorded', 'IRI-1', 'today', '2026', 'Feb', 'Mar']),
    );
    expect(words).not.toContain('OLD-1');
    expect(picture.description).toMatch(/IRI-1: sown 2026-01-01; due 2026-01-\d\d: /);
  });

  test('is not drawn of an empty journal', () => {
    expect(seasonPicture(journalOf(''), at('2026-01-21'), frame)).toBeUndefined();
  });

  const stretch = fc
    .record({
      kind: fc.constantFrom('soak' as const, 'cold' as const, 'warm' as const),
      from: fc.integer({ min: 20000, max: 20900 }),
      length: fc.nat(300),
      isPlanned: fc.boolean(),
      text: fc.constantFrom('4 C 90 days', '20 C 12 weeks'),
    })
    .map(({ length, ...each }): Stretch => ({ ...each, to: length === 0 ? undefined : each.from + length }));
  const row = fc.record({
    label: fc.constantFrom('PEN-25/A', 'a very long name of a lot of seed that somebody gave it/A/1'),
    heading: fc.constantFrom(undefined, 'bag 1', 'bag 2'),
    stretches: fc.array(stretch, { maxLength: 4 }),
    sown: fc.option(fc.integer({ min: 20000, max: 20900 }), { nil: undefined }),
    due: fc.option(fc.record({ day: fc.integer({ min: 20000, max: 21900 }), what: fc.constant('count') }), {
      nil: undefined,
    }),
  });

  test.each([true, false])('keeps all marks within its bounds, and names apart (small: %s)', small => {
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1, maxLength: 9 }),
        fc.integer({ min: 20000, max: 20900 }),
        (rows, today) => {
          const picture = timelinePicture(
            { title: 'The season', rows, today },
            { ...frame, small, width: small ? 400 : 760 },
          )!;
          expect(outside(picture)).toEqual([]);
          const names = textBoxes(picture).filter(({ what }) => !/^(4 C|20 C|count)/.test(what));
          expect(collisions(names)).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });
});

test('an axis of dates begins its months where the calendar does, with room for each name', () => {
  fc.assert(
    fc.property(fc.integer({ min: 19000, max: 22000 }), fc.integer({ min: 5, max: 4000 }), (first, length) => {
      const ticks = monthTicks([first, first + length], 400);
      for (const [i, { day, text }] of ticks.entries()) {
        expect(isoOf(day)).toMatch(/-01$/);
        expect(text === isoOf(day).slice(0, 4)).toBe(isoOf(day).slice(5, 7) === '01');
        if (i > 0) expect(((day - ticks[i - 1]!.day) / length) * 400).toBeGreaterThan(36);
      }
    }),
  );
  expect(monthTicks([dayOfIso('2026-11-20')!, dayOfIso('2027-03-05')!], 400).map(({ text }) => text)).toEqual([
    'Dec',
    '2027',
    'Feb',
    'Mar',
  ]);
});
