import { describe, expect, test } from 'vitest';
import { byPlant } from '../../server/src/trials/by-plant.ts';
import { judgedCourse } from '../../server/src/trials/judging.ts';
import { lotPairOf, plantTrial } from '../../server/src/trials/plant-trial.ts';
import { contest, journalOf } from './helpers.ts';

/** A weekly diary of 24 treated and 24 untreated seeds; totals by day 14, 28, 42 and 56 after 2026-01-11. */
function weekly({ judge = '', a = [0, 6, 12, 14], b = [0, 2, 4, 5], until = 4, end = '' }: {
  judge?: string; a?: number[]; b?: number[]; until?: number; end?: string;
} = {}): string {
  const dates = ['2026-01-25', '2026-02-08', '2026-02-22', '2026-03-08'];
  const counts = dates.slice(0, until).map((date, i) => `
    count L/A ${date}, =${a[i]} germinated
    count L/B ${date}, =${b[i]} germinated`);
  return `
    lot L Iris alba, 60 seeds
    split L, A 24 seeds, B 24 seeds
    ${judge}
    soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
    soak L/B 2026-01-10 19:00, water, 24 h
    sow L/A 2026-01-11 19:00
    sow L/B 2026-01-11 19:00${counts.join('')}
    ${end}
  `;
}

const JUDGE = 'judge L 2026-01-11, on 2026-02-22';

