import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lotGermination } from '../../server/src/features/drawing/germination.ts';
import type { Course } from '../../server/src/measures/course.ts';
import { isUndefined } from '../../server/src/measures/measured.ts';
import { envelopeOf } from '../../server/src/pictures/germination/envelope.ts';
import { germinationPicture } from '../../server/src/pictures/germination/picture.ts';
import type { GerminationValues } from '../../server/src/pictures/germination/values.ts';
import type { Frame, Picture } from '../../server/src/pictures/picture.ts';
import { themes } from '../../server/src/pictures/theme.ts';
import { lotOf } from '../journal/helpers.ts';
import { collisions, outside, pathPoints, pointsOf, shapesOf, textBoxes, withClass } from './svg.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';

const frame = (more: Partial<Frame> = {}): Frame => ({
  theme: themes.light,
  width: 720,
  small: false,
  id: 'a',
  ...more,
});

const TRIAL = [
  'lot VER-24 Veratrum nigrum, 60 seeds',
  'split VER-24, A 20 seeds, B 20 seeds',
  'soak VER-24/A 2026-01-10 18:00, GA3 500 ppm, 24 h',
  'soak VER-24/B 2026-01-10 18:00, water, 24 h',
  'sow VER-24/A 2026-01-11 18:00',
  'sow VER-24/B 2026-01-11 18:00',
  'count VER-24/A 2026-01-25, 8',
  'count VER-24/B 2026-01-25, 1',
  'count VER-24/A 2026-02-08, 6',
  'count VER-24/B 2026-02-08, 3',
  'cut VER-24/A 2026-02-08, 4 fresh, 2 dead',
].join('\n');

const drawn = (journal: string, more: Partial<Frame> = {}): Picture =>
  germinationPicture(lotGermination(trialOf(lotOf(journal), Infinity))!, frame(more))!;

describe('what is known between looks', () => {
  test('is a box from look to look, from the seed seen to the seed that may be up', () => {
    const envelope = envelopeOf([
      {
        sown: 10,
        checks: [
          { day: 7, germinated: 0 },
          { day: 14, germinated: 6, lost: 1 },
        ],
      },
    ]);
    expect(envelope).toEqual({
      seeds: 9,
      germinated: 6,
      half: { from: 7, to: 14, seeds: 3.5 },
      looks: [
        { day: 0, known: 0, possible: 0, isLook: false },
        { day: 7, known: 0, possible: 0, isLook: true },
        { day: 14, known: 6, possible: 6, isLook: true },
      ],
    });
  });

  test('holds what really happened, and half of the seed comes up within its range, whoever looked when', () => {
    const batch = fc.record({
      ups: fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 12 }),
      asleep: fc.nat(5),
      days: fc.uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 8 }),
    });
    fc.assert(
      fc.property(fc.array(batch, { minLength: 1, maxLength: 4 }), batches => {
        const truth = batches.map(({ ups, asleep, days }) => {
          // Somebody looks when all is over.
          const looks = [...new Set([...days, 60])].sort((a, b) => a - b);
          const upBy = (day: number) => ups.filter(up => up <= day).length;
          const course: Course = {
            sown: ups.length + asleep,
            checks: looks.map(day => ({ day, germinated: upBy(day) })),
          };
          return { course, ups };
        });
        const found = envelopeOf(truth.map(({ course }) => course));
        if (isUndefined(found)) throw new Error(found.undefined);
        const ups = truth.flatMap(each => each.ups).sort((a, b) => a - b);
        for (const { day, known, possible } of found.looks) {
          const up = ups.filter(each => each <= day).length;
          expect(known).toBeLessThanOrEqual(up);
          expect(up).toBeLessThanOrEqual(possible);
        }
        if (isUndefined(found.half)) throw new Error(found.half.undefined);
        const [lower, upper] = [
          ups[Math.floor((ups.length + 1) / 2) - 1]!,
          ups[Math.ceil((ups.length + 1) / 2) - 1]!,
        ];
        expect(upper).toBeGreaterThan(found.half.from);
        expect(lower).toBeLessThanOrEqual(found.half.to);
      }),
    );
  });
});

