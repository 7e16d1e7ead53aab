/** Strengths of what is made from packets, and what is left of these, by hand. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { emptiedAt } from '../../server/src/calendar/emptied.ts';
import { stockNow, stocksNow } from '../../server/src/calendar/left.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
import { leftText } from '../../server/src/solutions/left-text.ts';

function journalIn(text: string): Journal {
  const journal = new Journal();
  journal.set('j.germ', text.replace(/^ +/gm, ''));
  return journal;
}

const now = (text: string) => ({ day: dayOfIso(text)!, minutes: undefined });
const ppmOf = (journal: Journal, id: string) => {
  const ppm = journal.solution(id)?.ppm;
  return ppm?.ok ? toNumber(ppm.value) : ppm?.refusal.message;
};
const leftOf = (journal: Journal, day = '2030-01-01') => stocksNow(journal, now(day)).map(({ solution, left }) =>
  [solution.id, left && leftText(solution.form, left)]);

describe('stocks made from a packet', () => {
  test('have its agent and its purity, and its own purity goes first', () => {
    const journal = journalIn(`
      powder P1 2026-01-01, GA3 1 g, purity 90 %
      stock G1 2026-01-09, from P1 20 mg, 18 mL
      stock G2 2026-01-09, from P1 20 mg, purity 45 %, 18 mL
    `);
    // 20 mg x 0.9 / 18 mL = 1 mg/mL.
    expect([ppmOf(journal, 'G1'), ppmOf(journal, 'G2')]).toEqual([1000, 500]);
    expect(journal.solution('G1')?.agent?.word).toBe('GA3');
    expect(leftOf(journal)[0]).toEqual(['P1', '960 mg']);
  });

  test('take halves of what was left, and both are sure within what the eye can tell', () => {
    const journal = journalIn(`
      powder P1 2026-01-01, GA3 400 mg
      stock G1 2026-01-09, from P1 halved 2 times, 100 mL
      stock G2 2026-01-10, from P1 halved 1 time, 150 mL
    `);
    // A quarter of 400 mg in 100 mL; then half of 300 mg in 150 mL.
    expect([ppmOf(journal, 'G1'), ppmOf(journal, 'G2')]).toEqual([1000, 1000]);
    // 400 (1 - 0.55²) = 279 to 400 (1 - 0.45²) = 319; of that 45 to 55 %.
    expect(leftOf(journal, '2026-01-09')[0]).toEqual(['P1', 'about 300 mg (279 to 319)']);
    expect(leftOf(journal)[0]).toEqual(['P1', 'about 150 mg (125.55 to 175.45)']);
    const uncertainty = journal.solution('G2')?.powder?.uncertainty;
    // 0.45 x 279 mg in 150.5 mL, 0.55 x 319 mg in 149.5 mL.
    expect(uncertainty?.kind === 'interval' && [toNumber(uncertainty.low), toNumber(uncertainty.high)])
      .toEqual([expect.closeTo(834.2193, 3), expect.closeTo(1173.5786, 3)]);
  });

  test('have no strength where a pinch went before, and the packet is at most what the rest leaves', () => {
    const journal = journalIn(`
      lot L Iris, 20 seeds
      powder P1 2026-01-01, GA3 400 mg
      soak L 2026-01-05, P1 unmeasured, 24 h
      stock G1 2026-01-09, from P1 halved 2 times, 100 mL
      stock G2 2026-01-10, from P1 100 mg, 100 mL
      stock G3 2026-01-10, from P1, 100 mL
    `);
    expect(ppmOf(journal, 'G1')).toBe('It is unknown how much powder was left in P1.');
    expect([ppmOf(journal, 'G2'), ppmOf(journal, 'G3')]).toEqual([1000, 'The mass of powder is not recorded.']);
    // 400 mg less a fifth at least (0.45²) and 100 mg.
    expect(leftOf(journal)[0]).toEqual(['P1', 'at most 219 mg']);
  });

  test('follow every record about the packet, in whatever order it comes', () => {
    const journal = journalIn('powder P1 2026-01-01, GA3 400 mg\nstock G1 2026-01-09, from P1 halved 1 time, 100 mL\ndilute G2 2026-01-10, from G1 5 mL, to 10 mL\nlot L Iris\nsoak L 2026-01-11, G2, 24 h');
    const dose = () => {
      const ppm = journal.lot('L')!.root.soaks[0]!.doses[0]!.ppm;
      return ppm.ok && toNumber(ppm.value);
    };
    expect(dose()).toBe(1000);
    journal.set('b.germ', 'stock X 2026-01-05, from P1 200 mg, 1 L\n');
    expect(dose()).toBe(500);
    journal.set('b.germ', '');
    expect(dose()).toBe(1000);
    journal.set('c.germ', 'powder P1 2025-01-01, GA3 40 mg\n');
    journal.remove('c.germ');
    expect(dose()).toBe(1000);
  });
});

describe('doses of powder out of a packet', () => {
  test('are worked out from mass, purity and all of the liquid, and take their powder', () => {
    const journal = journalIn(`
      lot L Iris, 20 seeds
      powder P1 2026-01-01, GA3 100 mg, purity 80 %
      soak L 2026-01-05, P1 10 mg, 20 mL, 24 h
      soak L 2026-01-07, P1 10 mg, KNO3 0.2 %, water 40 mL, 24 h
      soak L 2026-01-09, P1 200 ppm, 20 mL, 24 h
    `);
    const doses = journal.lot('L')!.root.soaks.map(({ doses: [first] }) => (first!.ppm.ok ? toNumber(first!.ppm.value) : undefined));
    // 8 mg in 20 mL, 8 mg in 40 mL; 20 mL of 200 ppm are 4 mg, in 5 mg of powder.
    expect(doses).toEqual([400, 200, 200]);
    expect(leftOf(journal)).toEqual([['P1', '75 mg']]);
  });

  test('add up where powder goes into a stock, or comes out of two packets', () => {
    const bottles = `
      lot L Iris, 20 seeds
      powder P1 2026-01-01, GA3 100 mg, purity 90 %
      powder P2 2026-01-01, GA3 100 mg, purity 90 %
      stock G1 2026-01-02, GA3 20 mg, 20 mL
    `;
    const dose = (liquid: string) => {
      const [ppm] = journalIn(`${bottles}soak L 2026-01-05, ${liquid}, 24 h`).lot('L')!.root.soaks[0]!.doses.map(each => each.ppm);
      return ppm!.ok ? toNumber(ppm!.value) : ppm!.refusal.code;
    };
    // By hand: 9 mg out of each packet in 20 mL; 9 mg and 18 mg.
    expect(dose('P1 10 mg, P2 10 mg, 20 mL')).toBe(900);
    expect(dose('P1 10 mg, P2 20 mg, 20 mL')).toBe(1350);
    // 9 mg of powder and 10 mL of 1000 ppm, which hold 10 mg, are 19 mg in 10 mL, or in 20 mL.
    expect(dose('P1 10 mg, G1 10 mL')).toBe(1900);
    expect(dose('G1 10 mL, P1 10 mg, 20 mL')).toBe(950);
    // A strength beside it is that of the whole liquid.
    expect(dose('P1 10 mg, GA3 450 ppm, 20 mL')).toBe(450);
    expect(dose('P1 10 mg, GA3 500 ppm, 20 mL')).toBe('said-twice');
    // Each says what came out of it: is that 500 ppm in all, or 1000?
    expect(dose('P1 500 ppm, P2 500 ppm, 20 mL')).toBe('said-twice');
    expect(dose('P1 10 mg, P2, 20 mL')).toBe('no-strength');
  });

  test('are unknown while the line of the packet has a mistake, for that may be the purity', () => {
    const journal = journalIn(`
      lot L Iris, 20 seeds
      powder P1 2026-01-01, GA3 100 mg, purity 40 pct
      stock G1 2026-01-02, from P1 20 mg, 20 mL
      stock G2 2026-01-02, from P1 20 mg, purity 40 %, 20 mL
      soak L 2026-01-05, P1 10 mg, 20 mL, 24 h
      soak L 2026-01-07, P1 200 ppm, 20 mL, 24 h
    `);
    const unread = 'The line of P1 has a mistake, so the strength is unknown until you fix it.';
    expect(ppmOf(journal, 'G1')).toBe(unread);
    // 8 mg in 20 mL: the stock says itself how pure it is.
    expect(ppmOf(journal, 'G2')).toBe(400);
    expect(journal.lot('L')!.root.soaks.map(({ doses: [first] }) => (first!.ppm.ok ? toNumber(first!.ppm.value) : first!.ppm.refusal.message)))
      .toEqual([unread, 200]);
    // 100 less 20, 20 and 10 mg; how much powder makes 200 ppm depends on its purity.
    expect(leftOf(journal)[0]).toEqual(['P1', 'at most 50 mg']);
  });

  test('from a packet past its time are at most what is written', () => {
    const journal = journalIn('lot L Iris\npowder P1 2026-01-01, GA3 100 mg, bought 2020-01\nstock G1 2026-01-02, from P1 20 mg, 20 mL\nsoak L 2026-01-05, G1, 24 h');
    expect(journal.solution('G1')?.staleSource?.made).toBe(dayOfIso('2020-01-31'));
    expect(journal.lot('L')!.root.soaks[0]!.doses[0]!.stale).toBeDefined();
  });
});

describe('what is left', () => {
  test('is at most what the rest leaves where the amount on a line cannot be read', () => {
    const left = (record: string) => leftOf(journalIn(`
      lot L Iris, 20 seeds
      powder P1 2026-01-01, GA3 100 mg
      stock G1 2026-01-01, GA3 20 mg, 20 mL
      ${record}
      dilute G2 2026-02-01, from G1 2 mL, to 10 mL
    `)).slice(0, 2).map(([, text]) => text);
    expect(left('soak L 2026-01-05, G1 5,5 mL, 24 h')).toEqual(['100 mg', 'at most 18 mL']);
    expect(left('soak L 2026-01-05, G1 1 spoon, 20 mL, 24 h')).toEqual(['100 mg', 'at most 18 mL']);
    expect(left('dilute G3 2026-01-05, from G1 1 spoon, to 20 mL')).toEqual(['100 mg', 'at most 18 mL']);
    expect(left('stock G3 2026-01-05, from P1 5,5 mg, 20 mL')).toEqual(['at most 100 mg', '18 mL']);
    expect(left('left G1 2026-01-05, 8,5 mL')).toEqual(['100 mg', 'at most 18 mL']);
    // 20 less 10 and 2.
    expect(left('soak L 2026-01-05, G1 5 mL, G1 5 mL, 24 h')).toEqual(['100 mg', '8 mL']);
    // All of the 5 mL are out of the bottle, for the nitrate is strewn in.
    expect(left('apply L 2026-01-05, G1, KNO3 0.2 %, 5 mL')).toEqual(['100 mg', '13 mL']);
    expect(left('apply L 2026-01-05, G1, water, 5 mL')).toEqual(['100 mg', 'at most 18 mL']);
  });

  test('is nothing once a note says so, and unknown where nothing says how much there was', () => {
    const journal = journalIn(`
      powder P1 2026-01-01, GA3 100 mg
      note P1 2026-03-01, got damp, thrown away
      stock G1 2026-01-01, GA3 20 mg
      stock G2 2026-02-01, peroxide 3 %, 250 mL
    `);
    expect(leftOf(journal, '2026-01-20')).toEqual([['P1', '100 mg'], ['G1', undefined]]);
    expect(leftOf(journal)).toEqual([['P1', '0 mg'], ['G1', undefined], ['G2', '250 mL']]);
  });

  test('is what was found, less what was taken since then, whatever had been worked out before', () => {
    const journal = journalIn(`
      lot L Iris, 20 seeds
      powder P1 2026-01-01, GA3 1 g
      soak L 2026-01-05, P1 unmeasured, 24 h
      stock G1 2026-03-01, from P1 40 mg, 20 mL
      stock G2 2026-03-02, from P1 halved 1 time, 320 mL
      stock G3 2026-02-01, GA3 20 mg
      left G3 2026-02-10 10:00, 12 mL
      soak L 2026-02-10 09:00, G3 2 mL, water 8 mL, 24 h
      soak L 2026-02-10 11:00, G3 2 mL, water 8 mL, 24 h
      left G2 2026-05-01, 0 mL
    `);
    journal.set('b.germ', 'left P1 2026-03-01, 640 mg\n');
    // With no time of day, 640 mg are what the evening left, with the 40 mg of that day gone.
    expect(leftOf(journal, '2026-03-01')[0]).toEqual(['P1', '640 mg']);
    expect(leftOf(journal, '2026-02-28')[0]).toEqual(['P1', 'at most 1 g']);
    expect(leftOf(journal)).toEqual([
      ['P1', 'about 320 mg (288 to 352)'], ['G1', '20 mL'], ['G2', '0 mL'], ['G3', '10 mL'],
    ]);
    // Half of 640 mg in 320 mL.
    expect(ppmOf(journal, 'G2')).toBe(1000);
    journal.set('b.germ', 'left P1 2026-03-01, 320 mg\n');
    expect(ppmOf(journal, 'G2')).toBe(500);
    journal.remove('b.germ');
    expect(ppmOf(journal, 'G2')).toBe('It is unknown how much powder was left in P1.');
  });

  test('may be found where nothing was left by the sum, and is gone since the day on which none was found', () => {
    const journal = journalIn(`
      powder P1 2026-01-01, GA3 100 mg
      stock G1 2026-01-09, from P1 100 mg, 100 mL
      left P1 2026-02-01, 30 mg
      left P1 2026-04-01, 0 mg
      left P1 2026-05-01, 0 mg
    `);
    const gone = (day: string) => stockNow(journal.solution('P1')!, journal, now(day))?.emptied?.day;
    const emptied = (day: string) => emptiedAt(journal.solution('P1')!, journal, now(day))?.day;
    expect([gone('2026-01-20'), gone('2026-03-01'), emptied('2026-01-20'), emptied('2026-03-01'), emptied('2026-06-01')])
      .toEqual([dayOfIso('2026-01-09'), undefined, dayOfIso('2026-01-09'), undefined, dayOfIso('2026-04-01')]);
  });

  /**
   * Every amount that the unknown draws can have had, and every way in which the eye can have halved, tried in steps:
   * what is then left lies within the limits, and these are never below zero. The sums here are doubles of our own.
   */
  test('takes in every value that the unknowns allow', () => {
    const draw = fc.oneof(
      fc.integer({ min: 1, max: 120 }).map(mg => ({ fact: `${mg} mg`, mg })),
      fc.integer({ min: 1, max: 2 }).map(halved => ({ fact: `halved ${halved} times`, halved })),
      fc.constant({ fact: '' }),
      fc.integer({ min: 0, max: 400 }).map(found => ({ fact: '', found })),
    );
    fc.assert(fc.property(fc.integer({ min: 10, max: 400 }), fc.array(draw, { maxLength: 4 }), (mg, draws) => {
      const lines = draws.map((each, n) => ('found' in each
        ? `left P1 2026-01-${10 + n}, ${each.found} mg` : `stock G${n} 2026-01-${10 + n}, from P1 ${each.fact}, 100 mL`));
      const journal = journalIn(`powder P1 2026-01-01, GA3 ${mg} mg\n${lines.join('\n')}\n`);
      const { left } = stockNow(journal.solution('P1')!, journal, now('2030-01-01'))!;
      const [least, most] = [toNumber(left!.least), toNumber(left!.most)];
      let possible = [mg];
      for (const each of draws) {
        possible = possible.flatMap(there => {
          if ('found' in each) return [each.found];
          if ('mg' in each) return [Math.max(0, there - each.mg)];
          const shares = 'halved' in each ? [0.45, 0.5, 0.55].map(half => half ** each.halved) : [0, 0.3, 1];
          return shares.map(share => there * (1 - share));
        });
      }
      expect(least).toBeGreaterThanOrEqual(0);
      for (const value of possible) {
        expect(value).toBeGreaterThanOrEqual(least - 1e-9);
        expect(value).toBeLessThanOrEqual(most + 1e-9);
      }
      // The limits are reached, so they are no wider than they must be.
      expect(Math.min(...possible)).toBeCloseTo(least, 6);
      const sinceFound = draws.slice(draws.findLastIndex(each => 'found' in each) + 1);
      if (sinceFound.every(({ fact }) => fact !== '')) expect(Math.max(...possible)).toBeCloseTo(most, 6);
    }), { numRuns: 150 });
  });
});