describe('a trial with a day of judging', () => {
  test('has no verdict before that day, however far the sides are apart, and says when it has', () => {
    const plain = contest(weekly({ a: [0, 20], b: [0, 0], until: 2 })).verdict;
    expect(plain.verdict).toBe('worth repeating');
    const { verdict } = contest(weekly({ judge: JUDGE, a: [0, 20], b: [0, 0], until: 2 }));
    expect(verdict).toMatchObject({ verdict: 'cannot tell', rule: 'to-be-judged' });
    expect(verdict.sentence).toBe('Cannot tell yet: this trial is judged by the counts of 2026-02-22, as you wrote on 2026-01-11; by day 28, '
      + '20 of 24 treated seeds had germinated (83 %) and 0 of 24 untreated (0 %). '
      + '4 of 24 treated and 24 of 24 untreated seeds may still germinate.');
  });

  test('is judged at the full level on that day, though seed still waits', () => {
    // 12 against 4 of 24: SciPy 1.17, boschloo_exact([[12, 4], [12, 20]], alternative="greater"): p 0.0077,
    // between the level for looks in between, 0.005, and the full one, 0.025.
    const open = contest(weekly({ until: 3 })).verdict;
    expect(open.verdict).toBe('cannot tell');
    const { verdict } = contest(weekly({ judge: JUDGE, until: 3 }));
    expect(verdict).toMatchObject({ verdict: 'worth repeating', rule: 'more' });
    expect(verdict.sentence).toContain('Worth repeating: by day 42, 12 of 24 treated');
    expect(verdict.sentence).toContain('Judged on 2026-02-22, as you wrote on 2026-01-11; later counts of what germinated do not change it.');
  });

  test.each([[[0, 6, 12, 12], [0, 2, 4, 20]], [[0, 6, 12, 24], [0, 2, 4, 4]]])(
    'keeps its verdict whatever is counted later: %j, %j', (a, b) => {
      const judged = contest(weekly({ judge: JUDGE, until: 3 }));
      const later = contest(weekly({ judge: JUDGE, a, b }));
      expect(later.verdict).toEqual(judged.verdict);
      expect(later.comparison).toEqual(judged.comparison);
    });

  test('keeps it when it is closed later, by a cut test or otherwise', () => {
    const judged = contest(weekly({ judge: JUDGE, until: 3 }));
    const cut = contest(weekly({ judge: JUDGE, end: 'cut L/A 2026-03-09, 10 fresh\ncut L/B 2026-03-09, 19 dead' }));
    expect(cut.verdict).toEqual(judged.verdict);
  });

  test('has the cut test of that day, and none of a later one', () => {
    const cutOf = (day: string) => {
      const { treated, judging } = contest(weekly({ judge: JUDGE, until: 2, end: `cut L/A ${day}, 18 fresh\n    cut L/B ${day}, 22 dead` }));
      return [judging!.state, judgedCourse(treated.batches[0]!, judging!).cut];
    };
    expect(cutOf('2026-02-22')).toEqual(['on the day', { fresh: 18, hard: 0, dead: 0, empty: 0 }]);
    const later = contest(weekly({ judge: JUDGE, until: 3, end: 'cut L/A 2026-03-09, 12 fresh' }));
    expect(later.treated.batches[0]!.course.cut).toBeDefined();
    expect(judgedCourse(later.treated.batches[0]!, later.judging!).cut).toBeUndefined();
  });

  test('waits for both sides, for what one of them shows by then is a look of its own', () => {
    const source = weekly({ judge: 'judge L 2026-01-11, on 2026-02-20', until: 2, end: 'count L/A 2026-02-20, =16 germinated' });
    expect(contest(source).verdict.rule).toBe('to-be-judged');
    expect(contest(`${source}\ncount L/B 2026-02-23, =3 germinated`).judging).toMatchObject({ state: 'on the day' });
  });

  test('takes the first look of the week after for one on the day', () => {
    const { judging, comparison } = contest(weekly({ judge: 'judge L 2026-01-11, on 2026-02-17' }));
    expect(judging).toMatchObject({ state: 'on the day', on: '2026-02-17' });
    expect(comparison).toMatchObject({ byDay: 42 });
  });

  test('ends its week on the seventh day: a look on that day is in time, one on the eighth is not', () => {
    const stateOn = (day: string) => contest(weekly({ judge: `judge L 2026-01-11, on ${day}`, until: 3 })).judging?.state;
    expect([stateOn('2026-02-15'), stateOn('2026-02-14')]).toEqual(['on the day', 'off the day']);
  });

  test('waits for the other side as long as the week lasts, and is missed as soon as one side was looked at after it', () => {
    const withA = (judge: string, day: string) =>
      contest(weekly({ judge: `judge L 2026-01-11, on ${judge}`, until: 2, end: `count L/A ${day}, =8 germinated` })).judging?.state;
    expect(withA('2026-02-15', '2026-02-22')).toBe('waiting');
    expect(withA('2026-02-15', '2026-02-23')).toBe('off the day');
  });

  test('is missed where one side was looked at in time and the other was not', () => {
    const looks = 'count L/A 2026-02-15, =8 germinated\ncount L/B 2026-02-23, =3 germinated';
    expect(contest(weekly({ judge: 'judge L 2026-01-11, on 2026-02-15', until: 2, end: looks })).judging?.state).toBe('off the day');
    const never = weekly({ judge: 'judge L 2026-01-11, on 2026-02-01', until: 2 }).replace(/ +count L\/B 2026-01-25.*/, '').replace('B 2026-02-08', 'B 2026-03-08');
    expect(contest(never).judging?.state).toBe('off the day');
  });

  test('that nobody came to in time has all its looks, and the stricter level', () => {
    const { judging, verdict, comparison } = contest(weekly({ judge: 'judge L 2026-01-11, on 2026-02-27' }));
    expect(judging).toMatchObject({ state: 'off the day' });
    expect(comparison).toMatchObject({ byDay: 56, open: { treated: 10, untreated: 19 } });
    expect(verdict.verdict).toBe('cannot tell');
    expect(verdict.sentence).toContain('You planned to judge it on 2026-02-27, but did not count every batch on that day or in the week after');
  });

  test('that nobody came to in time is not judged by what had not come up long before', () => {
    const { judging, verdict } = contest(`
      lot L Gentiana lutea, 80 seeds
      split L, A 40 seeds, B 40 seeds
      soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
      soak L/B 2026-01-10 19:00, water, 24 h
      sow L/A 2026-01-11 20:00, 15 C
      sow L/B 2026-01-11 20:00, 15 C
      judge L 2026-01-11, on day 60
      count L/A 2026-02-10, 10
      count L/B 2026-02-10, 10
      count L/A 2026-03-25, 20
      count L/B 2026-03-25, 2
    `);
    expect(judging).toMatchObject({ state: 'off the day' });
    expect(verdict.sentence).toMatch(/^Worth repeating so far: by day 73, 30 of 40 treated seeds .* and 12 of 40 untreated/);
  });

  test('that is closed before the day keeps the stricter level, for the end was chosen', () => {
    const end = 'discard L/A 2026-02-23\ndiscard L/B 2026-02-23';
    expect(contest(weekly({ until: 3, end })).verdict.verdict).toBe('worth repeating');
    const early = contest(weekly({ judge: 'judge L 2026-01-11, on 2026-03-22', until: 3, end }));
    expect(early.judging).toMatchObject({ state: 'off the day' });
    expect(early.verdict.verdict).toBe('cannot tell');
  });

  test('counts days from day 0 where the record does', () => {
    const { judging, verdict } = contest(weekly({ judge: 'judge L 2026-01-09, on day 42' }));
    expect(judging).toMatchObject({ state: 'on the day', on: 'day 42 (2026-02-22)' });
    expect(verdict.verdict).toBe('worth repeating');
    const apart = weekly({ judge: 'judge L 2026-01-09, on day 42' }).replace('sow L/B 2026-01-11', 'sow L/B 2026-01-12');
    expect(contest(apart).judging).toMatchObject({ on: 'day 42' });
  });
});