describe('germination over time', () => {
  test('has a mark at each look, as high as its share and at its day', () => {
    const picture = drawn(TRIAL);
    const [left, right] = axisOf(picture);
    const [bottom, top] = sharesOf(picture);
    const dots = withClass(picture, 'look').map(shape => pointsOf(shape)[0]!);
    // The axis begins with the soak, on day -1. Untreated first: 1 and 4 of 20 on days 14 and 28; then 8 and 14 of 20.
    const shares = dots.map(([x, y]) =>
      [((x - left) / (right - left)) * 29 - 1, (bottom - y) / (bottom - top)].map(
        value => Math.round(value * 1000) / 1000,
      ),
    );
    expect(shares).toEqual([
      [14, 0.05],
      [28, 0.2],
      [14, 0.4],
      [28, 0.7],
    ]);
  });

  test('says treatment, batch, day, number and what is new to the pointer', () => {
    const said = shapesOf(drawn(TRIAL))
      .filter(({ name, text }) => name === 'title' && text.includes('day 28'))
      .map(({ text }) => text);
    expect(said).toContain('GA3 500 ppm 24 h (A), day 28: 14 of 20 germinated = 70 %, 6 new');
  });

  test('draws untreated seed dashed and with open marks, so that it is told apart without colour', () => {
    const [untreated, treated] = withClass(drawn(TRIAL, { theme: themes.print }), 'steps');
    expect(untreated!.attributes['stroke-dasharray']).toBe('6 3');
    expect(treated!.attributes['stroke-dasharray']).toBeUndefined();
    const [open, , filled] = withClass(drawn(TRIAL), 'look');
    expect(open!.attributes.fill).toBe(themes.light.paper);
    expect(filled!.attributes.fill).not.toBe(themes.light.paper);
  });

  test('marks the day that was compared in days from the sowing, also after a later soak', () => {
    const late = [
      'lot VER-24 Veratrum nigrum, 60 seeds', 'split VER-24, A 30 seeds, B 30 seeds',
      ...['A', 'B'].flatMap(part => [`sow VER-24/${part} 2026-01-11`, `count VER-24/${part} 2026-02-01, 5`]),
      'soak VER-24/A 2026-02-02 10:00, GA3 500 ppm, 24 h', 'soak VER-24/B 2026-02-02 10:00, water, 24 h',
      ...['A', 'B'].flatMap(part => [`sow VER-24/${part} 2026-02-03 11:00`, `count VER-24/${part} 2026-02-20, ${part === 'A' ? 15 : 2}`]),
    ].join('\n');
    // 2026-02-20 is 18 days after the soak, and 40 after the sowing, from which the axis counts.
    expect(lotGermination(trialOf(lotOf(late), Infinity))!.compared).toEqual([40]);
    expect(drawn(late).description).toContain('Compared on day 40.');
  });

  test('marks the day that was compared, and sorts the seed that did not germinate', () => {
    const picture = drawn(TRIAL);
    expect(withClass(picture, 'compared')).toHaveLength(1);
    expect(textBoxes(picture).map(({ what }) => what)).toEqual(
      expect.arrayContaining(['compared on day 28', 'cut: 4 fresh, 2 dead', '14 of 20 = 70 %', 'T50 before day 14']),
    );
    const column = withClass(picture, 'remains');
    expect(column).toHaveLength(1);
  });

  test('says all its numbers in words and in a table', () => {
    const { description, table, caption } = drawn(TRIAL);
    // R 4.2.2: prop.test(14, 20, correct = FALSE) gives 0.4810 to 0.8545.
    expect(description).toContain(
      'GA3 500 ppm 24 h (A): 14 of 20 = 70 % by day 28, 95 % Wilson interval 48 to 85 %; T50 before day 14; of the rest, 4 fresh, 2 dead.',
    );
    expect(table.rows).toContainEqual(['GA3 500 ppm 24 h', 'A', '28', '14 of 20', '70', '48 to 85']);
    expect(caption).toMatch(/^Worth repeating: /);
  });

  test('says why a batch has no curve', () => {
    const portions = TRIAL.replace(
      'sow VER-24/B 2026-01-11 18:00',
      'sow VER-24/B 2026-01-11 18:00, 10 seeds\nsow VER-24/B 2026-01-20, 10 seeds',
    );
    expect(drawn(portions).description).toContain(
      'Not drawn: water 24 h (B), because it was sown in portions, each with its own day 0.',
    );
  });

  test('has no picture where nothing was counted', () => {
    expect(lotGermination(trialOf(lotOf('lot VER-24 Veratrum nigrum, 60 seeds'), Infinity))).toBeUndefined();
  });

  test('ends a title with an ellipsis where there is no more room for it', () => {
    const picture = drawn(TRIAL.replace('Veratrum nigrum', `Veratrum ${'n'.repeat(100)}`));
    expect(outside(picture)).toEqual([]);
    expect(textBoxes(picture)[0]!.what).toMatch(/^VER-24 Veratrum n+…$/);
  });

  test('has of many curves the boxes and the interval of untreated seed alone, which lies on top, and says so', () => {
    const names = Array.from('CDEFGH');
    const many = [
      TRIAL.replace('60 seeds', '200 seeds').replace('B 20 seeds', `B 20 seeds, ${names.map(name => `${name} 20 seeds`).join(', ')}`),
      ...names.flatMap((name, i) => [
        `soak VER-24/${name} 2026-01-10 18:00, GA3 ${600 + 100 * i} ppm, 24 h`, `sow VER-24/${name} 2026-01-11 18:00`,
        `count VER-24/${name} 2026-01-25, ${i}`,
      ]),
    ].join('\n');
    const picture = drawn(many);
    expect(withClass(picture, 'steps')).toHaveLength(8);
    expect(withClass(picture, 'steps').at(-1)!.attributes.stroke).toBe(themes.light.untreated);
    for (const name of ['spans', 'interval']) expect(withClass(picture, name), name).toHaveLength(1);
    expect(textBoxes(picture).map(({ what }) => what)).toContain(
      'days from the sowing on 2026-01-11 · boxes and intervals of untreated seed alone');
    expect(collisions(textBoxes(picture))).toEqual([]);
    expect(withClass(drawn(TRIAL), 'interval')).toHaveLength(2);
  });

  test('says in full what was done to whom where the picture is narrow', () => {
    const words = textBoxes(drawn(TRIAL, { width: 290, bare: true })).map(({ what }) => what);
    expect(words).toEqual(expect.arrayContaining(['A: GA3 500 ppm 24 h']));
  });

  test('lets no name of a plant into the markup', () => {
    const picture = drawn(TRIAL.replace('Veratrum nigrum', '<script>alert(1)</script>'));
    expect(picture.svg.markup).not.toContain('<script');
    expect(shapesOf(picture).find(({ name }) => name === 'title')!.text).toBe('VER-24 <script>alert(1)</script>');
  });

  const anyCurve = fc.record({
    label: fc.constantFrom(
      'water 24 h',
      'GA3 500 ppm 24 h',
      'GA3 unmeasured + KNO3 0.2 % up to 30 h, then thidiazuron 6.3 µM 12 h',
    ),
    fresh: fc.array(fc.tuple(fc.integer({ min: 1, max: 40 }), fc.nat(9)), { minLength: 1, maxLength: 9 }),
    asleep: fc.nat(20),
    isUntreated: fc.boolean(),
    hasCut: fc.boolean(),
  });
  const anyValues = fc.array(anyCurve, { minLength: 1, maxLength: 9 }).map((curves): GerminationValues => ({
    title: 'VER-24 Veratrum nigrum '.repeat(4),
    caption: 'Worth repeating. '.repeat(12),
    zero: 'the sowing of each batch',
    compared: [12, 14, 40],
    lanes: [
      {
        label: 'A',
        bars: [
          { kind: 'soak', from: -1, to: 0, text: 'water 24 h' },
          { kind: 'cold', from: 3, to: undefined, text: '4 C 90 days' },
        ],
      },
    ],
    curves: curves.map(({ label, fresh, asleep, isUntreated, hasCut }, number) => {
      let [day, germinated] = [0, 0];
      const checks = fresh.map(([days, seeds]) => ({ day: (day += days), germinated: (germinated += seeds) }));
      const course: Course = {
        sown: germinated + asleep + 1,
        checks,
        ...(hasCut && { cut: { fresh: asleep, hard: 1, dead: 0, empty: 0 } }),
      };
      return {
        label,
        names: `batch ${number}`,
        courses: [course],
        shade: isUntreated ? { kind: 'untreated', number } : { kind: 'treated', agent: number, rung: 0.5, number },
      };
    }),
  }));

  test.each([true, false])(
    'never steps down, stays within its bounds, and keeps its words apart (small: %s)',
    small => {
      fc.assert(
        fc.property(anyValues, values => {
          const picture = germinationPicture(values, frame({ small, width: small ? 380 : 720 }))!;
          for (const { attributes } of withClass(picture, 'steps')) {
            const heights = pathPoints(attributes.d!).map(([, y]) => y);
            expect(heights).toEqual(heights.toSorted((a, b) => b - a));
          }
          expect(outside(picture)).toEqual([]);
          expect(collisions(textBoxes(picture).filter(({ what }) => !/^(water|4 C|A$)/.test(what)))).toEqual([]);
        }),
        { numRuns: 60 },
      );
    },
  );
});

/** The ends of the line of 0 %. */
function axisOf(picture: Picture): [number, number] {
  const [first] = shapesOf(picture)
    .filter(({ name }) => name === 'line')
    .map(pointsOf);
  return [first![0]![0], first![1]![0]];
}

/** The heights of 0 and of 100 %. */
function sharesOf(picture: Picture): [number, number] {
  const lines = shapesOf(picture)
    .filter(({ name }) => name === 'line')
    .slice(0, 5)
    .map(shape => pointsOf(shape)[0]![1]);
  return [lines[0]!, lines[4]!];
}
