/** Counts that others published, as two sides of a lot. */
import { describe, expect, test } from 'vitest';
import { isoOf } from '../../server/src/model/day.ts';
import { isUndefined } from '../../server/src/measures/measured.ts';
import { poolOf } from '../../server/src/measures/replicates.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';
import { DAY_ZERO } from './diary.ts';
import { journalOf, verdictsOfLots } from './judged.ts';

interface Dish {
  readonly seeds: number;
  /** Newly germinated, by the day of the look. */
  readonly looks: ReadonlyMap<number, number>;
}

/**
 * Wheat, 20 seeds a dish, looked at daily but for days 8 and 15. Ritz, Pipper & Streibig 2013, Eur J Agronomy 45:1-6,
 * as the Rdatasets collection prints it.
 */
const WHEAT: Record<string, readonly [firstLook: number, found: Record<number, number>]> = {
  '10 C': [1, { 6: 4, 7: 6, 9: 8 }],
  '16 C': [2, { 4: 11, 5: 7, 7: 1 }],
  '22 C': [2, { 3: 1, 4: 12, 5: 3, 7: 3 }],
  '28 C': [1, { 4: 8, 6: 8, 7: 3 }],
  '34 C': [2, { 3: 5, 4: 11, 5: 1, 6: 1, 12: 1 }],
  '40 C': [1, { 10: 1, 11: 2 }],
};

function wheat(temperature: string): Dish {
  const [first, found] = WHEAT[temperature]!;
  const days = Array.from({ length: 18 }, (_, i) => i + 1).filter(day => day >= first && day !== 8 && day !== 15);
  return { seeds: 20, looks: new Map(days.map(day => [day, found[day] ?? 0])) };
}

/** What somebody would have counted who was there for every second look only, from the first or from the second on. */
function thinned({ seeds, looks }: Dish, from: 0 | 1): Dish {
  const kept = new Map<number, number>();
  let found = 0;
  for (const [i, [day, n]] of [...looks].entries()) {
    found += n;
    if (i % 2 !== from) continue;
    kept.set(day, found);
    found = 0;
  }
  return { seeds, looks: kept };
}

function sideText(soak: string, part: string, dishes: readonly Dish[], close: string): string {
  return dishes.map(({ seeds, looks }, i) => {
    const path = `L/${part}${i + 1}`;
    const last = Math.max(...looks.keys());
    return `split L, ${part}${i + 1} ${seeds} seeds
soak ${path} ${isoOf(DAY_ZERO - 1)} 18:00, ${soak}, 24 h
sow ${path} ${isoOf(DAY_ZERO)} 18:00
${[...looks].map(([day, n]) => `count ${path} ${isoOf(DAY_ZERO + day)}, ${n}`).join('\n')}
${close && `${close} ${path} ${isoOf(DAY_ZERO + last)}`}
`;
  }).join('');
}

function lotText(treated: readonly Dish[], untreated: readonly Dish[], close = '', agent = 'GA3 500 ppm'): string {
  const sides = sideText(agent, 'A', treated, close) + sideText('water', 'B', untreated, close);
  return `agent extract\nlot L Triticum aestivum, 2000 seeds\n${sides}`;
}

describe('one dish of wheat, thinned to its even and to its odd looks as two sides, holds no difference', () => {
  test.each(Object.keys(WHEAT).flatMap(temperature => (['', 'discard'] as const).flatMap(close => (
    ([0, 1] as const).map(first => [temperature, close || 'left open', first] as const)))))('%s, %s, from look %i', (temperature, close, first) => {
    const dish = wheat(temperature);
    const text = lotText([thinned(dish, first)], [thinned(dish, first === 0 ? 1 : 0)], close === 'discard' ? close : '');
    const [verdict, ...others] = verdictsOfLots(journalOf(text));
    expect(others).toEqual([]);
    expect(['worth repeating', 'harmful'], verdict!.rule).not.toContain(verdict!.verdict);
  });

  test('the same where somebody stopped looking halfway', () => {
    for (const temperature of Object.keys(WHEAT)) {
      for (let until = 3; until <= 18; until++) {
        const sides = ([0, 1] as const).map(from => {
          const { seeds, looks } = thinned(wheat(temperature), from);
          return { seeds, looks: new Map([...looks].filter(([day]) => day <= until)) };
        });
        if (sides.some(({ looks }) => looks.size === 0)) continue;
        for (const [treated, untreated] of [sides, [...sides].reverse()]) {
          const [verdict] = verdictsOfLots(journalOf(lotText([treated!], [untreated!])));
          expect(['worth repeating', 'harmful'], `${temperature}, until day ${until}: ${verdict!.rule}`).not.toContain(verdict!.verdict);
        }
      }
    }
  });
});

/**
 * Orobanche, seed of two kinds in extract of bean or of cucumber root, germinated of sown in each plate. Crowder 1978,
 * Appl Stat 27:34-37, table 3, from a public collection of data sets; the chi-squares were recomputed from it.
 */
const PLATES = {
  O75: { bean: '10/39 23/62 23/81 26/51 17/39', cucumber: '5/6 53/74 55/72 32/51 46/79 10/13' },
  O73: { bean: '8/16 10/30 8/28 23/45 0/4', cucumber: '3/12 22/41 15/30 32/51 3/7' },
};

function plates(text: string): Dish[] {
  return text.split(' ').map(plate => {
    const [germinated, seeds] = plate.split('/').map(Number);
    return { seeds: seeds!, looks: new Map([[14, germinated!]]) };
  });
}

describe('plates of Orobanche, extract of cucumber against that of bean', () => {
  test.each([
    ['O75', 8.0282880844, 9.7595421534, ['worth repeating']],
    ['O73', 6.1265879434, 7.7367268143, ['cannot tell', 'no sign of a benefit']],
  ] as const)('%s', (kind, ofCucumber, ofBean, verdicts) => {
    const { bean, cucumber } = PLATES[kind];
    const journal = journalOf(lotText(plates(cucumber), plates(bean), 'discard', 'extract 10 %'));
    const [contest] = trialOf(journal.lot('L')!, Infinity).contests;
    const chiSquares = [contest!.treated, contest!.untreated!].map(({ batches }) => {
      const { heterogeneity } = poolOf(batches.map(({ course }) => course));
      return isUndefined(heterogeneity) ? undefined : heterogeneity.chiSquare;
    });
    expect(chiSquares[0]).toBeCloseTo(ofCucumber, 8);
    expect(chiSquares[1]).toBeCloseTo(ofBean, 8);
    expect(verdicts, contest!.verdict.sentence).toContain(contest!.verdict.verdict);
  });
});
