import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { doseLadderPicture, plantPicture } from '../../server/src/features/drawing/trials.ts';
import { differencesPicture } from '../../server/src/pictures/differences.ts';
import { ladderPicture } from '../../server/src/pictures/ladder.ts';
import type { Frame } from '../../server/src/pictures/picture.ts';
import { themes } from '../../server/src/pictures/theme.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';
import { plantTrial } from '../../server/src/trials/plant-trial.ts';
import { journalOf } from '../journal/helpers.ts';
import { outside, textBoxes, withClass } from './svg.ts';

const frame: Frame = { theme: themes.light, width: 760, small: false, id: 'a' };

/** Four parts of 20 seeds: untreated, and three doses of which so many germinated. */
const ladder = (lot: string, ...counts: readonly number[]) => [
  `lot ${lot} Veratrum nigrum, 80 seeds`, `split ${lot}, A 20 seeds, B 20 seeds, C 20 seeds, D 20 seeds`,
  ...['water', 'GA3 250 ppm', 'GA3 500 ppm', 'GA3 1000 ppm'].flatMap((soak, i) => {
    const path = `${lot}/${'ABCD'[i]!}`;
    return [
      `soak ${path} 2026-01-10 18:00, ${soak}, 24 h`, `sow ${path} 2026-01-11 18:00`, `count ${path} 2026-02-10, ${counts[i]!}${i === 3 ? ', 4 leggy' : ''}`,
      `cut ${path} 2026-02-10, ${20 - counts[i]!} dead`,
    ];
  }),
].join('\n');

