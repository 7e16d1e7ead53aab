/** From which day to which stuck seedlings are compared, and where they are not. */
import { describe, expect, test } from 'vitest';
import { dropsTexts } from '../../server/src/words/drops.ts';
import { share, trial } from './helpers.ts';

/** The only contest of a lot of two halves that were sown on one day, with what its drops are said to have done. */
function halves(...records: readonly string[]) {
  const { drops: { contests: [contest] } } = trial(`
    lot MEC-26 Meconopsis grandis, 60 seeds
    split MEC-26, A 30 seeds, B 30 seeds
    sow MEC-26/A 2026-08-11, 30 seeds, 15 C
    sow MEC-26/B 2026-08-11, 30 seeds, 15 C
    ${records.map(record => record.replace(/ ([AB])\b/, ' MEC-26/$1')).join('\n    ')}
  `);
  return { contest: contest!, texts: dropsTexts(contest!) };
}

describe('what became of stuck seedlings', () => {
  test('begins with the drops: seedlings that had died before do not count', () => {
    const { contest, texts } = halves(
      'count A 2026-09-01, 20, 10 stuck, 9 died', 'count B 2026-09-01, 20, 10 stuck',
      'apply A 2026-09-02 18:00, GA3 100 ppm, 2 drops, 11 seedlings',
      'count A 2026-10-28, 3 freed', 'count B 2026-10-28, 3 freed',
    );
    expect(contest).toMatchObject({
      verdict: 'too few to tell', given: { alive: share(11, 11), freed: share(3, 10) }, without: { alive: share(20, 20) },
    });
    expect(texts[1]).toMatch(/^Still alive: 11 of 11 \(100 %\) seedlings, and 20 of 20 \(100 %\) without drops: no difference/);
  });

  test('is as uncertain as the seedlings that died before, where no record says that they were not the stuck ones', () => {
    const lot = (died: number, named: string) => halves(
      `count A 2026-09-01, 20, 10 stuck, ${died} died`, 'count B 2026-09-01, 20, 10 stuck',
      `apply A 2026-09-02 18:00, GA3 100 ppm, 2 drops${named}`,
      'count A 2026-10-28, 1 freed', 'count B 2026-10-28, 9 freed',
    );
    expect(lot(0, '').contest.verdict).toBe('harmed');
    expect(lot(9, '').contest).toMatchObject({ verdict: 'too few to tell', given: { freed: { n: { least: 1, most: 10 } } } });
    const few = lot(3, '');
    expect(few.contest).toMatchObject({ verdict: 'harmed', freed: { difference: undefined } });
    expect(few.texts[0]).toBe('The drops harmed: 1 of 7 to 10 stuck seedlings were freed, and 9 of 10 (90 %) without drops.');
    expect(lot(3, ', 10 seedlings').contest).toMatchObject({ verdict: 'harmed', given: { freed: share(1, 10) } });
  });

  test('counts no more stuck seedlings than were alive', () => {
    const { contest } = halves(
      'count A 2026-09-01, 10, 10 stuck, 6 died', 'count B 2026-09-01, 10, 10 stuck',
      'apply A 2026-09-02 18:00, water, 4 seedlings', 'count A 2026-10-28, 3 freed', 'count B 2026-10-28, 3 freed',
    );
    expect(contest.given.freed).toEqual(share(3, 4));
  });

  test.each([
    ['long after the drops, and the others soon after', ['count A 2026-11-28, 2 freed, 10 died', 'count B 2026-09-04, 0']],
    ['soon after the drops, and the others long after', ['count A 2026-09-04, 0', 'count B 2026-11-28, 10 freed']],
    ['long after the drops, and the others never', ['count A 2026-11-28, 11 freed']],
  ])('is not compared where one side was looked at %s', (_, later) => {
    const { contest, texts } = halves(
      'count A 2026-09-01, 12, 12 stuck', 'count B 2026-09-01, 12, 12 stuck',
      'apply A 2026-09-02 18:00, GA3 100 ppm, 2 drops, 12 seedlings', ...later,
    );
    expect(contest).toMatchObject({ verdict: 'cannot tell', freed: undefined, alive: undefined });
    expect(texts).toEqual(['Cannot tell: the two sides were not looked at on the same day after the drops.']);
  });

  test('is not compared where one side was last looked at long before the drops', () => {
    const { texts } = halves(
      'count A 2026-09-01, 12, 12 stuck', 'count B 2026-08-20, 12, 12 stuck',
      'apply A 2026-09-02 18:00, GA3 100 ppm, 2 drops, 12 seedlings', 'count A 2026-10-01, 1 freed', 'count B 2026-10-01, 9 freed',
    );
    expect(texts).toEqual(['Cannot tell: the two sides were not looked at on the same day before the drops.']);
  });

  test('is compared up to the last day on which both sides were looked at, or looked at a day apart', () => {
    const { contest, texts } = halves(
      'count A 2026-09-01, 12, 12 stuck', 'count B 2026-08-31, 12, 12 stuck',
      'apply A 2026-09-02 18:00, GA3 100 ppm, 2 drops, 12 seedlings',
      'count A 2026-09-20, 11 freed', 'count B 2026-09-21, 1 freed', 'count B 2026-11-28, 10 freed, 1 died',
    );
    expect(contest).toMatchObject({
      verdict: 'helped', given: { freed: share(11, 12) }, without: { freed: share(1, 12), alive: share(12, 12) },
    });
    expect(texts[2]).toBe('This is what the looks up to 2026-09-21 found: on no later day were both sides looked at.');
  });

  test('is not compared where the drops were given on different days', () => {
    const { drops: { contests: [contest] } } = trial(`
      lot L Iris, 60 seeds
      split L, A 20 seeds, B 20 seeds, C 20 seeds
      sow L/A 2026-01-01, 20 seeds
      sow L/B 2026-01-01, 20 seeds
      sow L/C 2026-01-01, 20 seeds
      count L/A 2026-01-20, 20, 10 stuck
      count L/B 2026-01-20, 20, 10 stuck
      count L/C 2026-01-20, 20, 10 stuck
      apply L/A 2026-01-21, water
      apply L/B 2026-01-29, water
      count L/A 2026-02-01, 9 freed
      count L/B 2026-02-01, 9 freed
      count L/C 2026-02-01, 1 freed
    `);
    expect(dropsTexts(contest!)).toEqual(['Cannot tell: the drops were given on different days.']);
  });

  test('is known within limits where seed germinated later and seedlings died', () => {
    const { contest, texts } = halves(
      'count A 2026-09-01, 20, 10 stuck', 'count B 2026-09-01, 20, 10 stuck', 'apply A 2026-09-02, water, 20 seedlings',
      'count A 2026-10-01, 3, 5 died', 'count B 2026-10-01, 0',
    );
    expect(contest.given.alive).toEqual({ x: { least: 15, most: 18 }, n: { least: 20, most: 20 } });
    expect(texts[1]).toBe('Still alive: 15 to 18 of 20 seedlings, and 20 of 20 (100 %) without drops.');
  });

  test('leaves out who was alive where every seedling of a side had died before', () => {
    const { texts } = halves(
      'count A 2026-09-01, 10, 10 stuck', 'count B 2026-09-01, 10, 10 stuck, 10 died', 'apply A 2026-09-02, water',
      'count A 2026-10-01, 5 freed', 'count B 2026-10-01, 0',
    );
    expect(texts[1]).toBe('How many stayed alive is unknown, because no living seedling had been counted before the drops.');
  });

  test('is compared by the freed alone where drops were given to fewer seedlings than were alive', () => {
    const lot = (named: number) => halves(
      'count A 2026-09-01, 28, 5 stuck', 'count B 2026-09-01, 28, 5 stuck', `apply A 2026-09-02, GA3 100 ppm, 2 drops, ${named} seedlings`,
      'count A 2026-10-01, 5 freed, 15 died', 'count B 2026-10-01, 4 freed',
    );
    for (const named of [5, 27]) {
      expect(lot(named).contest).toMatchObject({ verdict: 'too few to tell', alive: undefined, given: { freed: share(5, 5) }, without: { freed: share(4, 5) } });
      expect(lot(named).texts[1]).toBe('How many stayed alive is not compared, because some seedlings of the side with drops were given none.');
    }
    expect(lot(28).contest.verdict).toBe('harmed');
  });

  describe('is not compared', () => {
    const before = ['count A 2026-09-01, 8, 8 stuck', 'count B 2026-09-01, 8, 8 stuck', 'apply A 2026-09-02 18:00, GA3 100 ppm, 2 drops'];

    test.each([
      ['A', 'the treated', ['count A 2026-10-01, 8 freed, 2 germinated, 2 stuck', 'count B 2026-10-01, 0']],
      ['B', 'the other', ['count A 2026-10-01, 8 freed', 'count B 2026-10-01, 2, 2 stuck']],
    ])('where more of %s, %s side, were found stuck after the drops', (name, _, later) => {
      const { contest, texts } = halves(...before, ...later);
      expect(contest.verdict).toBe('cannot tell');
      expect(texts).toEqual([`Cannot tell: more seedlings of MEC-26/${name} were found stuck after the drops than before.`]);
    });

    test('where no seedling had been counted before the drops: some may have been stuck only later', () => {
      const counts = ['A', 'B'].map(name => `count ${name} 2026-09-01, 20, 10 stuck, 4 freed`);
      expect(halves('apply A 2026-08-25, water', ...counts).contest.verdict).toBe('cannot tell');
    });

    test.each([
      ['A', 'give A 2026-09-03, 2 seedlings, to a friend'], ['B', 'give B 2026-09-03, 8 seedlings, to a friend'],
      ['B', 'plant B 2026-09-03, 8 seedlings'], ['B', 'lose B 2026-10-01, 1 seedling'], ['B', 'sell B 2026-10-01'],
    ])('where seedlings of %s had left by the last look compared: %s', (name, leaving) => {
      const { contest, texts } = halves(...before, 'count A 2026-10-01, 8 freed', 'count B 2026-10-01, 0', leaving);
      expect(contest.verdict).toBe('cannot tell');
      expect(texts).toEqual([`Cannot tell: seedlings of MEC-26/${name} were planted out, given away or lost before the last look compared.`]);
    });

    test('but it is where only seed left, or seedlings left, or were found stuck, after the looks compared', () => {
      const verdict = (...later: string[]) => halves(
        ...before, 'give B 2026-09-03, 2 seeds, to a friend', 'count A 2026-10-01, 8 freed', 'count B 2026-10-01, 0', ...later,
      ).contest.verdict;
      expect(verdict()).toBe('helped');
      expect(verdict('plant B 2026-10-02, 1 seedling')).toBe('helped');
      expect(verdict('count B 2026-10-09, 2, 2 stuck')).toBe('helped');
    });
  });
});