describe('a judge record that was not written beforehand', () => {
  test.each([
    ['after the first seed', 'judge L 2026-02-10, on 2026-02-22'],
    ['on the day of the first seed', 'judge L 2026-02-08, on 2026-02-22'],
  ])('changes nothing: %s', (_, judge) => {
    const plain = contest(weekly({ until: 3 }));
    const late = contest(weekly({ judge, until: 3 }));
    expect(late.judging).toBeUndefined();
    expect(late.verdict).toEqual(plain.verdict);
    expect(late.remarks.join()).toContain('does not count, because you had seen seed germinate or rot by then');
  });

  test('may stand after looks that found nothing', () => {
    expect(contest(weekly({ judge: 'judge L 2026-01-26, on 2026-02-22', until: 3 })).verdict.verdict).toBe('worth repeating');
  });

  test('that follows another changes nothing, beforehand or not', () => {
    for (const date of ['2026-01-12', '2026-02-23']) {
      const { judging, remarks } = contest(weekly({ judge: `${JUDGE}\njudge L ${date}, on 2026-03-08` }));
      expect(judging, date).toMatchObject({ state: 'on the day', on: '2026-02-22' });
      const told = ['the “judge” of 2026-01-12 does not count, because an earlier one counts instead'];
      expect(remarks, date).toEqual(date === '2026-01-12' ? told : []);
    }
  });
});

describe('over the lots of a species', () => {
  test('a lot whose day has not come takes no part, and is named', () => {
    const lots = [...byPlant(journalOf(weekly({ judge: JUDGE, until: 2 })).lots(), 'species').values()][0]!;
    const { agents, toBeJudged } = plantTrial('Iris alba', lots, Infinity);
    expect(agents).toEqual([]);
    expect(toBeJudged).toMatchObject([{ on: '2026-02-22' }]);
    const end = ['split L 2026-01-10, C 12 seeds', 'soak L/C 2026-01-10 19:00, GA3 250 ppm, 24 h', 'sow L/C 2026-01-11 20:00',
      'count L/C 2026-01-25, 0'].join('\n    ');
    const two = weekly({ judge: JUDGE, until: 2, end });
    const other = two.replaceAll(/\bL\b/g, 'M').replace('on 2026-02-22', 'on 2026-02-23');
    const all = [...byPlant(journalOf(`${two}\n${other}`).lots(), 'species').values()][0]!;
    expect(plantTrial('Iris alba', all, Infinity).toBeJudged.map(({ lot: { id }, on }) => [id, on])).toEqual([['L', '2026-02-22'], ['M', '2026-02-23']]);
  });

  test('one that was judged takes part with the looks of that day', () => {
    const lots = [...byPlant(journalOf(weekly({ judge: JUDGE })).lots(), 'species').values()][0]!;
    const { agents: [agent] } = plantTrial('Iris alba', lots, Infinity);
    expect(agent!.across).toMatchObject({ open: 0, verdict: 'worth repeating' });
    expect(agent!.across.comparisons).toMatchObject([{ byDay: 42 }]);
    expect(lotPairOf(agent!.strata[0]!).isStrict).toBe(false);
    const missed = [...byPlant(journalOf(weekly({ judge: 'judge L 2026-01-11, on 2026-02-27' })).lots(), 'species').values()][0]!;
    expect(lotPairOf(plantTrial('Iris alba', missed, Infinity).agents[0]!.strata[0]!).isStrict).toBe(true);
  });
});