describe('a ladder of doses', () => {
  const journal = journalOf(ladder('V-1', 4, 8, 12, 16));
  const [found] = trialOf(journal.lot('V-1')!, Infinity).ladders;
  const picture = doseLadderPicture(found!, 'V-1', frame)!;

  test('has a dot for each dose at its share, at equal distances for equal ratios', () => {
    const dots = withClass(picture, 'rung').map(({ attributes }) => [Number(attributes.cx), Number(attributes.cy)] as const);
    const [one, two, three] = dots as [[number, number], [number, number], [number, number]];
    expect(two[0] - one[0]).toBeCloseTo(three[0] - two[0], 1);
    // 8, 12 and 16 of 20: the heights are as far apart.
    expect(one[1] - two[1]).toBeCloseTo(two[1] - three[1], 1);
  });

  test('lies before the interval of the untreated seed, and names what suffered', () => {
    expect(withClass(picture, 'untreated')).toHaveLength(1);
    expect(picture.table.rows.at(-1)).toEqual(['GA3 1000 ppm 24 h', '16 of 20', '80 (58 to 92)', 'leggy 4', 'worth repeating']);
    // R 4.2.2: prop.test(16, 20, correct = FALSE)$conf.int, 0.5839 to 0.9193.
    expect(picture.description).toContain('16 of 20 germinated = 80 % (95 % interval 58 to 92), leggy 4');
  });

  test.each([[760, false], [400, true]])('has no interval across what is said of the untreated seed (%d pixels)', (width, small) => {
    const drawn = doseLadderPicture(found!, 'V-1', { ...frame, width, small })!;
    const said = textBoxes(drawn).find(({ what }) => what.startsWith('water'))!;
    const [first] = withClass(drawn, 'interval');
    expect(Number(first!.attributes.x1)).toBeGreaterThan(said.right);
  });

  test('has a sign before a dose that is known only about', () => {
    // A quarter by eye of 100 mg in 100 mL is 250 ppm.
    const source = ladder('V-1', 4, 8, 12, 16).replace('GA3 250 ppm', 'E1 10 mL');
    const halved = journalOf(`stock E1 2026-01-01, GA3 100 mg halved 2 times, 100 mL\n${source}`);
    const drawn = doseLadderPicture(trialOf(halved.lot('V-1')!, Infinity).ladders[0]!, 'V-1', frame)!;
    const texts = textBoxes(drawn).map(({ what }) => what);
    expect(texts).toContain('≈250');
    expect(texts).toContain('500');
    expect(drawn.description).toContain('GA3 about 250 ppm 24 h: 8 of 20');
  });

  test('has a wide number of ppm inside, too, where there is hardly room for all', () => {
    const step = { label: 'water 24 h', germinated: 2, harm: '', verdict: 'cannot tell', seeds: 20, low: 0, high: 0.3 };
    const doses = [0.001, 0.84, 89.6, 5220, 108_000, 999_500];
    const rungs = doses.map((dose, i) => ({ ...step, dose, isAbout: i % 2 === 1 }));
    expect(outside(ladderPicture({ title: 'x', caption: 'y', unit: 'ppm', untreated: step, rungs }, { ...frame, small: true, width: 400 })!)).toEqual([]);
  });

  test('has nothing outside, whatever its doses', () => {
    const step = fc.record({
      label: fc.string({ unit: 'grapheme', maxLength: 40 }), germinated: fc.nat(20), harm: fc.constantFrom('', 'leggy 4, rotted 16'), verdict: fc.constant('cannot tell'),
    }).map(each => {
      const share = each.germinated / 20;
      return { ...each, seeds: 20, low: Math.max(0, share - 0.2), high: Math.min(1, share + 0.2) };
    });
    const doses = fc.uniqueArray(fc.double({ min: 0.001, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 6 });
    const sixSteps = fc.array(step, { minLength: 6, maxLength: 6 });
    fc.assert(fc.property(step, doses, sixSteps, fc.boolean(), (untreated, all, steps, small) => {
      const rungs = all.toSorted((a, b) => a - b).map((dose, i) => ({ ...steps[i]!, dose, isAbout: i % 2 === 1 }));
      const drawn = ladderPicture({ title: 'x', caption: 'y', unit: 'ppm', untreated, rungs }, { ...frame, small, width: small ? 400 : 760 })!;
      expect(outside(drawn)).toEqual([]);
    }));
  });
});

describe('differences of the lots of a plant', () => {
  const lots = (...sources: string[]) => [...journalOf(sources.join('\n')).lots()];

  test('stand winter below winter, with what they say together', () => {
    const trial = plantTrial('Veratrum nigrum', lots(ladder('V-1', 4, 8, 12, 16), ladder('V-2', 5, 9, 11, 15).replaceAll('2026-', '2025-')), Infinity);
    const picture = plantPicture(trial, frame)!;
    expect(picture.table.rows.map(([label]) => label)).toEqual(['2024/25 V-2', '2025/26 V-1', '2 lots together']);
    expect(withClass(picture, 'difference')).toHaveLength(2);
    expect(withClass(picture, 'together')).toHaveLength(1);
    expect(picture.caption).toContain('in 2 lots');
  });

  test('of one lot stand alone, and of none are not drawn', () => {
    expect(withClass(plantPicture(plantTrial('Veratrum nigrum', lots(ladder('V-1', 4, 8, 12, 16)), Infinity), frame)!, 'together')).toEqual([]);
    expect(plantPicture(plantTrial('Veratrum nigrum', lots('lot V-1 Veratrum nigrum, 3 seeds'), Infinity), frame)).toBeUndefined();
  });

  test('lie where their numbers say', () => {
    const row = (value: number, low: number, high: number) => ({ label: 'L', counts: '', isTogether: false, difference: { value, low, high } });
    const picture = differencesPicture({ title: 'x', caption: '', rows: [row(0, -0.5, 0.5), row(0.5, 0, 1)] }, frame)!;
    const [zero] = withClass(picture, 'zero');
    const [first, second] = withClass(picture, 'difference').map(({ attributes }) => Number(attributes.cx));
    const [, whole] = withClass(picture, 'interval');
    expect(first).toBeCloseTo(Number(zero!.attributes.x1), 1);
    expect(second).toBeCloseTo((Number(whole!.attributes.x1) + Number(whole!.attributes.x2)) / 2, 1);
  });

  test('have nothing outside, whatever they are called', () => {
    const part = fc.double({ min: -1, max: 1, noNaN: true });
    const limits = fc.tuple(part, part, part).map(all => all.toSorted((a, b) => a - b))
      .map(([low, value, high]) => ({ low: low!, value: value!, high: high! }));
    const row = fc.record({
      label: fc.string({ unit: 'grapheme', maxLength: 60 }), counts: fc.constant('18 of 20'), isTogether: fc.boolean(),
      difference: fc.option(limits, { nil: undefined }),
    });
    fc.assert(fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), fc.boolean(), (rows, small) => {
      const drawn = differencesPicture({ title: 'x', caption: 'in words', rows }, { ...frame, small, width: small ? 400 : 760 });
      if (drawn) expect(outside(drawn)).toEqual([]);
      else expect(rows.some(({ difference }) => difference)).toBe(false);
    }));
  });
});
